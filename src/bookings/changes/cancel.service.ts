import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { hasAnyRole } from '../../accounts/roles.js';
import { clubZone } from '../../clubs/club-time.js';
import { policyNumber } from '../../clubs/policy/policy-number.js';
import { OFFICERS } from '../../members/members.access.js';
import { Clock } from '../../platform/clock.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { requireVersion } from '../../platform/http/index.js';
import { ProblemException } from '../../platform/problems/index.js';
import { localDateOf, toSeconds } from '../../rules/index.js';
import type { BookingRow } from '../booking.entity.js';
import { noBooking } from '../bookings.problems.js';
import { findBooking, lockBooking } from '../bookings.sql.js';
import { notOpen, notYours } from './changes.problems.js';
import { noteChange } from './changes.sql.js';
import { closeOffers } from './hand-overs.sql.js';

/** Gives bookings back. */
@Injectable()
export class CancelService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** Cancels a booking that has not been flown nor ended: its holder, its crew, an officer; a block by the coordinator. */
  cancel(user: SignedIn, of: { id: string; ifMatch: number; reason: string }): Promise<BookingRow> {
    return this.db.run(
      user.clubId,
      async (em) => {
        await lockBooking(em, of.id);
        const booking = await findBooking(em, of.id);
        if (!booking) throw noBooking(of.id);
        if (!mayCancel(user, booking))
          throw notYours(
            'Not yours to cancel',
            'Its holder, its crew, or an officer cancels a flight; a maintenance coordinator cancels a block.',
          );
        requireVersion(booking.rowVersion, of.ifMatch);
        return this.cancelIn(em, user, booking, of.reason);
      },
      { actorId: user.memberId },
    );
  }

  /** Gives back a booking that the caller has locked. */
  async cancelIn(
    em: EntityManager,
    user: SignedIn,
    booking: BookingRow,
    reason: string,
  ): Promise<BookingRow> {
    const now = this.clock.now();
    if (booking.status !== 'booked')
      throw notOpen('It can no longer be cancelled', `The booking is ${booking.status}.`);
    if (booking.arrives <= now)
      throw notOpen(
        'It can no longer be cancelled',
        `The booking ended at ${booking.arrives}; what has been is not undone.`,
      );
    const late = await isLate(em, user, booking, now);
    if (late.counts && late.needsReason && reason.trim() === '')
      throw new ProblemException('cancel-reason-missing', {
        detail: `The club counts a flight as given back late from ${late.leadHours} h before departure, and then asks for a reason. Send one.`,
        field: 'reason',
      });
    await em.query(
      `UPDATE bookings SET status = 'cancelled', cancelled_at = $2, cancelled_by = $3, cancelled_late = $4, cancel_reason = $5
        WHERE club_id = bellcrank_club() AND id = $1`,
      [booking.id, now, user.memberId, late.counts, reason.trim()],
    );
    await closeOffers(em, [booking.id], now);
    await noteChange(em, {
      ...{ bookingId: booking.id, act: 'cancelled', byId: user.memberId, at: now },
      ...{ before: { status: booking.status }, after: { status: 'cancelled' } },
    });
    return (await findBooking(em, booking.id))!;
  }
}

/** Whether the club counts it as late. An officer who is not aboard gives back what others could not: that is never late. */
async function isLate(
  em: EntityManager,
  user: SignedIn,
  booking: BookingRow,
  now: string,
): Promise<{ counts: boolean; needsReason: boolean; leadHours: number }> {
  const on = localDateOf(toSeconds(now), await clubZone(em, user.clubId));
  const number = await policyNumber(em, {
    clubId: user.clubId,
    parameterId: 'club.cancellation.lead-hours',
    on,
  });
  const leadHours = number ?? 0;
  const aboard = booking.people.some(({ memberId }) => memberId === user.memberId);
  const left = toSeconds(booking.departs) - toSeconds(now);
  const counts = booking.kind === 'flight' && aboard && leadHours > 0 && left < leadHours * 3600;
  const [row]: { value: unknown }[] = await em.query(
    `SELECT value FROM policy_values WHERE club_id = bellcrank_club() AND parameter_id = 'club.cancellation.late-reason'
        AND valid_from <= $1 ORDER BY valid_from DESC LIMIT 1`,
    [on],
  );
  return { counts, needsReason: row?.value === true, leadHours };
}

/** A flight: its crew or an officer. A hold: its two people or an officer. A block: who keeps the fleet. */
export function mayCancel(user: SignedIn, booking: BookingRow): boolean {
  if (booking.kind === 'maintenance' || booking.kind === 'club')
    return hasAnyRole(user, 'maintenance-coordinator', 'administrator');
  return booking.people.some((person) => person.memberId === user.memberId) || hasAnyRole(user, ...OFFICERS);
}
