import type { SignedIn } from '../../accounts/current-user.js';
import { hasAnyRole, type Role } from '../../accounts/roles.js';
import { READERS } from '../../members/members.access.js';
import { ProblemException } from '../../platform/problems/index.js';
import type { BookingRow } from '../booking.entity.js';

/** Roles that see to flights of others: who may ask for anybody, and who keeps the aircraft's hours. */
export const SEE_TO_FLIGHTS: Role[] = [...READERS, 'maintenance-coordinator'];

const aboard = (user: SignedIn, { people }: BookingRow): boolean =>
  people.some(({ memberId }) => memberId === user.memberId);

const notYours = (detail: string, field?: string): ProblemException =>
  new ProblemException('not-yours', { detail, ...(field ? { field } : {}) });

/** Whoever may read how a flight went. @throws 403 */
export function mayReadFlight(user: SignedIn, booking: BookingRow): void {
  if (aboard(user, booking) || hasAnyRole(user, ...SEE_TO_FLIGHTS)) return;
  throw notYours('This flight belongs to another crew.');
}

/**
 * Whoever may hand the aircraft out: the pilot, and who may ask for anybody, since it is judged anew. In place of the pilot the
 * second pilot of the booking may go; anybody else is put there by an instructor or officer.
 * @throws 403
 */
export function mayDispatch(user: SignedIn, booking: BookingRow, memberId = booking.memberId): void {
  if (hasAnyRole(user, ...READERS)) return;
  const own = user.memberId === booking.memberId;
  if (memberId === booking.memberId) {
    if (own) return;
    throw notYours('The pilot hands the aircraft out, or an instructor or officer does.');
  }
  if (memberId === user.memberId && aboard(user, booking)) return;
  throw notYours(
    'Another pilot is put in place by an instructor or officer, or is the second pilot of the booking.',
    'memberId',
  );
}

/** Whoever may bring the aircraft back, or take its dispatch back. @throws 403 */
export function mayReturn(user: SignedIn, booking: BookingRow): void {
  if (aboard(user, booking) || hasAnyRole(user, ...SEE_TO_FLIGHTS)) return;
  throw notYours('Its crew brings the aircraft back, or an instructor, officer or coordinator does.');
}

/** Whoever may correct what came of a flight: its pilot and those who answer for log and hours. @throws 403 */
export function mayCorrect(user: SignedIn, booking: BookingRow): void {
  if (user.memberId === booking.memberId) return;
  if (hasAnyRole(user, 'maintenance-coordinator', 'safety-officer', 'administrator')) return;
  throw notYours('The pilot corrects a return, or the coordinator or an officer does.');
}
