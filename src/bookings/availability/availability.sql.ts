import type { EntityManager } from 'typeorm';
import { date, instant } from '../../decisions/gather/sql.js';
import type { TeachingHoursFact } from '../../rules/index.js';

/** Hours as kept; minutes count from midnight on the club's clock. */
export type HoursRow = TeachingHoursFact & { memberId: string; rowVersion: number };

const SELECT = `SELECT t.id, t.member_id AS "memberId", t.kind, t.weekday, ${date('t.on_date')} AS "on", t.opens_minutes AS "opensMinutes",
    t.closes_minutes AS "closesMinutes", ${date('t.valid_from')} AS "from", ${date('t.valid_through')} AS through,
    t.row_version AS "rowVersion"
  FROM teaching_hours t WHERE t.club_id = bellcrank_club()`;

/** Hours that are not over before a date, of one person or of everybody. */
export const hoursSince = (
  em: EntityManager,
  of: { memberId: string | null; since: string },
): Promise<HoursRow[]> =>
  em.query(
    `${SELECT} AND ($1::uuid IS NULL OR t.member_id = $1) AND coalesce(t.on_date, t.valid_through, 'infinity') >= $2::date
     ORDER BY t.kind DESC, t.weekday, t.on_date, t.opens_minutes, t.id`,
    [of.memberId, of.since],
  );

/** One set of hours of a person's; nobody else changes it until the transaction ends. */
export async function lockHours(
  em: EntityManager,
  of: { id: string; memberId: string },
): Promise<HoursRow | null> {
  const rows: HoursRow[] = await em.query(`${SELECT} AND t.id = $1 AND t.member_id = $2 FOR UPDATE`, [
    of.id,
    of.memberId,
  ]);
  return rows[0] ?? null;
}

export async function insertHours(em: EntityManager, row: Omit<HoursRow, 'rowVersion'>): Promise<void> {
  await em.query(
    `INSERT INTO teaching_hours (club_id, id, member_id, kind, weekday, on_date, opens_minutes, closes_minutes, valid_from, valid_through)
     VALUES (bellcrank_club(), $1, $2, $3, $4, $5, $6, $7, $8, $9)`,
    [
      ...[row.id, row.memberId, row.kind, row.weekday, row.on, row.opensMinutes, row.closesMinutes],
      ...[row.from, row.through],
    ],
  );
}

export async function deleteHours(em: EntityManager, id: string): Promise<void> {
  await em.query('DELETE FROM teaching_hours WHERE club_id = bellcrank_club() AND id = $1', [id]);
}

export const isInstructor = async (em: EntityManager, memberId: string): Promise<boolean> => {
  const rows: unknown[] = await em.query(
    `SELECT 1 FROM member_roles WHERE club_id = bellcrank_club() AND member_id = $1 AND role = 'instructor'`,
    [memberId],
  );
  return rows.length > 0;
};

/** The club's instructors, and until when a booking takes each up that shares time with a span. */
export const instructorsOver = (
  em: EntityManager,
  of: { departs: string; arrives: string; today: string },
): Promise<{ memberId: string; name: string; busyUntil: string | null }[]> =>
  em.query(
    `SELECT m.id AS "memberId", m.name, (SELECT ${instant('max(upper(p.during))')} FROM booking_people p
        WHERE p.club_id = m.club_id AND p.member_id = m.id AND p.occupies AND p.during && tstzrange($1, $2, '[)')) AS "busyUntil"
       FROM members m JOIN member_roles r ON r.club_id = m.club_id AND r.member_id = m.id AND r.role = 'instructor'
      WHERE m.club_id = bellcrank_club() AND coalesce(m.membership_through, 'infinity') >= $3::date ORDER BY m.name, m.id`,
    [of.departs, of.arrives, of.today],
  );
