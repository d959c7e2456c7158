import { Body, Controller, Delete, Get, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { PageQuery } from '../../platform/http/pages.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { IfMatch } from '../../platform/http/versions.js';
import { DifferenceChanges, NewDifference, DifferencePage, DifferenceView } from './differences.dto.js';
import { DifferencesService } from './differences.service.js';

/** What a pilot must be shown before flying an aircraft alone. */
@ApiTags('differences')
@Controller('aircraft/:aircraftId/differences')
export class DifferencesController {
  constructor(private readonly records: DifferencesService) {}

  @Get()
  @ApiRoute({
    id: 'listDifferences',
    summary: 'Equipment differences of an aircraft',
    answer: DifferencePage,
    refuses: [404],
  })
  list(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Query() page: PageQuery,
  ): Promise<DifferencePage> {
    return this.records.list(user, aircraftId, page);
  }

  @Get(':differenceId')
  @ApiRoute({ id: 'readDifference', summary: 'One difference', answer: DifferenceView, refuses: [404] })
  read(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('differenceId', UuidPipe) id: string,
  ): Promise<DifferenceView> {
    return this.records.read(user, { aircraftId, id });
  }

  @Post()
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'addDifference',
    summary: 'Record a difference',
    answer: DifferenceView,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  add(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Body() body: NewDifference,
  ): Promise<DifferenceView> {
    return this.records.add(user, aircraftId, body);
  }

  @Patch(':differenceId')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'editDifference',
    summary: 'Change a difference',
    answer: DifferenceView,
    refuses: [403, 404, 409, 412, 422, 428],
  })
  edit(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('differenceId', UuidPipe) id: string,
    @IfMatch() version: number,
    @Body() changes: DifferenceChanges,
  ): Promise<DifferenceView> {
    return this.records.edit(user, { aircraftId, id }, version, changes);
  }

  @Delete(':differenceId')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'removeDifference',
    summary: 'Delete a difference entered by mistake',
    answer: null,
    refuses: [403, 404, 409, 412, 428],
  })
  remove(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('differenceId', UuidPipe) id: string,
    @IfMatch() version: number,
  ): Promise<void> {
    return this.records.remove(user, { aircraftId, id }, version);
  }
}
