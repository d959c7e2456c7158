import type { EntityManager } from 'typeorm';
import { instant } from '../../decisions/gather/sql.js';
import { newId } from '../../platform/ids.js';
import type { HandOverDto } from './changes.dto.js';

/** Offers a booking to another member; the database takes one open offer for a booking. */
export async function offer(
  em: EntityManager,
  of: { bookingId: string; fromId: string; toId: string; offeredBy: string },
): Promise<void> {
  await em.query(
    `INSERT INTO hand_overs (club_id, id, booking_id, from_id, to_id, offered_by) VALUES (bellcrank_club(), $1, $2, $3, $4, $5)`,
    [newId(), of.bookingId, of.fromId, of.toId, of.offeredBy],
  );
  await touch(em, of.bookingId);
}

/** An offer is part of what a booking shows, so the booking's ETag counts it. */
const touch = (em: EntityManager, bookingId: string): Promise<unknown> =>
  em.query('UPDATE bookings SET row_version = row_version WHERE club_id = bellcrank_club() AND id = $1', [
    bookingId,
  ]);

/** Closes the open offer of a booking. */
export async function closeOffer(
  em: EntityManager,
  of: { bookingId: string; outcome: 'accepted' | 'declined' | 'withdrawn'; now: string },
): Promise<void> {
  await em.query(
    `UPDATE hand_overs SET outcome = $2, closed_at = $3
      WHERE club_id = bellcrank_club() AND booking_id = $1 AND outcome IS NULL`,
    [of.bookingId, of.outcome, of.now],
  );
  await touch(em, of.bookingId);
}

/** Bookings that are gone are offered no longer. */
export async function closeOffers(
  em: EntityManager,
  bookingIds: readonly string[],
  now: string,
): Promise<void> {
  await em.query(
    `UPDATE hand_overs SET outcome = 'withdrawn', closed_at = $2
      WHERE club_id = bellcrank_club() AND booking_id = ANY ($1::uuid[]) AND outcome IS NULL`,
    [bookingIds, now],
  );
}

/** Open offers to and from a member of flights still to come, the next first. */
export const openOffers = (em: EntityManager, memberId: string, now: string): Promise<HandOverDto[]> =>
  em.query(
    `SELECT h.id, h.booking_id AS "bookingId", a.registration, ${instant('lower(b.during)')} AS departs,
        ${instant('upper(b.during)')} AS arrives, h.from_id AS "fromId", f.name AS "fromName", h.to_id AS "toId", t.name AS "toName",
        ${instant('h.recorded_at')} AS "offeredAt", b.row_version AS "bookingVersion"
       FROM hand_overs h
       JOIN bookings b ON b.club_id = h.club_id AND b.id = h.booking_id
       JOIN aircraft a ON a.club_id = b.club_id AND a.id = b.aircraft_id
       JOIN members f ON f.club_id = h.club_id AND f.id = h.from_id
       JOIN members t ON t.club_id = h.club_id AND t.id = h.to_id
      WHERE h.club_id = bellcrank_club() AND h.outcome IS NULL AND b.status = 'booked' AND lower(b.during) > $2::timestamptz
        AND $1 IN (h.from_id, h.to_id)
      ORDER BY lower(b.during), h.id LIMIT 100`,
    [memberId, now],
  );
