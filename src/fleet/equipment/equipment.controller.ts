import { Body, Controller, Delete, Get, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { PageQuery } from '../../platform/http/pages.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { IfMatch } from '../../platform/http/versions.js';
import { EquipmentChanges, NewEquipment, EquipmentPage, EquipmentView } from './equipment.dto.js';
import { EquipmentService } from './equipment.service.js';

/** What is fitted to an aircraft. */
@ApiTags('equipment')
@Controller('aircraft/:aircraftId/equipment')
export class EquipmentController {
  constructor(private readonly records: EquipmentService) {}

  @Get()
  @ApiRoute({
    id: 'listEquipment',
    summary: 'Equipment of an aircraft',
    answer: EquipmentPage,
    refuses: [404],
  })
  list(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Query() page: PageQuery,
  ): Promise<EquipmentPage> {
    return this.records.list(user, aircraftId, page);
  }

  @Get(':equipmentId')
  @ApiRoute({
    id: 'readEquipmentPiece',
    summary: 'One piece of equipment',
    answer: EquipmentView,
    refuses: [404],
  })
  read(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('equipmentId', UuidPipe) id: string,
  ): Promise<EquipmentView> {
    return this.records.read(user, { aircraftId, id });
  }

  @Post()
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'addEquipmentPiece',
    summary: 'Record a piece of equipment',
    answer: EquipmentView,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  add(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Body() body: NewEquipment,
  ): Promise<EquipmentView> {
    return this.records.add(user, aircraftId, body);
  }

  @Patch(':equipmentId')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'editEquipmentPiece',
    summary: 'Change a piece of equipment',
    answer: EquipmentView,
    refuses: [403, 404, 409, 412, 422, 428],
  })
  edit(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('equipmentId', UuidPipe) id: string,
    @IfMatch() version: number,
    @Body() changes: EquipmentChanges,
  ): Promise<EquipmentView> {
    return this.records.edit(user, { aircraftId, id }, version, changes);
  }

  @Delete(':equipmentId')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'removeEquipmentPiece',
    summary: 'Delete a piece of equipment entered by mistake',
    answer: null,
    refuses: [403, 404, 409, 412, 428],
  })
  remove(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('equipmentId', UuidPipe) id: string,
    @IfMatch() version: number,
  ): Promise<void> {
    return this.records.remove(user, { aircraftId, id }, version);
  }
}
