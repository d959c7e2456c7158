import { Body, Controller, Delete, Get, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { PageQuery } from '../../platform/http/pages.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { IfMatch } from '../../platform/http/versions.js';
import { NewWish, WishChanges, WishPage, WishView } from './wish.dto.js';
import { WishesService } from './wishes.service.js';

/** Upgrades wished for, aircraft by aircraft. */
@ApiTags('maintenance')
@Controller('aircraft/:aircraftId/wishes')
export class WishesController {
  constructor(private readonly records: WishesService) {}

  @Get()
  @ApiRoute({
    id: 'listWishes',
    summary: 'Upgrades wished for',
    answer: WishPage,
    refuses: [404],
  })
  list(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Query() page: PageQuery,
  ): Promise<WishPage> {
    return this.records.list(user, aircraftId, page);
  }

  @Get(':wishId')
  @ApiRoute({
    id: 'readWish',
    summary: 'One wish',
    answer: WishView,
    refuses: [404],
  })
  read(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('wishId', UuidPipe) id: string,
  ): Promise<WishView> {
    return this.records.read(user, { aircraftId, id });
  }

  @Post()
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'addWish',
    summary: 'Record a wish',
    answer: WishView,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  add(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Body() body: NewWish,
  ): Promise<WishView> {
    return this.records.add(user, aircraftId, body);
  }

  @Patch(':wishId')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'editWish',
    summary: 'Change a wish',
    answer: WishView,
    refuses: [403, 404, 409, 412, 422, 428],
  })
  edit(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('wishId', UuidPipe) id: string,
    @IfMatch() version: number,
    @Body() changes: WishChanges,
  ): Promise<WishView> {
    return this.records.edit(user, { aircraftId, id }, version, changes);
  }

  @Delete(':wishId')
  @Roles('maintenance-coordinator')
  @ApiRoute({
    id: 'removeWish',
    summary: 'Delete a wish',
    answer: null,
    refuses: [403, 404, 409, 412, 428],
  })
  remove(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Param('wishId', UuidPipe) id: string,
    @IfMatch() version: number,
  ): Promise<void> {
    return this.records.remove(user, { aircraftId, id }, version);
  }
}
