import type { EntityManager } from 'typeorm';
import type { FlightRequestDto } from '../../decisions/flight-request.dto.js';
import { instant } from '../../decisions/gather/sql.js';

/** A flight of a member that had to make room, with what was asked for. */
export interface Displacement {
  id: string;
  bookingId: string;
  aircraftId: string;
  registration: string;
  departs: string;
  arrives: string;
  holderId: string;
  holderName: string;
  /** What the aircraft is taken for, and until when; null where no time is set any more. */
  because: string;
  backAt: string | null;
  request: FlightRequestDto;
  displacedAt: string;
  seenAt: string | null;
}

const SELECT = `SELECT d.id, d.booking_id AS "bookingId", d.aircraft_id AS "aircraftId", a.registration,
    ${instant('lower(b.during)')} AS departs, ${instant('upper(b.during)')} AS arrives, b.member_id AS "holderId", m.name AS "holderName",
    coalesce(w.title, f.note) AS because, ${instant('upper(k.during)')} AS "backAt", b.request, ${instant('d.recorded_at')} AS "displacedAt",
    ${instant('d.seen_at')} AS "seenAt"
  FROM displacements d
  JOIN bookings b ON b.club_id = d.club_id AND b.id = d.booking_id
  JOIN aircraft a ON a.club_id = d.club_id AND a.id = d.aircraft_id
  JOIN members m ON m.club_id = d.club_id AND m.id = b.member_id
  LEFT JOIN work_orders w ON w.club_id = d.club_id AND w.id = d.order_id
  LEFT JOIN bookings f ON f.club_id = d.club_id AND f.id = d.block_id
  LEFT JOIN bookings k ON k.club_id = d.club_id AND k.id = coalesce(w.booking_id, d.block_id) AND k.status <> 'cancelled'
  WHERE d.club_id = bellcrank_club() AND d.member_id = $1`;

/** A member's displaced flights that are still to come and not put away, the next first. */
export const openDisplacements = (
  em: EntityManager,
  memberId: string,
  now: string,
): Promise<Displacement[]> =>
  em.query(
    `${SELECT} AND d.seen_at IS NULL AND lower(b.during) > $2::timestamptz ORDER BY lower(b.during), d.id LIMIT 100`,
    [memberId, now],
  );

/** Puts one away. False: the member has no such displaced flight. */
export async function putAway(
  em: EntityManager,
  of: { id: string; memberId: string; now: string },
): Promise<boolean> {
  const rows: unknown[] = await em.query(
    'SELECT 1 FROM displacements WHERE club_id = bellcrank_club() AND id = $1 AND member_id = $2 FOR UPDATE',
    [of.id, of.memberId],
  );
  if (rows.length === 0) return false;
  await em.query(
    'UPDATE displacements SET seen_at = coalesce(seen_at, $2) WHERE club_id = bellcrank_club() AND id = $1',
    [of.id, of.now],
  );
  return true;
}
