/** Booked flights as they are judged again: which of them, and with which facts. */
import type { EntityManager } from 'typeorm';
import type { FlightRequestDto } from '../decisions/flight-request.dto.js';
import { gatherEach } from '../decisions/gather/each.js';
import { instant } from '../decisions/gather/sql.js';
import { ProblemException } from '../platform/problems/index.js';
import type { Answer, FactSheet, Policy } from '../rules/index.js';

/** A flight that is booked and has not begun. */
export interface BookedFlight {
  bookingId: string;
  memberId: string;
  aircraftId: string;
  departs: string;
  request: FlightRequestDto;
  /** The answer it stands at; null: it was not judged since it was booked. */
  stood: Answer | null;
  stoodBecause: Because[] | null;
}

/** What stands in the way of a flight, a sentence a rule. */
export interface Because {
  rule: string;
  title: string;
  says: string;
  /** Whose record it tells of. */
  people: string[];
}

const TO_COME = `b.club_id = bellcrank_club() AND b.kind = 'flight' AND b.status = 'booked' AND lower(b.during) > $1::timestamptz`;

const SELECT = `SELECT b.id AS "bookingId", b.member_id AS "memberId", b.aircraft_id AS "aircraftId",
    ${instant('lower(b.during)')} AS departs, b.request, s.answer AS stood, s.because AS "stoodBecause"
  FROM bookings b LEFT JOIN standing_answers s ON s.club_id = b.club_id AND s.booking_id = b.id
  WHERE ${TO_COME}`;

/**
 * Ids of the flights that read a changed fact, were never judged, or whose answer may change by now though nothing did, in
 * order. `subjects` null: every flight. Found once for all of them: what thousands of facts touch takes as long to find for one
 * page of flights as for all.
 */
export async function flightsThatRead(
  em: EntityManager,
  of: { subjects: readonly string[] | null; now: string },
): Promise<string[]> {
  const rows: { bookingId: string }[] = await em.query(
    `WITH touched AS (SELECT x.booking_id FROM standing_answers x
         WHERE x.club_id = bellcrank_club() AND $2::text[] IS NOT NULL AND x.reads && $2::text[])
     SELECT b.id AS "bookingId" FROM bookings b LEFT JOIN standing_answers s ON s.club_id = b.club_id AND s.booking_id = b.id
      WHERE ${TO_COME}
        AND ($2::text[] IS NULL OR s.booking_id IS NULL OR s.holds_until <= $1::timestamptz OR b.id IN (SELECT booking_id FROM touched))
      ORDER BY b.id`,
    [of.now, of.subjects],
  );
  return rows.map(({ bookingId }) => bookingId);
}

/** Booked flights by their ids, in order; those that are to come no more are absent. */
export function readFlights(em: EntityManager, ids: readonly string[], now: string): Promise<BookedFlight[]> {
  return em.query(`${SELECT} AND b.id = ANY ($2::uuid[]) ORDER BY b.id`, [now, ids]);
}

/** A flight's facts with the policy that judges them, or what is wrong with it where it cannot be read any more. */
export type Found = { sheet: FactSheet; policy: Policy } | ProblemException;

/** What is found of each flight, in their order. */
export async function sheetsOf(
  em: EntityManager,
  flights: readonly Omit<BookedFlight, 'stood' | 'stoodBecause'>[],
  now: string,
): Promise<Found[]> {
  if (flights.length === 0) return [];
  try {
    const { sheets, policy } = await gatherEach(em, { flights, knownAt: now });
    return sheets.map((sheet) => ({ sheet, policy }));
  } catch (error) {
    if (!(error instanceof ProblemException)) throw error;
    if (flights.length === 1) return [error];
    // One of them cannot be read: halves, until it stands alone.
    const middle = Math.ceil(flights.length / 2);
    return [
      ...(await sheetsOf(em, flights.slice(0, middle), now)),
      ...(await sheetsOf(em, flights.slice(middle), now)),
    ];
  }
}
