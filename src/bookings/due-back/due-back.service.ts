import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { Clock } from '../../platform/clock.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { plusSeconds, toInstant, toSeconds } from '../../rules/index.js';
import type { BookingRow } from '../booking.entity.js';
import { noBooking, timesRefused } from '../bookings.problems.js';
import { conflictsOf, findBooking } from '../bookings.sql.js';
import { lockForChange, noteChange } from '../changes/changes.sql.js';
import { flightView } from '../flights/flight-view.js';
import { mayReturn } from '../flights/who.js';
import { endLapsedHolds } from '../holds/lapsed.js';
import type { StoredAnswer } from '../idempotency.js';
import { type Done, underKey } from '../keyed.js';
import { expectBack } from '../overdue/aircraft-out.js';
import { notOut } from '../return/return.problems.js';
import { type DueBackDto, type DueBackView, NOT_JUDGED } from './due-back.dto.js';
import { tellNext } from './tell-next.js';

/** Beyond that nobody would be looked for in time: common practice, no source. */
const MOST_S = 24 * 3600;

/**
 * Another time due back of a flight that is out. The clock that looks for overdue aircraft goes by it in any case, since that is when
 * somebody has to be looked for. The calendar follows where nobody else has the aircraft or the crew by then; else the next are told.
 * Nothing is judged: the aircraft is away whatever the answer would be, and no yes is given.
 */
@Injectable()
export class DueBackService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** Sets it, or gives the stored answer of an earlier request with the same key. @throws 403, 404, 409 when it is not out, 422 */
  set(user: SignedIn, key: string, bookingId: string, { dueBackAt }: DueBackDto): Promise<StoredAnswer> {
    return underKey(this.db, user, key, {
      request: { act: 'due-back', bookingId, dueBackAt },
      work: (em) => this.setIn(em, user, { bookingId, dueBackAt: toInstant(toSeconds(dueBackAt)) }),
    });
  }

  private async setIn(
    em: EntityManager,
    user: SignedIn,
    { bookingId, dueBackAt }: { bookingId: string; dueBackAt: string },
  ): Promise<Done> {
    const seen = await findBooking(em, bookingId);
    if (!seen) throw noBooking(bookingId);
    mayReturn(user, seen);
    const { row } = await lockForChange(em, bookingId);
    if (row.status !== 'dispatched') throw notOut(row.status, bookingId);
    const now = this.clock.now();
    const latest = plusSeconds(now, MOST_S);
    if (dueBackAt <= now)
      throw timesRefused(
        'dueBackAt',
        `It has passed (it is ${now}). Give a time to come, or return the flight.`,
      );
    if (dueBackAt > latest)
      throw timesRefused('dueBackAt', `Give a time until ${latest}, and put it off again when that comes.`);
    const before = await expectBack(em, { bookingId, dueBackAt });
    const next = await this.inTheWay(em, row, { dueBackAt, now });
    const longer = dueBackAt > row.arrives && next.length === 0;
    if (longer) await keepUntil(em, bookingId, dueBackAt);
    if (before !== dueBackAt || longer)
      await noteChange(em, {
        ...{ bookingId, act: 'edited', byId: user.memberId, at: now },
        before: { dueBackAt: before, arrives: row.arrives },
        after: { dueBackAt, arrives: longer ? dueBackAt : row.arrives },
      });
    const ofAircraft = next.filter(({ aircraftId }) => aircraftId === row.aircraftId);
    await tellNext(em, { out: row, next: ofAircraft, dueBackAt, at: now });
    const body: DueBackView = {
      flight: await flightView(em, user, bookingId, now),
      kept: next.length === 0,
      inTheWay: next.map(({ id, kind, memberName, registration, departs, arrives }) => ({
        ...{ bookingId: id, kind, holder: memberName, registration, departs, arrives },
      })),
      caution: NOT_JUDGED,
    };
    return { status: 200, body };
  }

  /** Bookings of the aircraft or the crew between the booked end and then; none where it comes back within its time. */
  private async inTheWay(
    em: EntityManager,
    { id, aircraftId, people, arrives: departs }: BookingRow,
    { dueBackAt: arrives, now }: { dueBackAt: string; now: string },
  ): Promise<BookingRow[]> {
    if (arrives <= departs) return [];
    const memberIds = people.map(({ memberId }) => memberId);
    await endLapsedHolds(em, { aircraftId, memberIds, departs, arrives, now });
    return conflictsOf(em, { aircraftId, memberIds, departs, arrives, exceptId: id });
  }
}

/** A longer booking; the database refuses an overlap (SQLSTATE 23P01). It stays on the decision it had. */
async function keepUntil(em: EntityManager, bookingId: string, arrives: string): Promise<void> {
  await em.query(
    `UPDATE bookings SET during = tstzrange(lower(during), $2, '[)'), request = request || jsonb_build_object('arrives', $2::text)
      WHERE club_id = bellcrank_club() AND id = $1`,
    [bookingId, arrives],
  );
}
