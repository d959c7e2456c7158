import type { EntityManager } from 'typeorm';
import type { FlightRequestDto } from '../decisions/flight-request.dto.js';
import { instant } from '../decisions/gather/sql.js';
import type { Answer } from '../rules/index.js';
import { sheetsOf } from '../standing/gather-standing.js';
import { judgeAgain } from '../standing/judge-again.js';

/** What the engine says today of a booking's flight, with the facts as they stand inside the caller's transaction. */
export interface StandingAnswer {
  bookingId: string;
  memberId: string;
  memberName: string;
  aircraftId: string;
  departs: string;
  arrives: string;
  answer: Answer;
  /** What stands in the way, one sentence a rule; empty when nothing does. Personal: for the member and officers. */
  because: { rule: string; title: string; says: string }[];
}

/** A booking whose answer is another one after a change. */
export interface ChangedBooking extends Omit<StandingAnswer, 'answer'> {
  // `because` holds what the change put in the way.
  before: Answer;
  after: Answer;
}

interface Row extends Omit<StandingAnswer, 'answer' | 'because'> {
  request: FlightRequestDto;
}

/**
 * Judges every flight still booked on some aircraft anew, in order of departure; four statements, however many there are. As
 * the worker does that keeps standing answers: what only asks how a booking is made is not asked of one that stands, and a
 * flight that cannot be read any more stands at no.
 */
export async function standingAnswers(
  em: EntityManager,
  of: { aircraftIds: readonly string[]; now: string },
): Promise<StandingAnswer[]> {
  const rows: Row[] = await em.query(
    `SELECT b.id AS "bookingId", b.member_id AS "memberId", m.name AS "memberName", b.aircraft_id AS "aircraftId",
        ${instant('lower(b.during)')} AS departs, ${instant('upper(b.during)')} AS arrives, b.request
       FROM bookings b JOIN members m ON m.club_id = b.club_id AND m.id = b.member_id
      WHERE b.club_id = bellcrank_club() AND b.kind = 'flight' AND b.status = 'booked'
        AND b.aircraft_id = ANY ($1::uuid[]) AND lower(b.during) > $2::timestamptz
      ORDER BY lower(b.during), b.id`,
    [of.aircraftIds, of.now],
  );
  const found = await sheetsOf(em, rows, of.now);
  return rows.map(({ request: _asked, ...row }, index) => {
    const { answer, because } = judgeAgain(row.bookingId, found[index]!);
    return { ...row, answer, because: because.map(({ rule, title, says }) => ({ rule, title, says })) };
  });
}

/**
 * Runs a change and says which bookings of these aircraft are answered otherwise after it. All in the caller's transaction, so a
 * preview is the change itself, rolled back.
 */
export async function withBookingEffects<T>(
  em: EntityManager,
  of: { aircraftIds: readonly string[]; now: string },
  change: () => Promise<T>,
): Promise<{ result: T; bookings: number; changed: ChangedBooking[] }> {
  const before = new Map((await standingAnswers(em, of)).map((one) => [one.bookingId, one]));
  const result = await change();
  const after = await standingAnswers(em, of);
  const changed = after.flatMap(({ answer, because, ...one }): ChangedBooking[] => {
    const was = before.get(one.bookingId);
    if (was === undefined || was.answer === answer) return [];
    // Only what the change brought about: what else stands in a member's way is theirs.
    const stoodBefore = new Set(was.because.map(({ rule }) => rule));
    const brought = because.filter(({ rule }) => !stoodBefore.has(rule));
    return [{ ...one, before: was.answer, after: answer, because: brought }];
  });
  return { result, bookings: after.length, changed };
}
