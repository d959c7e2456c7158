/** Whose papers and practice an instructor may read: those they teach. */
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../accounts/current-user.js';
import { hasAnyRole, type Role } from '../accounts/roles.js';
import { ProblemException } from '../platform/problems/problem-exception.js';
import type { Instant } from '../rules/index.js';
import { isOwn } from './members.access.js';

/** How far back a flight or a signature makes somebody a student: common practice, no source. */
const BEHIND = "interval '366 days'";

/**
 * A student of an instructor flies with them (a booking with the instructor aboard as such, to come or within a year),
 * or holds what they signed within a year: a checkout, an item of one, an endorsement, practice they saw, limits. A booking is all it takes, so
 * that an instructor can prepare the first lesson.
 */
const STUDENT = `SELECT EXISTS (
    SELECT 1 FROM booking_people i JOIN bookings b ON b.club_id = i.club_id AND b.id = i.booking_id AND b.status <> 'cancelled'
     WHERE i.club_id = $1 AND i.member_id = $2 AND i.role = 'instructor' AND upper(b.during) > $4::timestamptz - ${BEHIND}
       AND (b.member_id = $3 OR EXISTS (SELECT 1 FROM booking_people p
              WHERE p.club_id = b.club_id AND p.booking_id = b.id AND p.member_id = $3)))
  OR EXISTS (SELECT 1 FROM checkouts c WHERE c.club_id = $1 AND c.signed_by = $2 AND c.member_id = $3
       AND c.signed_on > ($4::timestamptz - ${BEHIND})::date)
  OR EXISTS (SELECT 1 FROM checkout_marks k WHERE k.club_id = $1 AND k.signed_by = $2 AND k.member_id = $3
       AND k.marked_on > ($4::timestamptz - ${BEHIND})::date)
  OR EXISTS (SELECT 1 FROM personal_limits l WHERE l.club_id = $1 AND l.set_by = $2 AND l.member_id = $3
       AND l.recorded_at > $4::timestamptz - ${BEHIND})
  OR EXISTS (SELECT 1 FROM endorsements e WHERE e.club_id = $1 AND e.given_by = $2 AND e.member_id = $3
       AND e.endorsed_on > ($4::timestamptz - ${BEHIND})::date)
  OR EXISTS (SELECT 1 FROM practice_records r WHERE r.club_id = $1 AND r.instructor_id = $2 AND r.member_id = $3
       AND r.flown_on > ($4::timestamptz - ${BEHIND})::date) AS student`;

/** Whether the person is an instructor, and the member a student of theirs. */
export async function teaches(
  em: EntityManager,
  person: SignedIn,
  memberId: string,
  now: Instant,
): Promise<boolean> {
  if (!hasAnyRole(person, 'instructor') || isOwn(person, memberId)) return false;
  const [found]: { student: boolean }[] = await em.query(STUDENT, [
    ...[person.clubId, person.memberId, memberId, now],
  ]);
  return found!.student;
}

/** Lets the member, the given roles, and an instructor of the member through. @throws 403 `not-yours` */
export async function assertTaughtOr(
  em: EntityManager,
  person: SignedIn,
  memberId: string,
  of: { roles: Role[]; now: Instant },
): Promise<void> {
  if (isOwn(person, memberId) || hasAnyRole(person, ...of.roles)) return;
  if (await teaches(em, person, memberId, of.now)) return;
  throw new ProblemException('not-yours', {
    detail: hasAnyRole(person, 'instructor')
      ? 'This belongs to a member you do not teach. It opens with a flight booked with you, or with something you signed within a year.'
      : 'This belongs to another member.',
  });
}
