import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { Clock } from '../../platform/clock.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { noBooking } from '../bookings.problems.js';
import { findBooking, lockAircraft, lockBooking } from '../bookings.sql.js';
import type { FlightView } from '../flights/flight.dto.js';
import { flightView } from '../flights/flight-view.js';
import { mayReturn } from '../flights/who.js';
import { broughtIn } from '../overdue/aircraft-out.js';
import type { BecauseDto } from './dispatch.dto.js';
import { cannotGo } from './dispatch.problems.js';
import { findDispatch } from './dispatch.sql.js';

/** An aircraft that was handed out and not flown after all. */
@Injectable()
export class TakeBackService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** Takes the dispatch back by a record of its own; the flight is booked as before. @throws 403, 404, 409 */
  takeBack(user: SignedIn, bookingId: string, { reason }: BecauseDto): Promise<FlightView> {
    const work = async (em: EntityManager): Promise<FlightView> => {
      const seen = await findBooking(em, bookingId);
      if (!seen) throw noBooking(bookingId);
      mayReturn(user, seen);
      await lockAircraft(em, seen.aircraftId);
      await lockBooking(em, bookingId);
      const { status } = (await findBooking(em, bookingId))!;
      if (status !== 'dispatched')
        throw cannotGo('Only a flight that is out and not returned is taken back.');
      const { id } = (await findDispatch(em, bookingId))!;
      await em.query(
        'INSERT INTO dispatch_voids (club_id, dispatch_id, voided_by, reason) VALUES (bellcrank_club(), $1, $2, $3)',
        [id, user.memberId, reason],
      );
      await em.query("UPDATE bookings SET status = 'booked' WHERE club_id = bellcrank_club() AND id = $1", [
        bookingId,
      ]);
      await broughtIn(em, bookingId);
      return flightView(em, user, bookingId, this.clock.now());
    };
    return this.db.run(user.clubId, work, { actorId: user.memberId });
  }
}
