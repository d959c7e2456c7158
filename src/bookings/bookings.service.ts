import { Injectable } from '@nestjs/common';
import type { SignedIn } from '../accounts/current-user.js';
import { requireKnown } from '../decisions/gather/known.js';
import { TenantDb } from '../platform/database/tenant.js';
import type { BookingRow } from './booking.entity.js';
import { noBooking, timesRefused } from './bookings.problems.js';
import { findBooking, listBookings, type BookingFilter } from './bookings.sql.js';

/** Reads the calendar. */
@Injectable()
export class BookingsService {
  constructor(private readonly db: TenantDb) {}

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
}
