/** Holds whose time is up: they give the slot back as soon as somebody wants it. */
import type { EntityManager } from 'typeorm';
import { newId } from '../../platform/ids.js';

/**
 * Ends lapsed holds in the way of these times, and tells it in their history. One that somebody is about to confirm is left to
 * them.
 */
export async function endLapsedHolds(
  em: EntityManager,
  of: { aircraftId: string; memberIds: readonly string[]; departs: string; arrives: string; now: string },
): Promise<void> {
  const lapsed: { id: string }[] = await em.query(
    `SELECT b.id FROM bookings b
      WHERE b.club_id = bellcrank_club() AND b.kind = 'hold' AND b.status = 'booked' AND b.hold_until <= $1::timestamptz
        AND b.during && tstzrange($2, $3, '[)')
        AND (b.aircraft_id = $4 OR EXISTS (SELECT 1 FROM booking_people x
          WHERE x.club_id = b.club_id AND x.booking_id = b.id AND x.member_id = ANY ($5::uuid[])))
      ORDER BY b.id FOR UPDATE OF b SKIP LOCKED`,
    [of.now, of.departs, of.arrives, of.aircraftId, of.memberIds],
  );
  if (lapsed.length === 0) return;
  const ids = lapsed.map(({ id }) => id);
  await em.query(
    `UPDATE bookings SET status = 'cancelled', cancelled_at = $2 WHERE club_id = bellcrank_club() AND id = ANY ($1::uuid[])`,
    [ids, of.now],
  );
  await em.query(
    `INSERT INTO booking_changes (club_id, id, booking_id, act, before, after, at)
     SELECT bellcrank_club(), c.id, c.booking_id, 'lapsed', '{"status": "booked"}', '{"status": "cancelled"}', $3
       FROM unnest($1::uuid[], $2::uuid[]) AS c (id, booking_id)`,
    [ids.map(() => newId()), ids, of.now],
  );
}
