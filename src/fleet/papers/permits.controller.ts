import { Body, Controller, Delete, Get, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { PageQuery } from '../../platform/http/pages.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { IfMatch } from '../../platform/http/versions.js';
import { PermitChanges, NewPermit, PermitPage, PermitView } from './permit.dto.js';
import { PermitsService } from './permits.service.js';

/** Special flight permits of an aircraft. */
@ApiTags('aircraft-papers')
@Controller('aircraft/:aircraftId/permits')
export class PermitsController {
  constructor(private readonly records: PermitsService) {}

  @Get()
  @ApiRoute({
    id: 'listPermits',
    summary: 'Special flight permits of an aircraft',
    answer: PermitPage,
    refuses: [404],
  })
  list(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Query() page: PageQuery,
  ): Promise<PermitPage> {
    return this.records.list(user, aircraftId, page);
  }

  @Get(':permitId')
  @ApiRoute({ id: 'readPermit', summary: 'One special flight permit', answer: PermitView, refuses: [404] })
  read(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('permitId', UuidPipe) id: string,
  ): Promise<PermitView> {
    return this.records.read(user, { aircraftId, id });
  }

  @Post()
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'addPermit',
    summary: 'Record a special flight permit',
    answer: PermitView,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  add(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Body() body: NewPermit,
  ): Promise<PermitView> {
    return this.records.add(user, aircraftId, body);
  }

  @Patch(':permitId')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'editPermit',
    summary: 'Change a special flight permit',
    answer: PermitView,
    refuses: [403, 404, 409, 412, 422, 428],
  })
  edit(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('permitId', UuidPipe) id: string,
    @IfMatch() version: number,
    @Body() changes: PermitChanges,
  ): Promise<PermitView> {
    return this.records.edit(user, { aircraftId, id }, version, changes);
  }

  @Delete(':permitId')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'removePermit',
    summary: 'Delete a special flight permit entered by mistake',
    answer: null,
    refuses: [403, 404, 409, 412, 428],
  })
  remove(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('permitId', UuidPipe) id: string,
    @IfMatch() version: number,
  ): Promise<void> {
    return this.records.remove(user, { aircraftId, id }, version);
  }
}
