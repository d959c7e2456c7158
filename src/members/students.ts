/** Whose papers, practice and decisions an instructor may read: those they teach. */
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../accounts/current-user.js';
import { hasAnyRole, type Role } from '../accounts/roles.js';
import { ProblemException } from '../platform/problems/problem-exception.js';
import type { Instant } from '../rules/index.js';
import { isOwn } from './members.access.js';

/** How far back a flight or a signature makes somebody a student: common practice, no source. */
export const BEHIND = "interval '366 days'";

/** Where somebody signs for somebody: the table, whose hand, and since when. */
const SIGNED: [table: string, by: string, since: string][] = [
  ['checkouts', 'signed_by', 'signed_on'],
  ['checkout_marks', 'signed_by', 'marked_on'],
  ['personal_limits', 'set_by', 'recorded_at'],
  ['endorsements', 'given_by', 'endorsed_on'],
  ['practice_records', 'instructor_id', 'flown_on'],
];

/**
 * An instructor's students ($1: club, $2: instructor, $3: now), and why, as rows of `member_id, because`. A student flies with them (a
 * booking with the instructor aboard as such, to come or within a year), or holds what they signed within a year: a checkout, an item
 * of one, an endorsement, practice they saw, limits. A booking is all it takes, so that an instructor can prepare the first lesson.
 */
export const STUDENTS = [
  ...['b.member_id', 'p.member_id'].map(
    (member) => `SELECT ${member} AS member_id, 'booked' AS because FROM booking_people i
     JOIN bookings b ON b.club_id = i.club_id AND b.id = i.booking_id AND b.status <> 'cancelled'
     ${member === 'p.member_id' ? 'JOIN booking_people p ON p.club_id = b.club_id AND p.booking_id = b.id' : ''}
    WHERE i.club_id = $1 AND i.member_id = $2 AND i.role = 'instructor' AND upper(b.during) > $3::timestamptz - ${BEHIND}
      AND ${member} <> $2`,
  ),
  ...SIGNED.map(
    ([table, by, since]) => `SELECT t.member_id, 'signed' FROM ${table} t
    WHERE t.club_id = $1 AND t.${by} = $2 AND t.member_id <> $2
      AND t.${since} > ${since === 'recorded_at' ? `$3::timestamptz - ${BEHIND}` : `($3::timestamptz - ${BEHIND})::date`}`,
  ),
].join('\n  UNION ALL ');

/** Of some members those whom the person, an instructor, teaches; nobody's when the person is none. */
export async function taughtAmong(
  em: EntityManager,
  person: SignedIn,
  memberIds: readonly string[],
  now: Instant,
): Promise<string[]> {
  if (!hasAnyRole(person, 'instructor')) return [];
  const rows: { id: string }[] = await em.query(
    `SELECT DISTINCT s.member_id AS id FROM (${STUDENTS}) s WHERE s.member_id = ANY ($4::uuid[])`,
    [person.clubId, person.memberId, now, memberIds],
  );
  return rows.map(({ id }) => id);
}

/** Whether the person is an instructor, and the member a student of theirs. */
export const teaches = async (
  em: EntityManager,
  person: SignedIn,
  memberId: string,
  now: Instant,
): Promise<boolean> => (await taughtAmong(em, person, [memberId], now)).length > 0;

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
