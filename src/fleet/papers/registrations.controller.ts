import { Body, Controller, Delete, Get, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { PageQuery } from '../../platform/http/pages.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { IfMatch } from '../../platform/http/versions.js';
import {
  RegistrationChanges,
  NewRegistration,
  RegistrationPage,
  RegistrationView,
} from './registration.dto.js';
import { RegistrationsService } from './registrations.service.js';

/** Registration certificates of an aircraft. */
@ApiTags('aircraft-papers')
@Controller('aircraft/:aircraftId/registrations')
export class RegistrationsController {
  constructor(private readonly records: RegistrationsService) {}

  @Get()
  @ApiRoute({
    id: 'listRegistrations',
    summary: 'Registration certificates of an aircraft',
    answer: RegistrationPage,
    refuses: [404],
  })
  list(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Query() page: PageQuery,
  ): Promise<RegistrationPage> {
    return this.records.list(user, aircraftId, page);
  }

  @Get(':registrationId')
  @ApiRoute({
    id: 'readRegistration',
    summary: 'One registration certificate',
    answer: RegistrationView,
    refuses: [404],
  })
  read(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('registrationId', UuidPipe) id: string,
  ): Promise<RegistrationView> {
    return this.records.read(user, { aircraftId, id });
  }

  @Post()
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'addRegistration',
    summary: 'Record a registration certificate',
    answer: RegistrationView,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  add(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Body() body: NewRegistration,
  ): Promise<RegistrationView> {
    return this.records.add(user, aircraftId, body);
  }

  @Patch(':registrationId')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'editRegistration',
    summary: 'Change a registration certificate',
    answer: RegistrationView,
    refuses: [403, 404, 409, 412, 422, 428],
  })
  edit(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('registrationId', UuidPipe) id: string,
    @IfMatch() version: number,
    @Body() changes: RegistrationChanges,
  ): Promise<RegistrationView> {
    return this.records.edit(user, { aircraftId, id }, version, changes);
  }

  @Delete(':registrationId')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'removeRegistration',
    summary: 'Delete a registration certificate entered by mistake',
    answer: null,
    refuses: [403, 404, 409, 412, 428],
  })
  remove(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('registrationId', UuidPipe) id: string,
    @IfMatch() version: number,
  ): Promise<void> {
    return this.records.remove(user, { aircraftId, id }, version);
  }
}
