/** Judges again what changed facts touch, in transactions of the club's own. */
import type { EntityManager } from 'typeorm';
import type { TenantDb } from '../platform/database/tenant.js';
import { newId } from '../platform/ids.js';
import type { Answer, Jurisdiction } from '../rules/index.js';
import {
  flightsThatRead,
  readFlights,
  sheetsOf,
  type Because,
  type BookedFlight,
} from './gather-standing.js';
import { judgeAgain, lawDigest, type StandingRow } from './judge-again.js';
import { tellOfChanges } from './tell-changes.js';

/** What was done. */
export interface Rejudged {
  /** Changed facts that were looked at. */
  facts: number;
  /** Flights judged again. */
  judged: number;
  /** Of them, flights whose answer is another one now. */
  changed: number;
}

/** Flights judged in one go. */
const FLIGHTS_AT_ONCE = 200;

/** Whether changes came from facts or from a release that brought another law. */
const NEW_LAW = 'law';

/**
 * Brings a club's standing answers up to date. Facts are taken up and answers written in one transaction, so whatever
 * happens in between, a change is never lost and never counted twice. One process at a time does it for a club; what
 * another commits meanwhile is seen by the next round.
 */
export const rejudgeClub = (db: TenantDb, clubId: string, now: () => string): Promise<Rejudged> =>
  db.run(clubId, (em) => rejudgeIn(em, clubId, now()), { statementTimeoutMs: 60_000 });

async function rejudgeIn(em: EntityManager, clubId: string, now: string): Promise<Rejudged> {
  await em.query(`SELECT pg_advisory_xact_lock(hashtextextended('standing answers of ' || $1::text, 0))`, [
    clubId,
  ]);
  // All of them, however many: in parts, a flight that many of them touch would be judged once for each part.
  const taken: { subject: string; n: number }[] = await em.query(
    `WITH taken AS (DELETE FROM fact_changes WHERE club_id = bellcrank_club() RETURNING subject)
     SELECT subject, count(*)::int AS n FROM taken GROUP BY subject ORDER BY subject`,
  );
  const subjects = taken.map(({ subject }) => subject);
  const [club]: { jurisdiction: Jurisdiction; stood: string | null }[] = await em.query(
    `SELECT c.jurisdiction, s.law AS stood FROM clubs c LEFT JOIN standing_clubs s ON s.club_id = c.club_id
      WHERE c.club_id = bellcrank_club()`,
  );
  const law = lawDigest(club!.jurisdiction);
  const all = club!.stood !== null && club!.stood !== law;
  const facts = taken.reduce((sum, { n }) => sum + n, 0);
  const round: Rejudged = { facts, judged: 0, changed: 0 };
  const told: Change[] = [];
  const ids = await flightsThatRead(em, { subjects: all ? null : subjects, now });
  for (let at = 0; at < ids.length; at += FLIGHTS_AT_ONCE) {
    const flights = await readFlights(em, ids.slice(at, at + FLIGHTS_AT_ONCE), now);
    round.judged += flights.length;
    const changes = await judgeAndKeep(em, {
      flights,
      now,
      causes: all ? [...subjects, NEW_LAW] : subjects,
    });
    round.changed += changes.length;
    told.push(...changes);
  }
  // All that was taken up at once is one event: whoever flies is told once of it.
  await tellOfChanges(em, told, now);
  await em.query(
    `INSERT INTO standing_clubs (club_id, law, due_at)
     VALUES (bellcrank_club(), $1, (SELECT min(s.holds_until) FROM standing_answers s JOIN bookings b
        ON b.club_id = s.club_id AND b.id = s.booking_id
        WHERE s.club_id = bellcrank_club() AND b.status = 'booked' AND lower(b.during) > $2::timestamptz))
     ON CONFLICT (club_id) DO UPDATE SET law = excluded.law, due_at = excluded.due_at`,
    [law, now],
  );
  return round;
}

interface Change {
  id: string;
  bookingId: string;
  before: Answer;
  after: Answer;
  because: Because[];
  causedBy: string[];
}

/** @returns the answers that are others now */
async function judgeAndKeep(
  em: EntityManager,
  of: { flights: BookedFlight[]; now: string; causes: readonly string[] },
): Promise<Change[]> {
  const found = await sheetsOf(em, of.flights, of.now);
  const rows: StandingRow[] = [];
  const changes: Change[] = [];
  for (const [index, flight] of of.flights.entries()) {
    const row = judgeAgain(flight.bookingId, found[index]!);
    rows.push(row);
    if (flight.stood === null || flight.stood === row.answer) continue;
    const stood = new Set((flight.stoodBecause ?? []).map(({ rule }) => rule));
    const read = new Set(row.reads);
    changes.push({
      ...{ id: newId(), bookingId: flight.bookingId, before: flight.stood, after: row.answer },
      because: row.because.filter(({ rule }) => !stood.has(rule)),
      causedBy: of.causes.filter((cause) => cause === NEW_LAW || read.has(cause)),
    });
  }
  if (rows.length === 0) return [];
  await em.query(
    `INSERT INTO standing_answers (club_id, booking_id, answer, because, reads, holds_until, judged_at)
     SELECT bellcrank_club(), r."bookingId", r.answer, r.because, r.reads, r."holdsUntil", $2::timestamptz
     FROM jsonb_to_recordset($1::jsonb) AS r ("bookingId" uuid, answer text, because jsonb, reads text[], "holdsUntil" timestamptz)
     ON CONFLICT (club_id, booking_id) DO UPDATE SET answer = excluded.answer, because = excluded.because,
       reads = excluded.reads, holds_until = excluded.holds_until, judged_at = excluded.judged_at`,
    [JSON.stringify(rows), of.now],
  );
  if (changes.length > 0) {
    await em.query(
      `INSERT INTO standing_changes (club_id, id, booking_id, before, after, because, caused_by, at)
       SELECT bellcrank_club(), c.id, c."bookingId", c.before, c.after, c.because, c."causedBy", $2::timestamptz
       FROM jsonb_to_recordset($1::jsonb) AS c (id uuid, "bookingId" uuid, before text, after text, because jsonb, "causedBy" text[])`,
      [JSON.stringify(changes), of.now],
    );
  }
  return changes;
}
