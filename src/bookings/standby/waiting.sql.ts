/** Who waits, in the order of the club, and which aircraft are free for them: all of it as of one instant. */
import type { EntityManager } from 'typeorm';
import type { FlightRequestDto } from '../../decisions/flight-request.dto.js';
import { instant } from '../../decisions/gather/sql.js';

/** Somebody who waits, with the aircraft that are free for the whole of their flight. */
export interface Waiting {
  id: string;
  memberId: string;
  request: FlightRequestDto;
  departs: string;
  arrives: string;
  aircraftIds: string[];
}

/**
 * In the order of the club. One statement sees one state of the calendar: a slot that comes free after it is passed on by the
 * next round, from the front, and never to somebody further back.
 */
export const waitingWithSlots = (
  em: EntityManager,
  of: { now: string; noLaterThan: string; fewestHoursFirst: boolean; limit: number },
): Promise<Waiting[]> =>
  em.query(
    `SELECT e.id, e.member_id AS "memberId", e.request, ${instant('lower(e.during)')} AS departs, ${instant('upper(e.during)')} AS arrives,
        free.ids AS "aircraftIds"
       FROM standby_entries e
       CROSS JOIN LATERAL (SELECT coalesce(sum(upper(b.during) - greatest(lower(b.during), $1::timestamptz)), interval '0') AS hours
          FROM bookings b WHERE b.club_id = e.club_id AND b.member_id = e.member_id AND b.kind = 'flight' AND b.occupies
            AND upper(b.during) > $1::timestamptz) ahead
       CROSS JOIN LATERAL (SELECT array_agg(a.id ORDER BY a.registration, a.id) AS ids FROM aircraft a
          WHERE a.club_id = e.club_id AND (e.aircraft_id IS NULL OR a.id = e.aircraft_id)
            AND NOT EXISTS (SELECT 1 FROM bookings b WHERE b.club_id = a.club_id AND b.aircraft_id = a.id AND b.occupies
              AND b.during && e.during)
            AND NOT EXISTS (SELECT 1 FROM standby_offers o WHERE o.club_id = a.club_id AND o.aircraft_id = a.id
              AND (o.state = 'open' AND o.during && e.during OR o.entry_id = e.id AND o.state IN ('declined', 'expired')))) free
      WHERE e.club_id = bellcrank_club() AND e.state = 'waiting' AND lower(e.during) >= $2::timestamptz AND lower(e.during) > $1::timestamptz AND free.ids IS NOT NULL
        AND NOT EXISTS (SELECT 1 FROM standby_offers o WHERE o.club_id = e.club_id AND o.entry_id = e.id AND o.state = 'open')
        AND NOT EXISTS (SELECT 1 FROM booking_people p WHERE p.club_id = e.club_id AND p.member_id = e.member_id AND p.occupies
          AND p.during && e.during)
      ORDER BY CASE WHEN $3 THEN ahead.hours END, e.placed_at, e.id LIMIT $4`,
    [of.now, of.noLaterThan, of.fewestHoursFirst, of.limit],
  );

/** Queues for every entry that a round may end or put to the back, in the order in which all do. */
export async function lockEntries(em: EntityManager, now: string): Promise<void> {
  await em.query(
    `SELECT 1 FROM standby_entries e WHERE e.club_id = bellcrank_club()
        AND (e.state = 'waiting' AND lower(e.during) <= $1::timestamptz
          OR EXISTS (SELECT 1 FROM standby_offers o WHERE o.club_id = e.club_id AND o.entry_id = e.id AND o.state = 'open'))
      ORDER BY e.id FOR UPDATE`,
    [now],
  );
}

/** Ends entries whose departure has passed; takes back offers whose slot is gone (maintenance goes before) or whom nobody waits for. */
export async function clearUp(em: EntityManager, now: string): Promise<void> {
  await em.query(
    `UPDATE standby_offers o SET state = 'withdrawn', answered_at = $1
      WHERE o.club_id = bellcrank_club() AND o.state = 'open' AND (EXISTS (SELECT 1 FROM bookings b WHERE b.club_id = o.club_id
          AND b.aircraft_id = o.aircraft_id AND b.occupies AND b.during && o.during)
        OR EXISTS (SELECT 1 FROM standby_entries e WHERE e.club_id = o.club_id AND e.id = o.entry_id AND e.state <> 'waiting'))`,
    [now],
  );
  await em.query(
    `UPDATE standby_entries SET state = 'over' WHERE club_id = bellcrank_club() AND state = 'waiting'
       AND lower(during) <= $1::timestamptz`,
    [now],
  );
}

/** What is due and what was to come. They stay until the round that does it is over (`takeWakes`). */
export async function readWakes(em: EntityManager): Promise<string[]> {
  const rows: { id: string }[] = await em.query(
    'SELECT id FROM standby_wakes WHERE club_id = bellcrank_club()',
  );
  return rows.map(({ id }) => id);
}

/** Takes up those that were done; what came meanwhile is for the next round. */
export async function takeWakes(em: EntityManager, ids: readonly string[]): Promise<void> {
  await em.query('DELETE FROM standby_wakes WHERE club_id = bellcrank_club() AND id = ANY ($1::bigint[])', [
    ids,
  ]);
}

/**
 * Whether a slot may be offered for an entry: it still waits and is offered nothing, and nobody books the aircraft or is offered it.
 * Asked under the locks of the aircraft and the entry.
 */
export async function isFree(
  em: EntityManager,
  of: { entryId: string; aircraftId: string; departs: string; arrives: string },
): Promise<boolean> {
  const rows: unknown[] = await em.query(
    `SELECT 1 FROM standby_entries e WHERE e.club_id = bellcrank_club() AND e.id = $1 AND e.state = 'waiting'
        AND NOT EXISTS (SELECT 1 FROM standby_offers o WHERE o.club_id = e.club_id AND o.state = 'open'
          AND (o.entry_id = e.id OR o.aircraft_id = $2 AND o.during && tstzrange($3, $4, '[)')))`,
    [of.entryId, of.aircraftId, of.departs, of.arrives],
  );
  return rows.length > 0;
}

/** Has somebody look again: when the next offer or entry ends, and every so often while anybody waits, since facts change. */
export async function wakeNext(em: EntityManager, of: { now: string; everySeconds: number }): Promise<void> {
  await em.query(
    `INSERT INTO standby_wakes (club_id, due_at)
     SELECT bellcrank_club(), least((SELECT min(expires_at) FROM standby_offers WHERE club_id = bellcrank_club() AND state = 'open'),
         $1::timestamptz + make_interval(secs => $2))
      WHERE EXISTS (SELECT 1 FROM standby_entries WHERE club_id = bellcrank_club() AND state = 'waiting')`,
    [of.now, of.everySeconds],
  );
}
