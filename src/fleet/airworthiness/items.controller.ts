import { Body, Controller, Delete, Get, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { PageQuery } from '../../platform/http/pages.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { IfMatch } from '../../platform/http/versions.js';
import { ItemChanges, NewItem, ItemPage, ItemView } from './item.dto.js';
import { ItemsService } from './items.service.js';

/** What has to be done to an aircraft again and again, or once. */
@ApiTags('airworthiness')
@Controller('aircraft/:aircraftId/items')
export class ItemsController {
  constructor(private readonly records: ItemsService) {}

  @Get()
  @ApiRoute({
    id: 'listAirworthinessItems',
    summary: 'Airworthiness items of an aircraft',
    answer: ItemPage,
    refuses: [404],
  })
  list(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Query() page: PageQuery,
  ): Promise<ItemPage> {
    return this.records.list(user, aircraftId, page);
  }

  @Get(':itemId')
  @ApiRoute({
    id: 'readAirworthinessItem',
    summary: 'One airworthiness item',
    answer: ItemView,
    refuses: [404],
  })
  read(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('itemId', UuidPipe) id: string,
  ): Promise<ItemView> {
    return this.records.read(user, { aircraftId, id });
  }

  @Post()
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'addAirworthinessItem',
    summary: 'Record an airworthiness item',
    answer: ItemView,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  add(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Body() body: NewItem,
  ): Promise<ItemView> {
    return this.records.add(user, aircraftId, body);
  }

  @Patch(':itemId')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'editAirworthinessItem',
    summary: 'Change an airworthiness item',
    answer: ItemView,
    refuses: [403, 404, 409, 412, 422, 428],
  })
  edit(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('itemId', UuidPipe) id: string,
    @IfMatch() version: number,
    @Body() changes: ItemChanges,
  ): Promise<ItemView> {
    return this.records.edit(user, { aircraftId, id }, version, changes);
  }

  @Delete(':itemId')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'removeAirworthinessItem',
    summary: 'Delete an airworthiness item entered by mistake',
    answer: null,
    refuses: [403, 404, 409, 412, 428],
  })
  remove(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('itemId', UuidPipe) id: string,
    @IfMatch() version: number,
  ): Promise<void> {
    return this.records.remove(user, { aircraftId, id }, version);
  }
}
