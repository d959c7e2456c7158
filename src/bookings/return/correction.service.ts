import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { MetersService } from '../../fleet/meters/meters.service.js';
import { Clock } from '../../platform/clock.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { newId } from '../../platform/ids.js';
import { ProblemException } from '../../platform/problems/index.js';
import { noBooking } from '../bookings.problems.js';
import { findBooking, lockAircraft, lockBooking } from '../bookings.sql.js';
import { findDispatch } from '../dispatch/dispatch.sql.js';
import { flightView } from '../flights/flight-view.js';
import { mayCorrect } from '../flights/who.js';
import type { StoredAnswer } from '../idempotency.js';
import { type Done, underKey } from '../keyed.js';
import { chargeReturn } from './charge-return.js';
import { checkReturn } from './check-return.js';
import type { CorrectionDto } from './return.dto.js';
import { refuse } from './return.problems.js';
import { findReturn, insertReturn } from './return.sql.js';
import { flownOf } from './return.service.js';
import { correctLog } from './write-log.js';
import { correctMeters } from './write-meters.js';

/** Puts returns right: by a record of its own, after which meters and logs say what it says. */
@Injectable()
export class CorrectionService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
    private readonly meters: MetersService,
  ) {}

  /** @throws 403, 404, 409 where it was corrected in between, 422 */
  correct(user: SignedIn, key: string, bookingId: string, body: CorrectionDto): Promise<StoredAnswer> {
    return underKey(this.db, user, key, {
      request: { act: 'correct', bookingId, ...body },
      work: (em) => this.write(em, user, bookingId, body),
    });
  }

  private async write(
    em: EntityManager,
    user: SignedIn,
    bookingId: string,
    body: CorrectionDto,
  ): Promise<Done> {
    const seen = await findBooking(em, bookingId);
    if (!seen) throw noBooking(bookingId);
    mayCorrect(user, seen);
    await lockAircraft(em, seen.aircraftId);
    await lockBooking(em, bookingId);
    const booking = (await findBooking(em, bookingId))!;
    const before = await findReturn(em, bookingId);
    if (booking.status !== 'returned' || before === null) throw notReturned(booking.status, bookingId);
    await requireStanding(em, { bookingId, replacesId: body.replacesId, standsId: before.id });
    const dispatch = (await findDispatch(em, bookingId))!;
    const now = this.clock.now();
    checkReturn(body, { booking, dispatch, now });
    const { clubId, memberId } = user;
    const { aircraftId } = booking;
    const { because } = body;
    await insertReturn(em, {
      ...{ id: newId(), bookingId, dispatchId: dispatch.id, replacesId: before.id, because },
      ...{ returnedBy: memberId, returnedAt: now, ...flownOf(body, booking) },
      meters: await correctMeters(em, this.meters, {
        ...{ clubId, aircraftId, body, dispatch, before, by: memberId, because },
      }),
      entries: await correctLog(em, { clubId, booking, body, now }, before),
    });
    await chargeReturn(em, bookingId, { clubId, memberId, now });
    return { status: 201, body: await flightView(em, user, bookingId, now) };
  }
}

/** One of before the service kept returns has nothing to correct here. */
const notReturned = (status: string, bookingId: string): ProblemException =>
  status === 'returned'
    ? new ProblemException('not-out', {
        detail: 'Nothing is kept of how this flight came back. Correct log and meters themselves.',
        extensions: { bookingId, state: status },
      })
    : new ProblemException('not-out', {
        detail: 'The flight is not back yet, so there is nothing to correct.',
        extensions: { bookingId, state: status },
      });

/** The correction was made on the return that stands. */
async function requireStanding(
  em: EntityManager,
  of: { bookingId: string; replacesId: string; standsId: string },
): Promise<void> {
  if (of.replacesId === of.standsId) return;
  const [once]: unknown[] = await em.query(
    'SELECT 1 FROM returns WHERE club_id = bellcrank_club() AND booking_id = $1 AND id = $2',
    [of.bookingId, of.replacesId],
  );
  if (once === undefined)
    throw refuse('replacesId', 'It is no return of this flight. Read the flight again.');
  throw new ProblemException('return-corrected', {
    field: 'replacesId',
    extensions: { standsId: of.standsId },
  });
}
