import { Injectable } from '@nestjs/common';
import type { SignedIn } from '../accounts/current-user.js';
import { hasAnyRole } from '../accounts/roles.js';
import { requireKnown } from '../decisions/gather/known.js';
import { Clock } from '../platform/clock.js';
import { clubZone } from '../clubs/club-time.js';
import { TenantDb } from '../platform/database/tenant.js';
import { requireVersion } from '../platform/http/index.js';
import { ProblemException } from '../platform/problems/index.js';
import type { BlockDto } from './booking.dto.js';
import type { BookingRow } from './booking.entity.js';
import { noAircraft, noBooking, slotTaken, timesRefused } from './bookings.problems.js';
import {
  conflictsOf,
  findBooking,
  insertBlock,
  listBookings,
  lockAircraft,
  type BookingFilter,
} from './bookings.sql.js';
import { blockTimes } from './displacements/displace.js';

/** Reads the calendar, cancels, and blocks aircraft for maintenance or club use. */
@Injectable()
export class BookingsService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** The club's calendar; any member may read it. */
  list(user: SignedIn, filter: BookingFilter): Promise<BookingRow[]> {
    if (filter.from !== null && filter.to !== null && filter.to <= filter.from)
      throw timesRefused('to', 'The end must lie after the beginning; change one of the two times.');
    return this.db.run(
      user.clubId,
      async (em) => {
        await requireKnown(em, filter);
        return listBookings(em, filter);
      },
      { readOnly: true },
    );
  }

  async find(user: SignedIn, id: string): Promise<BookingRow> {
    const booking = await this.db.run(user.clubId, (em) => findBooking(em, id), { readOnly: true });
    if (!booking) throw noBooking(id);
    return booking;
  }

  /** Cancels a booking that has not been flown nor ended: its holder, its instructor, an officer; maintenance by the coordinator. */
  cancel(user: SignedIn, id: string, ifMatch: number): Promise<BookingRow> {
    return this.db.run(
      user.clubId,
      async (em) => {
        await em.query('SELECT 1 FROM bookings WHERE club_id = bellcrank_club() AND id = $1 FOR UPDATE', [
          id,
        ]);
        const booking = await findBooking(em, id);
        if (!booking) throw noBooking(id);
        if (!mayCancel(user, booking)) {
          throw new ProblemException('forbidden', {
            status: 403,
            title: 'Not yours to cancel',
            detail:
              'Its holder, its crew, or an officer cancels a flight; a maintenance coordinator cancels a block.',
          });
        }
        requireVersion(booking.rowVersion, ifMatch);
        if (booking.status !== 'booked') {
          throw new ProblemException('booking-not-open', {
            status: 409,
            title: 'It can no longer be cancelled',
            detail: `The booking is ${booking.status}.`,
          });
        }
        const now = this.clock.now();
        if (booking.arrives <= now) {
          throw new ProblemException('booking-not-open', {
            status: 409,
            title: 'It can no longer be cancelled',
            detail: `The booking ended at ${booking.arrives}; what has been is not undone.`,
          });
        }
        await em.query(
          "UPDATE bookings SET status = 'cancelled', cancelled_at = $2 WHERE club_id = bellcrank_club() AND id = $1",
          [id, now],
        );
        return (await findBooking(em, id))!;
      },
      { actorId: user.memberId },
    );
  }

  /** Takes an aircraft off the calendar for maintenance or club use. */
  block(user: SignedIn, block: BlockDto): Promise<BookingRow> {
    const { from: departs, to: arrives } = blockTimes({ ...block, now: this.clock.now() });
    return this.db.run(
      user.clubId,
      async (em) => {
        if (!(await lockAircraft(em, block.aircraftId))) {
          throw noAircraft(block.aircraftId);
        }
        const [conflict] = await conflictsOf(em, {
          aircraftId: block.aircraftId,
          memberIds: [],
          departs,
          arrives,
          exceptId: null,
        });
        if (conflict) {
          const zone = await clubZone(em, user.clubId);
          throw slotTaken(conflict, { aircraftId: block.aircraftId, memberIds: [] }, zone);
        }
        const { kind, aircraftId, note } = block;
        const of = { kind, aircraftId, memberId: user.memberId, departs, arrives, note };
        return (await findBooking(em, await insertBlock(em, of)))!;
      },
      { actorId: user.memberId },
    );
  }
}

function mayCancel(user: SignedIn, booking: BookingRow): boolean {
  if (booking.kind !== 'flight') return hasAnyRole(user, 'maintenance-coordinator', 'administrator');
  return (
    booking.people.some((person) => person.memberId === user.memberId) ||
    hasAnyRole(user, 'safety-officer', 'administrator')
  );
}
