import { Controller, Get, Param } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { instant } from '../../decisions/gather/sql.js';
import { Clock } from '../../platform/clock.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/index.js';
import { noBooking } from '../bookings.problems.js';
import { findBooking } from '../bookings.sql.js';
import { NOT_FLIGHT_FOLLOWING } from '../overdue/overdue.dto.js';
import { FlightsOut, FlightView, type FlightOut } from './flight.dto.js';
import { flightView } from './flight-view.js';
import { mayReadFlight } from './who.js';

/** Flights from dispatch to return. */
@ApiTags('flights')
@Controller('flights')
export class FlightsController {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  @Get('out')
  @ApiRoute({
    id: 'listFlightsOut',
    summary: 'Flights that are out, soonest due back first',
    description: 'No replacement for flight following.',
    answer: FlightsOut,
  })
  async out(@CurrentUser() { clubId, memberId }: SignedIn): Promise<FlightsOut> {
    const work = `SELECT b.id AS "bookingId", b.aircraft_id AS "aircraftId", a.registration, m.name AS "memberName",
        ${instant('coalesce(o.due_back_at, upper(b.during))')} AS "dueBackAt",
        coalesce(o.due_back_at, upper(b.during)) < $2::timestamptz AS overdue,
        EXISTS (SELECT 1 FROM booking_people p WHERE p.club_id = b.club_id AND p.booking_id = b.id AND p.member_id = $1) AS mine
       FROM bookings b JOIN aircraft a ON a.club_id = b.club_id AND a.id = b.aircraft_id
       JOIN members m ON m.club_id = b.club_id AND m.id = b.member_id
       LEFT JOIN aircraft_out o ON o.club_id = b.club_id AND o.booking_id = b.id
      WHERE b.club_id = bellcrank_club() AND b.status = 'dispatched' ORDER BY coalesce(o.due_back_at, upper(b.during)), b.id`;
    const items = await this.db.run(
      clubId,
      (em): Promise<FlightOut[]> => em.query(work, [memberId, this.clock.now()]),
      { readOnly: true },
    );
    return { items, caution: NOT_FLIGHT_FOLLOWING };
  }

  @Get(':bookingId')
  @ApiRoute({
    id: 'readFlight',
    summary: 'A booked flight with its dispatch and return',
    description: 'For its crew, instructors, officers and the coordinator.',
    answer: FlightView,
    refuses: [403, 404],
  })
  read(@CurrentUser() user: SignedIn, @Param('bookingId', UuidPipe) bookingId: string): Promise<FlightView> {
    return this.db.run(
      user.clubId,
      async (em) => {
        const booking = await findBooking(em, bookingId);
        if (!booking) throw noBooking(bookingId);
        mayReadFlight(user, booking);
        return flightView(em, user, bookingId, this.clock.now());
      },
      { readOnly: true },
    );
  }
}
