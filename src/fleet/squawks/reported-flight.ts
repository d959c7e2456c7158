import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { hasAnyRole } from '../../accounts/roles.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';

/**
 * Holds the flight that a report names against the club's bookings: one of this aircraft, with the reporter aboard, unless
 * they report for others. Undefined and null pass.
 * @throws ProblemException 422 naming the field.
 */
export async function requireFlight(
  em: EntityManager,
  user: SignedIn,
  { aircraftId, bookingId }: { aircraftId: string; bookingId: string | null | undefined },
): Promise<void> {
  if (bookingId === null || bookingId === undefined) return;
  const [found]: { aboard: boolean }[] = await em.query(
    `SELECT EXISTS (SELECT 1 FROM booking_people p
        WHERE p.club_id = b.club_id AND p.booking_id = b.id AND p.member_id = $3) AS aboard
       FROM bookings b WHERE b.club_id = bellcrank_club() AND b.id = $1 AND b.aircraft_id = $2 AND b.kind = 'flight'`,
    [bookingId, aircraftId, user.memberId],
  );
  const forOthers = hasAnyRole(user, 'maintenance-coordinator', 'safety-officer', 'administrator');
  if (found && (found.aboard || forOthers)) return;
  throw new ProblemException('value-refused', {
    field: 'bookingId',
    detail: found
      ? 'You are not on that booking. Name a flight of your own, or leave it out.'
      : `This aircraft has no flight booked with the id ${bookingId}. Name another, or leave it out.`,
  });
}
