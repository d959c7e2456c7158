import { Controller, Get, Param, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../accounts/current-user.js';
import { WaysDto } from '../decisions/ways/ways.dto.js';
import { ApiRoute } from '../platform/http/api-route.js';
import { UuidPipe } from '../platform/http/index.js';
import { StandingHistoryDto, StandingPage, StandingQuery } from './standing.dto.js';
import { StandingService } from './standing.service.js';

/** What the engine says of booked flights now; judged again whenever a fact changes that the answer was read from. */
@ApiTags('bookings')
@Controller('standing-answers')
export class StandingController {
  constructor(private readonly standing: StandingService) {}

  @Get()
  @ApiRoute({
    id: 'listStandingAnswers',
    summary: 'Flights to come with the answer they were booked on and the one they have now',
    answer: StandingPage,
    refuses: [403, 404],
  })
  list(@CurrentUser() user: SignedIn, @Query() query: StandingQuery): Promise<StandingPage> {
    return this.standing.list(user, query);
  }

  @Get(':bookingId')
  @ApiRoute({
    id: 'getStandingAnswer',
    summary: 'One flight to come: its answer now, what stands in its way, and what changed it',
    answer: StandingHistoryDto,
    refuses: [404],
  })
  find(
    @CurrentUser() user: SignedIn,
    @Param('bookingId', UuidPipe) bookingId: string,
  ): Promise<StandingHistoryDto> {
    return this.standing.find(user, bookingId);
  }

  @Get(':bookingId/ways')
  @ApiRoute({
    id: 'waysForStandingAnswer',
    summary:
      'The cheapest ways that make a booked flight a yes again, each proven on the facts as they would be',
    answer: WaysDto,
    refuses: [404, 409, 422],
  })
  ways(@CurrentUser() user: SignedIn, @Param('bookingId', UuidPipe) bookingId: string): Promise<WaysDto> {
    return this.standing.waysOf(user, bookingId);
  }
}
