import { Body, Controller, Param, Post, Res } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { IdempotencyKey, tellStored, UuidPipe } from '../../platform/http/index.js';
import { FlightView } from '../flights/flight.dto.js';
import { CorrectionService } from './correction.service.js';
import { CorrectionDto, ProposalDto, ProposalView, ReturnDto } from './return.dto.js';
import { ReturnService } from './return.service.js';

/** Aircraft brought back. */
@ApiTags('flights')
@Controller('flights/:bookingId/return')
export class ReturnController {
  constructor(
    private readonly returns: ReturnService,
    private readonly corrections: CorrectionService,
  ) {}

  @Post('proposal')
  @ApiRoute({
    id: 'proposeReturn',
    summary: 'What the crew may log, from times, airfields and the sun; nothing is kept',
    answer: ProposalView,
    refuses: [403, 404, 422],
  })
  propose(
    @CurrentUser() user: SignedIn,
    @Param('bookingId', UuidPipe) bookingId: string,
    @Body() body: ProposalDto,
  ): Promise<ProposalView> {
    return this.returns.propose(user, bookingId, body);
  }

  @Post()
  @ApiRoute({
    id: 'returnFlight',
    summary: 'Brings the aircraft back: logs, meters and squawks in one transaction',
    description:
      'Send it again with the same key until an answer arrives: it is written once, whatever was lost on the way.',
    answer: FlightView,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  async bringBack(
    @CurrentUser() user: SignedIn,
    @Param('bookingId', UuidPipe) bookingId: string,
    @IdempotencyKey() key: string,
    @Body() body: ReturnDto,
    @Res({ passthrough: true }) response: Response,
  ): Promise<FlightView> {
    return tellStored<FlightView>(await this.returns.bringBack(user, key, bookingId, body), response);
  }

  @Post('corrections')
  @ApiRoute({
    id: 'correctReturn',
    summary: 'Puts a return right, with the reason; meters and logs follow',
    description: 'What a member wrote into the log entry since stays, but for what the correction changes.',
    answer: FlightView,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  async correct(
    @CurrentUser() user: SignedIn,
    @Param('bookingId', UuidPipe) bookingId: string,
    @IdempotencyKey() key: string,
    @Body() body: CorrectionDto,
    @Res({ passthrough: true }) response: Response,
  ): Promise<FlightView> {
    return tellStored<FlightView>(await this.corrections.correct(user, key, bookingId, body), response);
  }
}
