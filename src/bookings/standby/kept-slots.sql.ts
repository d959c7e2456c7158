/**
 * Offers as whoever books meets them: slots that are kept for somebody, and offers whose time is over.
 *
 * Locks are taken in one order by everybody, so that nobody waits in a circle: aircraft, entries on standby by id, offers, people.
 */
import type { EntityManager } from 'typeorm';
import { clubZone } from '../../clubs/club-time.js';
import { instant } from '../../decisions/gather/sql.js';
import type { ProblemException } from '../../platform/problems/index.js';
import { slotKept } from './standby.problems.js';

/** SQL condition on offers under an alias: open, their time is over ($1), of this aircraft or any ($2), and not this member's ($3). */
const ranOut = (o: string): string => `${o}.state = 'open' AND ${o}.expires_at <= $1::timestamptz
  AND ($2::uuid IS NULL OR ${o}.aircraft_id = $2) AND ${o}.member_id IS DISTINCT FROM $3::uuid`;

/**
 * Ends offers whose time is over, of one aircraft or of all. Who let one pass goes to the back of the order.
 *
 * @param of.exceptMemberId whose offers are left as they are: one that its member is about to take was in time when they asked
 * @returns how many
 */
export async function expireOffers(
  em: EntityManager,
  of: { now: string; aircraftId: string | null; exceptMemberId: string | null },
): Promise<number> {
  const expired: { entryId: string }[] = await em.query(
    `WITH entries AS MATERIALIZED (SELECT e.id FROM standby_entries e
        WHERE e.club_id = bellcrank_club() AND EXISTS (SELECT 1 FROM standby_offers o WHERE o.club_id = e.club_id AND o.entry_id = e.id
          AND ${ranOut('o')})
        ORDER BY e.id FOR UPDATE),
     expired AS (UPDATE standby_offers o SET state = 'expired', answered_at = $1
        WHERE o.club_id = bellcrank_club() AND ${ranOut('o')} AND o.entry_id IN (SELECT id FROM entries) RETURNING o.entry_id)
     SELECT entry_id AS "entryId" FROM expired`,
    [of.now, of.aircraftId, of.exceptMemberId],
  );
  if (expired.length > 0)
    await em.query(
      `UPDATE standby_entries SET placed_at = $2 WHERE club_id = bellcrank_club() AND state = 'waiting' AND id = ANY ($1::uuid[])`,
      [expired.map(({ entryId }) => entryId), of.now],
    );
  return expired.length;
}

/** Until when any of this time is kept for somebody else; null: it is not. Offers that are over have been ended before. */
async function keptUntil(
  em: EntityManager,
  of: { aircraftId: string; memberId: string; departs: string; arrives: string },
): Promise<string | null> {
  const [row]: { until: string | null }[] = await em.query(
    `SELECT ${instant('max(o.expires_at)')} AS until FROM standby_offers o
      WHERE o.club_id = bellcrank_club() AND o.aircraft_id = $1 AND o.member_id <> $2 AND o.state = 'open' AND o.holds
        AND o.during && tstzrange($3, $4, '[)')`,
    [of.aircraftId, of.memberId, of.departs, of.arrives],
  );
  return row?.until ?? null;
}

/** Why somebody cannot have this time: it is offered to who is on standby, and kept for them. Offers to others that are over are ended first. */
export async function keptForOthers(
  em: EntityManager,
  of: {
    clubId: string;
    aircraftId: string;
    memberId: string;
    departs: string;
    arrives: string;
    now: string;
  },
): Promise<ProblemException | null> {
  await expireOffers(em, { ...of, exceptMemberId: of.memberId });
  const until = await keptUntil(em, of);
  return until === null ? null : slotKept(until, await clubZone(em, of.clubId));
}
