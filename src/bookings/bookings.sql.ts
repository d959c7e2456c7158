import type { EntityManager } from 'typeorm';
import type { BookingRow } from './booking.entity.js';
import { newId } from '../platform/ids.js';
import { instant, object } from '../decisions/gather/sql.js';

const PEOPLE = `(SELECT coalesce(jsonb_agg(${object({ memberId: 'p.member_id', name: 'pm.name', role: 'p.role' })}
    ORDER BY p.role, p.member_id), '[]'::jsonb)
  FROM booking_people p JOIN members pm ON pm.club_id = p.club_id AND pm.id = p.member_id
  WHERE p.club_id = b.club_id AND p.booking_id = b.id)`;

const OVERRIDES = `(SELECT coalesce(jsonb_agg(${object({ ruleId: 'o.rule_id', officerId: 'o.officer_id', reason: 'o.reason' })}
    ORDER BY o.rule_id), '[]'::jsonb)
  FROM overrides o WHERE o.club_id = b.club_id AND o.booking_id = b.id AND o.decision_id = b.decision_id)`;

const HAND_OVER = `(SELECT ${object({ id: 'h.id', toId: 'h.to_id', toName: 't.name', offeredById: 'h.offered_by' })}
  FROM hand_overs h JOIN members t ON t.club_id = h.club_id AND t.id = h.to_id
  WHERE h.club_id = b.club_id AND h.booking_id = b.id AND h.outcome IS NULL)`;

const SELECT = `SELECT b.id, b.kind, b.status, b.aircraft_id AS "aircraftId", a.registration, b.member_id AS "memberId",
    m.name AS "memberName", ${instant('lower(b.during)')} AS departs, ${instant('upper(b.during)')} AS arrives,
    b.expected_tenths AS "expectedTenths", b.note, b.decision_id AS "decisionId", b.row_version AS "rowVersion",
    b.series_id AS "seriesId", ${instant('b.hold_until')} AS "holdUntil", ${instant('b.cancelled_at')} AS "cancelledAt",
    b.cancelled_late AS "cancelledLate", b.cancel_reason AS "cancelReason", ${HAND_OVER} AS "handOver",
    ${PEOPLE} AS people, ${OVERRIDES} AS overrides
  FROM bookings b
  JOIN aircraft a ON a.club_id = b.club_id AND a.id = b.aircraft_id
  JOIN members m ON m.club_id = b.club_id AND m.id = b.member_id
  WHERE b.club_id = bellcrank_club()`;

/** What a list of bookings is narrowed to; null leaves it open. */
export interface BookingFilter {
  from: string | null;
  to: string | null;
  aircraftId: string | null;
  memberId: string | null;
  afterId: string | null;
  limit: number;
}

/** Bookings in order of id; one more than the limit is read by callers that page. */
export function listBookings(em: EntityManager, filter: BookingFilter): Promise<BookingRow[]> {
  return em.query(
    `${SELECT}
     AND ($1::timestamptz IS NULL OR upper(b.during) > $1) AND ($2::timestamptz IS NULL OR lower(b.during) < $2)
     AND ($3::uuid IS NULL OR b.aircraft_id = $3)
     AND ($4::uuid IS NULL OR EXISTS (SELECT 1 FROM booking_people x WHERE x.club_id = b.club_id AND x.booking_id = b.id AND x.member_id = $4))
     AND ($5::uuid IS NULL OR b.id > $5)
     ORDER BY b.id LIMIT $6`,
    [filter.from, filter.to, filter.aircraftId, filter.memberId, filter.afterId, filter.limit],
  );
}

export async function findBooking(em: EntityManager, id: string): Promise<BookingRow | null> {
  const rows: BookingRow[] = await em.query(`${SELECT} AND b.id = $1`, [id]);
  return rows[0] ?? null;
}

/** Queues with whoever else is booking this aircraft, so that hours booked before a limit are counted once. False: no such aircraft. */
export async function lockAircraft(em: EntityManager, aircraftId: string): Promise<boolean> {
  const rows: unknown[] = await em.query(
    'SELECT 1 FROM aircraft WHERE club_id = bellcrank_club() AND id = $1 FOR NO KEY UPDATE',
    [aircraftId],
  );
  return rows.length > 0;
}

/**
 * Queues with whoever else is booking any of these people, always in the same order. Two bookings of one crew in two
 * aircraft would otherwise each wait for the other's exclusion constraint until the database breaks the deadlock.
 */
export async function lockPeople(em: EntityManager, memberIds: readonly string[]): Promise<void> {
  await em.query(
    'SELECT 1 FROM members WHERE club_id = bellcrank_club() AND id = ANY ($1::uuid[]) ORDER BY id FOR NO KEY UPDATE',
    [memberIds],
  );
}

/** Keeps others from changing a booking until the transaction ends. */
export async function lockBooking(em: EntityManager, id: string): Promise<void> {
  await em.query('SELECT 1 FROM bookings WHERE club_id = bellcrank_club() AND id = $1 FOR UPDATE', [id]);
}

/** A new booking of an aircraft and its people. */
export interface NewBooking {
  id: string;
  kind: BookingRow['kind'];
  aircraftId: string;
  memberId: string;
  departs: string;
  arrives: string;
  expectedTenths: number;
  request: object;
  note: string;
  decisionId: string | null;
  people: BookingCrew;
  seriesId?: string | null;
  holdUntil?: string | null;
}

/** Who is taken up, in which part. */
export type BookingCrew = { memberId: string; role: 'pilot' | 'instructor' | 'second-pilot' }[];

/** Inserts it; the database refuses an overlap of the aircraft or of a person (SQLSTATE 23P01). */
export async function insertBooking(em: EntityManager, booking: NewBooking): Promise<void> {
  await em.query(
    `INSERT INTO bookings (club_id, id, kind, aircraft_id, member_id, during, expected_tenths, request, note, decision_id, series_id, hold_until)
     VALUES (bellcrank_club(), $1, $2, $3, $4, tstzrange($5, $6, '[)'), $7, $8, $9, $10, $11, $12)`,
    [
      booking.id,
      booking.kind,
      booking.aircraftId,
      booking.memberId,
      booking.departs,
      booking.arrives,
      booking.expectedTenths,
      JSON.stringify(booking.request),
      booking.note,
      booking.decisionId,
      booking.seriesId ?? null,
      booking.holdUntil ?? null,
    ],
  );
  await insertCrew(em, booking.id, booking.people);
}

/** Takes up people with a booking, for as long as it lasts. */
export async function insertCrew(em: EntityManager, bookingId: string, people: BookingCrew): Promise<void> {
  if (people.length === 0) return;
  await em.query(
    `INSERT INTO booking_people (club_id, booking_id, member_id, role, during, occupies)
     SELECT b.club_id, b.id, p.member_id, p.role, b.during, b.occupies
     FROM bookings b, unnest($2::uuid[], $3::text[]) AS p (member_id, role)
     WHERE b.club_id = bellcrank_club() AND b.id = $1`,
    [bookingId, people.map((person) => person.memberId), people.map((person) => person.role)],
  );
}

/** Takes an aircraft off the calendar. @returns the id of the block */
export async function insertBlock(
  em: EntityManager,
  block: Pick<NewBooking, 'kind' | 'aircraftId' | 'memberId' | 'departs' | 'arrives' | 'note'>,
): Promise<string> {
  const id = newId();
  await insertBooking(em, { ...block, id, expectedTenths: 0, request: {}, decisionId: null, people: [] });
  return id;
}

/**
 * The bookings that stand in the way of these times: of the aircraft, or of any of the people. Ask `endLapsedHolds` first: a hold
 * whose time is up stands in nobody's way.
 */
export function conflictsOf(
  em: EntityManager,
  of: {
    aircraftId: string;
    memberIds: readonly string[];
    departs: string;
    arrives: string;
    exceptId: string | null;
  },
): Promise<BookingRow[]> {
  return em.query(
    `${SELECT} AND b.occupies AND b.during && tstzrange($1, $2, '[)') AND b.id IS DISTINCT FROM $5::uuid
     AND (b.aircraft_id = $3 OR EXISTS (SELECT 1 FROM booking_people x
       WHERE x.club_id = b.club_id AND x.booking_id = b.id AND x.member_id = ANY ($4::uuid[])))
     ORDER BY lower(b.during), b.id LIMIT 5`,
    [of.departs, of.arrives, of.aircraftId, of.memberIds, of.exceptId],
  );
}
