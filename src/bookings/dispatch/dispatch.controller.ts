import { Body, Controller, Param, Post, Res } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { IdempotencyKey, tellStored, UuidPipe } from '../../platform/http/index.js';
import { FlightView } from '../flights/flight.dto.js';
import { BecauseDto, DispatchDto, DispatchSheet, LookDto } from './dispatch.dto.js';
import { DispatchService } from './dispatch.service.js';
import { TakeBackService } from './take-back.service.js';

/** Booked flights at the aircraft. */
@ApiTags('flights')
@Controller('flights/:bookingId/dispatch')
export class DispatchController {
  constructor(
    private readonly dispatches: DispatchService,
    private readonly takes: TakeBackService,
  ) {}

  @Post('sheet')
  @ApiRoute({
    id: 'lookAtDispatch',
    summary: 'Judges a booked flight again as of now, with all that is to be looked at before it',
    description: 'The decision is stored; nothing is handed out.',
    answer: DispatchSheet,
    refuses: [403, 404, 409, 422],
  })
  look(
    @CurrentUser() user: SignedIn,
    @Param('bookingId', UuidPipe) bookingId: string,
    @Body() at: LookDto,
  ): Promise<DispatchSheet> {
    return this.dispatches.look(user, bookingId, at);
  }

  @Post()
  @ApiRoute({
    id: 'dispatchFlight',
    summary: 'Hands the aircraft out, after judging the flight with the facts of now',
    description:
      'With another aircraft or pilot the booked flight is given back and booked anew in the same transaction; the answer names the new one. An aid: the pilot in command decides.',
    answer: FlightView,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  async dispatch(
    @CurrentUser() user: SignedIn,
    @Param('bookingId', UuidPipe) bookingId: string,
    @IdempotencyKey() key: string,
    @Body() body: DispatchDto,
    @Res({ passthrough: true }) response: Response,
  ): Promise<FlightView> {
    return tellStored<FlightView>(await this.dispatches.dispatch(user, key, bookingId, body), response);
  }

  @Post('take-back')
  @ApiRoute({
    id: 'takeDispatchBack',
    summary: 'The aircraft was not flown after all: the flight is booked as before',
    answer: FlightView,
    refuses: [403, 404, 409],
  })
  takeBack(
    @CurrentUser() user: SignedIn,
    @Param('bookingId', UuidPipe) bookingId: string,
    @Body() body: BecauseDto,
  ): Promise<FlightView> {
    return this.takes.takeBack(user, bookingId, body);
  }
}
