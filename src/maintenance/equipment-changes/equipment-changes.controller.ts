import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { PageQuery } from '../../platform/http/pages.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { NewEquipmentChange, TakeBack } from './equipment-change.dto.js';
import {
  EquipmentChangePage,
  EquipmentChangeResult,
  EquipmentChangeView,
} from './equipment-change-view.dto.js';
import { EquipmentChangesService } from './equipment-changes.service.js';

/** Changes of an aircraft's equipment: what goes, what comes, and what follows. */
@ApiTags('equipment changes')
@Controller('aircraft/:aircraftId/equipment-changes')
export class EquipmentChangesController {
  constructor(private readonly changes: EquipmentChangesService) {}

  @Get()
  @ApiRoute({
    id: 'listEquipmentChanges',
    summary: 'Equipment changes, newest record first',
    answer: EquipmentChangePage,
    refuses: [404],
  })
  list(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Query() page: PageQuery,
  ): Promise<EquipmentChangePage> {
    return this.changes.list(user, aircraftId, page);
  }

  @Post('preview')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'previewEquipmentChange',
    summary: 'What a change would do',
    description: 'Does it and undoes it: the answer is what the change itself would give. Nothing is kept.',
    answer: EquipmentChangeResult,
    refuses: [403, 404, 409, 422],
  })
  preview(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Body() body: NewEquipmentChange,
  ): Promise<EquipmentChangeResult> {
    return this.changes.preview(user, aircraftId, body);
  }

  @Post()
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'makeEquipmentChange',
    summary: 'Record a change of equipment',
    description:
      'Pieces out and in, empty weight, items that end and begin, the differences checkout and meter readings, all or nothing.',
    answer: EquipmentChangeResult,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  make(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Body() body: NewEquipmentChange,
  ): Promise<EquipmentChangeResult> {
    return this.changes.make(user, aircraftId, body);
  }

  @Post(':changeId/take-back')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'takeEquipmentChangeBack',
    summary: 'Take a change back',
    description: 'Until the first flight after it, and while nothing else rests on it.',
    answer: EquipmentChangeView,
    refuses: [403, 404, 409, 422],
  })
  takeBack(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('changeId', UuidPipe) id: string,
    @Body() body: TakeBack,
  ): Promise<EquipmentChangeView> {
    return this.changes.takeBack(user, { aircraftId, id }, body);
  }
}
