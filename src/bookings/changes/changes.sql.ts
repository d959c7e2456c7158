import type { EntityManager } from 'typeorm';
import type { FlightRequestDto } from '../../decisions/flight-request.dto.js';
import { instant } from '../../decisions/gather/sql.js';
import { newId } from '../../platform/ids.js';
import type { BookingRow } from '../booking.entity.js';
import { noAircraft, noBooking } from '../bookings.problems.js';
import { findBooking, insertCrew, lockBooking, lockPeople, type BookingCrew } from '../bookings.sql.js';

/** What a booking was or became; only what differs is kept. */
export interface BookingState {
  aircraftId: string;
  memberId: string;
  instructorId: string | null;
  secondPilotId: string | null;
  departs: string;
  arrives: string;
  /** Of a flight that is out: by it the aircraft is overdue. */
  dueBackAt?: string;
  purpose: string | null;
  personsOnBoard: number | null;
  kind: string;
  status: string;
}

/** A booking to be changed, with what was asked for when it was made. */
export interface OpenBooking {
  row: BookingRow;
  request: FlightRequestDto;
}

/** Reads a booking with what was asked for. @throws ProblemException 404 */
export async function openBooking(em: EntityManager, id: string): Promise<OpenBooking> {
  const row = await findBooking(em, id);
  if (!row) throw noBooking(id);
  const [found]: { request: FlightRequestDto }[] = await em.query(
    'SELECT request FROM bookings WHERE club_id = bellcrank_club() AND id = $1',
    [id],
  );
  return { row, request: { ...found!.request, memberId: row.memberId } };
}

/**
 * Queues for a change as a booking does: aircraft in order of id, people in order of id, and then the booking itself, which is read
 * anew. Whatever it was when its people were read, the caller's If-Match tells.
 */
export async function lockForChange(
  em: EntityManager,
  id: string,
  more: { aircraftIds?: string[]; memberIds?: string[] } = {},
): Promise<OpenBooking> {
  const { row } = await openBooking(em, id);
  const aircraftIds = [...new Set([row.aircraftId, ...(more.aircraftIds ?? [])])];
  const locked: { id: string }[] = await em.query(
    'SELECT id FROM aircraft WHERE club_id = bellcrank_club() AND id = ANY ($1::uuid[]) ORDER BY id FOR NO KEY UPDATE',
    [aircraftIds],
  );
  const missing = aircraftIds.find((wanted) => !locked.some((one) => one.id === wanted));
  if (missing !== undefined) throw noAircraft(missing);
  await lockPeople(em, [...row.people.map(({ memberId }) => memberId), ...(more.memberIds ?? [])]);
  await lockBooking(em, id);
  return openBooking(em, id);
}

/** How a booking is to be from now on. */
export interface NewState {
  kind: BookingRow['kind'];
  aircraftId: string;
  memberId: string;
  departs: string;
  arrives: string;
  expectedTenths: number;
  request: object;
  note: string;
  decisionId: string | null;
  crew: BookingCrew;
}

/** Writes it; the database refuses an overlap of the aircraft or of a person (SQLSTATE 23P01). */
export async function writeState(em: EntityManager, before: BookingRow, next: NewState): Promise<void> {
  const told = (crew: BookingCrew): string =>
    crew
      .map(({ memberId, role }) => `${memberId} ${role}`)
      .sort()
      .join();
  const crewChanged = told(before.people) !== told(next.crew);
  if (crewChanged)
    await em.query('DELETE FROM booking_people WHERE club_id = bellcrank_club() AND booking_id = $1', [
      before.id,
    ]);
  await em.query(
    `UPDATE bookings SET kind = $2, aircraft_id = $3, member_id = $4, during = tstzrange($5, $6, '[)'), expected_tenths = $7,
        request = $8, note = $9, decision_id = $10, hold_until = CASE WHEN $2 = 'hold' THEN hold_until END
      WHERE club_id = bellcrank_club() AND id = $1`,
    [
      ...[before.id, next.kind, next.aircraftId, next.memberId, next.departs, next.arrives],
      ...[next.expectedTenths, JSON.stringify(next.request), next.note, next.decisionId],
    ],
  );
  if (crewChanged) await insertCrew(em, before.id, next.crew);
  // It is another flight: what was said of the old one is judged anew, and of another member's record it says nothing more.
  const gone =
    before.memberId === next.memberId ? ['standing_answers'] : ['standing_answers', 'standing_changes'];
  for (const table of gone)
    await em.query(`DELETE FROM ${table} WHERE club_id = bellcrank_club() AND booking_id = $1`, [before.id]);
}

/** Adds to the history of a booking. */
export async function noteChange(
  em: EntityManager,
  of: {
    bookingId: string;
    act: 'edited' | 'handed-over' | 'cancelled' | 'displaced' | 'confirmed';
    byId: string;
    before: Partial<BookingState>;
    after: Partial<BookingState>;
    also?: readonly string[];
    decisionId?: string | null;
    at: string;
  },
): Promise<void> {
  const { before, after } = differing(of.before, of.after);
  await em.query(
    `INSERT INTO booking_changes (club_id, id, booking_id, act, by_id, before, after, also, decision_id, at)
     VALUES (bellcrank_club(), $1, $2, $3, $4, $5, $6, $7, $8, $9)`,
    [
      ...[newId(), of.bookingId, of.act, of.byId, JSON.stringify(before), JSON.stringify(after)],
      ...[of.also ?? [], of.decisionId ?? null, of.at],
    ],
  );
}

/** The fields of two states that differ. */
export function differing(
  before: Partial<BookingState>,
  after: Partial<BookingState>,
): { before: object; after: object } {
  const fields = Object.keys(after) as (keyof BookingState)[];
  const other = fields.filter((field) => before[field] !== after[field]);
  const some = (of: Partial<BookingState>) => Object.fromEntries(other.map((field) => [field, of[field]]));
  return { before: some(before), after: some(after) };
}

/** A change as it was noted. */
export interface ChangeRow {
  id: string;
  act: string;
  at: string;
  byId: string | null;
  byName: string | null;
  before: Partial<BookingState>;
  after: Partial<BookingState>;
  also: string[];
  decisionId: string | null;
}

/** The history of a booking, and what the identifiers in it stand for. */
export async function historyOf(
  em: EntityManager,
  bookingId: string,
): Promise<{ items: ChangeRow[]; names: { id: string; name: string }[] }> {
  const items: ChangeRow[] = await em.query(
    `SELECT c.id, c.act, ${instant('c.at')} AS at, c.by_id AS "byId", m.name AS "byName", c.before, c.after, c.also,
        c.decision_id AS "decisionId"
       FROM booking_changes c LEFT JOIN members m ON m.club_id = c.club_id AND m.id = c.by_id
      WHERE c.club_id = bellcrank_club() AND c.booking_id = $1 ORDER BY c.id`,
    [bookingId],
  );
  const states = items.flatMap(({ before, after }) => [before, after]);
  const ids = states.flatMap((one) => [one.aircraftId, one.memberId, one.instructorId, one.secondPilotId]);
  const names: { id: string; name: string }[] = await em.query(
    `SELECT id, name FROM members WHERE club_id = bellcrank_club() AND id = ANY ($1::uuid[])
     UNION ALL SELECT id, registration FROM aircraft WHERE club_id = bellcrank_club() AND id = ANY ($1::uuid[])`,
    [[...new Set(ids)].filter((id) => typeof id === 'string')],
  );
  return { items, names };
}
