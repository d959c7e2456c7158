import { Body, Controller, Get, Param, Post, Query, Res } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import {
  IdempotencyKey,
  IfMatch,
  pageOf,
  PageQuery,
  readCursor,
  UuidPipe,
  tellStored,
} from '../../platform/http/index.js';
import { BookingDto } from '../booking.dto.js';
import { GoOnStandbyDto, StandbyDto, StandbyPageDto } from './standby.dto.js';
import { StandbyService } from './standby.service.js';

/** Waiting for a slot to come free; one that does is offered to one member at a time. */
@ApiTags('bookings')
@Controller('standby')
export class StandbyController {
  constructor(private readonly standby: StandbyService) {}

  @Get()
  @ApiRoute({
    id: 'listStandby',
    summary: 'My entries on standby that are still to come, with what is offered for them',
    answer: StandbyPageDto,
    refuses: [],
  })
  async list(@CurrentUser() user: SignedIn, @Query() query: PageQuery): Promise<StandbyPageDto> {
    const rows = await this.standby.list(user, readCursor(query.cursor), query.limit + 1);
    return pageOf(rows.map(StandbyDto.from), query.limit);
  }

  @Get(':id')
  @ApiRoute({ id: 'getStandby', summary: 'One entry of mine on standby', answer: StandbyDto, refuses: [404] })
  async find(@CurrentUser() user: SignedIn, @Param('id', UuidPipe) id: string): Promise<StandbyDto> {
    return StandbyDto.from(await this.standby.find(user, id));
  }

  @Post()
  @ApiRoute({
    id: 'goOnStandby',
    summary: 'Wait for an aircraft, or for any that will do, to come free for a flight of mine',
    description:
      'When a slot comes free it is offered, in the order of the club, to the first for whom the engine answers yes. An offer is open for a time (club.standby.offer-hours), and kept meanwhile where the club says so (club.standby.hold-slot).',
    answer: StandbyDto,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  async add(
    @CurrentUser() user: SignedIn,
    @IdempotencyKey() key: string,
    @Body() body: GoOnStandbyDto,
    @Res({ passthrough: true }) response: Response,
  ): Promise<StandbyDto> {
    return tellStored<StandbyDto>(await this.standby.add(user, key, body), response);
  }

  @Post(':id/withdraw')
  @ApiRoute({
    id: 'withdrawStandby',
    summary: 'Wait no longer; what is offered for it goes to the next',
    answer: StandbyDto,
    refuses: [404, 409, 412, 428],
  })
  async withdraw(
    @CurrentUser() user: SignedIn,
    @Param('id', UuidPipe) id: string,
    @IfMatch() ifMatch: number,
  ): Promise<StandbyDto> {
    return StandbyDto.from(await this.standby.withdraw(user, id, ifMatch));
  }

  @Post('offers/:offerId/accept')
  @ApiRoute({
    id: 'acceptStandbyOffer',
    summary: 'Take the slot: judged again and booked in one transaction',
    description: 'Accepting again what was accepted gives the booking it made.',
    answer: BookingDto,
    refuses: [404, 409, 422],
  })
  async accept(
    @CurrentUser() user: SignedIn,
    @Param('offerId', UuidPipe) offerId: string,
  ): Promise<BookingDto> {
    return BookingDto.from(await this.standby.accept(user, offerId), user);
  }

  @Post('offers/:offerId/decline')
  @ApiRoute({
    id: 'declineStandbyOffer',
    summary: 'Leave the slot to the next. The entry waits on for other aircraft, where it takes any',
    answer: StandbyDto,
    refuses: [404, 409],
  })
  async decline(
    @CurrentUser() user: SignedIn,
    @Param('offerId', UuidPipe) offerId: string,
  ): Promise<StandbyDto> {
    return StandbyDto.from(await this.standby.decline(user, offerId));
  }
}
