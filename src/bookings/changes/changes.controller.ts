import { Body, Controller, Delete, Get, Param, Patch, Post, Res } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { IdempotencyKey, IfMatch, tellStored, UuidPipe } from '../../platform/http/index.js';
import { BookingDto } from '../booking.dto.js';
import { CancelService } from './cancel.service.js';
import {
  AcceptHandOverDto,
  BookingChangesDto,
  CancelDto,
  EditBookingDto,
  HandOversDto,
  OfferHandOverDto,
} from './changes.dto.js';
import { EditService } from './edit.service.js';
import { HandOverService } from './hand-over.service.js';
import { HistoryService } from './history.service.js';

@ApiTags('bookings')
@Controller()
export class ChangesController {
  constructor(
    private readonly edits: EditService,
    private readonly cancels: CancelService,
    private readonly handOvers: HandOverService,
    private readonly history: HistoryService,
  ) {}

  @Patch('bookings/:id')
  @ApiRoute({
    id: 'editBooking',
    summary: 'Changes a booked flight: judged anew as the flight it becomes, in one transaction',
    description:
      'Only an earlier end needs no yes. Of a flight that has begun only the end can be changed. What an officer set aside counts for the flight it was set aside for: an edit that still needs it needs it again.',
    answer: BookingDto,
    refuses: [403, 404, 409, 412, 422, 428],
  })
  async edit(
    @CurrentUser() user: SignedIn,
    @Param('id', UuidPipe) id: string,
    @IfMatch() ifMatch: number,
    @IdempotencyKey() key: string,
    @Body() edit: EditBookingDto,
    @Res({ passthrough: true }) response: Response,
  ): Promise<BookingDto> {
    return tellStored(await this.edits.edit(user, key, { id, ifMatch, edit }), response);
  }

  @Post('bookings/:id/cancel')
  @ApiRoute({
    id: 'cancelBooking',
    summary: 'Gives the slot back; late is recorded as late, and asks for a reason where the club says so',
    answer: BookingDto,
    refuses: [403, 404, 409, 412, 422, 428],
  })
  async cancel(
    @CurrentUser() user: SignedIn,
    @Param('id', UuidPipe) id: string,
    @IfMatch() ifMatch: number,
    @Body() { reason = '' }: CancelDto,
  ): Promise<BookingDto> {
    return BookingDto.from(await this.cancels.cancel(user, { id, ifMatch, reason }), user);
  }

  @Get('bookings/:id/changes')
  @ApiRoute({
    id: 'listBookingChanges',
    summary: 'What was done to a booking, by whom, from what to what',
    description:
      'For everybody who is or was aboard, instructors and officers; that of a block for everybody.',
    answer: BookingChangesDto,
    refuses: [403, 404],
  })
  changes(@CurrentUser() user: SignedIn, @Param('id', UuidPipe) id: string): Promise<BookingChangesDto> {
    return this.history.of(user, id);
  }

  @Get('hand-overs')
  @ApiRoute({
    id: 'listHandOvers',
    summary: 'Flights offered to me or by me, still to come',
    answer: HandOversDto,
    refuses: [],
  })
  async offers(@CurrentUser() user: SignedIn): Promise<HandOversDto> {
    return { items: await this.handOvers.list(user) };
  }

  @Post('bookings/:id/hand-over')
  @ApiRoute({
    id: 'offerHandOver',
    summary: 'Offers a booked flight to another member; it stays booked until they take it',
    answer: BookingDto,
    refuses: [403, 404, 409, 412, 428],
  })
  async offer(
    @CurrentUser() user: SignedIn,
    @Param('id', UuidPipe) id: string,
    @IfMatch() ifMatch: number,
    @Body() { toId }: OfferHandOverDto,
  ): Promise<BookingDto> {
    return BookingDto.from(await this.handOvers.offer(user, { id, ifMatch, toId }), user);
  }

  @Delete('bookings/:id/hand-over')
  @ApiRoute({
    id: 'closeHandOver',
    summary: 'Declines an offer, or withdraws it',
    answer: BookingDto,
    refuses: [403, 404, 409],
  })
  async close(@CurrentUser() user: SignedIn, @Param('id', UuidPipe) id: string): Promise<BookingDto> {
    return BookingDto.from(await this.handOvers.close(user, id), user);
  }

  @Post('bookings/:id/hand-over/accept')
  @ApiRoute({
    id: 'acceptHandOver',
    summary: 'Takes an offered flight over: judged for who is to fly it',
    answer: BookingDto,
    refuses: [403, 404, 409, 412, 422, 428],
  })
  async accept(
    @CurrentUser() user: SignedIn,
    @Param('id', UuidPipe) id: string,
    @IfMatch() ifMatch: number,
    @IdempotencyKey() key: string,
    @Body() { override }: AcceptHandOverDto,
    @Res({ passthrough: true }) response: Response,
  ): Promise<BookingDto> {
    const of = { id, ifMatch, ...(override ? { override } : {}) };
    return tellStored(await this.handOvers.accept(user, key, of), response);
  }
}
