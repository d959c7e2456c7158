/** Time in the calendar for maintenance, with members' flights in it moved out of the way when that is wanted. */
import type { EntityManager } from 'typeorm';
import { instant } from '../../decisions/gather/sql.js';
import { clubZone } from '../../clubs/club-time.js';
import { newId } from '../../platform/ids.js';
import { ProblemException } from '../../platform/problems/index.js';
import { toInstant, toSeconds } from '../../rules/index.js';
import { noAircraft, slotTaken, timesRefused } from '../bookings.problems.js';
import { findBooking, insertBlock, lockAircraft } from '../bookings.sql.js';
import { tellDisplaced } from './tell-displaced.js';

/** A flight that had to make room. */
export interface DisplacedFlight {
  bookingId: string;
  memberId: string;
  memberName: string;
  departs: string;
  arrives: string;
}

/** A stretch of an aircraft's time for the shop. */
export interface ShopTime {
  clubId: string;
  aircraftId: string;
  memberId: string;
  orderId: string;
  from: string;
  to: string;
  note: string;
  now: string;
  /** Flights in the way are cancelled, and their people told; otherwise they stop it. */
  displace: boolean;
}

/** Checks the two times of a block. @throws ProblemException 422 naming the field. */
export function blockTimes(of: { from: string; to: string; now: string }): { from: string; to: string } {
  const [from, to] = [toInstant(toSeconds(of.from)), toInstant(toSeconds(of.to))];
  const seconds = toSeconds(to) - toSeconds(from);
  if (seconds <= 0)
    throw timesRefused('to', 'The end must lie after the beginning; change one of the two times.');
  if (seconds < 15 * 60 || seconds > 400 * 86_400)
    throw timesRefused('to', 'A block lasts from 15 minutes to 400 days; change one of the two times.');
  if (to <= of.now) throw timesRefused('to', 'The end has passed; give a time to come.');
  return { from, to };
}

/**
 * Takes the time, after the flights in it have been cancelled. The order it is for must be there already.
 * @throws ProblemException 404 without the aircraft; 409 for what may not be moved: other blocks, a flight under way, any flight
 *   unless `displace`.
 */
export async function takeShopTime(
  em: EntityManager,
  time: ShopTime,
): Promise<{ bookingId: string; displaced: DisplacedFlight[] }> {
  const { aircraftId, memberId, note } = time;
  const { from, to } = blockTimes(time);
  if (!(await lockAircraft(em, aircraftId))) throw noAircraft(aircraftId);
  const inTheWay: (DisplacedFlight & { kind: string; status: string })[] = await em.query(
    `SELECT b.id AS "bookingId", b.kind, b.status, b.member_id AS "memberId", m.name AS "memberName",
        ${instant('lower(b.during)')} AS departs, ${instant('upper(b.during)')} AS arrives
       FROM bookings b JOIN members m ON m.club_id = b.club_id AND m.id = b.member_id
      WHERE b.club_id = bellcrank_club() AND b.aircraft_id = $1 AND b.occupies AND b.during && tstzrange($2, $3, '[)')
      ORDER BY lower(b.during), b.id FOR UPDATE OF b`,
    [aircraftId, from, to],
  );
  const movable = ({ kind, status, departs }: (typeof inTheWay)[number]): boolean =>
    time.displace && kind === 'flight' && status === 'booked' && departs > time.now;
  const fixed = inTheWay.find((one) => !movable(one));
  if (fixed) throw await stands(em, time, fixed.bookingId, inTheWay.length);
  const displaced = inTheWay.map(({ kind: _kind, status: _status, ...flight }) => flight);
  await cancelFor(em, time, displaced);
  const of = { aircraftId, memberId, departs: from, arrives: to, note };
  const bookingId = await insertBlock(em, { ...of, kind: 'maintenance' });
  return { bookingId, displaced };
}

async function cancelFor(em: EntityManager, time: ShopTime, flights: DisplacedFlight[]): Promise<void> {
  if (flights.length === 0) return;
  const ids = flights.map(({ bookingId }) => bookingId);
  // Everybody aboard is told, before the cancelled booking lets go of them.
  const people: { bookingId: string; memberId: string }[] = await em.query(
    `SELECT p.booking_id AS "bookingId", p.member_id AS "memberId" FROM booking_people p
      WHERE p.club_id = bellcrank_club() AND p.booking_id = ANY ($1::uuid[])
     UNION SELECT b.id, b.member_id FROM bookings b WHERE b.club_id = bellcrank_club() AND b.id = ANY ($1::uuid[])
      ORDER BY 1, 2`,
    [ids],
  );
  await em.query(
    "UPDATE bookings SET status = 'cancelled', cancelled_at = $2 WHERE club_id = bellcrank_club() AND id = ANY ($1::uuid[])",
    [ids, time.now],
  );
  await em.query(
    `INSERT INTO displacements (club_id, id, booking_id, aircraft_id, order_id, member_id)
     SELECT bellcrank_club(), d.id, d.booking_id, $4, $5, d.member_id
       FROM unnest($1::uuid[], $2::uuid[], $3::uuid[]) AS d (id, booking_id, member_id)`,
    [
      people.map(() => newId()),
      people.map(({ bookingId }) => bookingId),
      people.map(({ memberId }) => memberId),
      time.aircraftId,
      time.orderId,
    ],
  );
  await tellDisplaced(em, time, { flights, people });
}

async function stands(
  em: EntityManager,
  time: ShopTime,
  bookingId: string,
  inTheWay: number,
): Promise<ProblemException> {
  const zone = await clubZone(em, time.clubId);
  const taken = slotTaken(
    (await findBooking(em, bookingId))!,
    { aircraftId: time.aircraftId, memberIds: [] },
    zone,
  );
  if (time.displace) return taken;
  return new ProblemException(taken.code, {
    status: 409,
    title: taken.title,
    field: 'from',
    detail: `${taken.detail} Or send displace: true, which cancels the ${inTheWay === 1 ? 'flight' : `${inTheWay} bookings`} in the way and tells their people.`,
    extensions: taken.extensions,
  });
}

/** Ends a block now, or takes it off the calendar where it has hardly begun. One that has ended is left as it is. */
export async function endShopTime(em: EntityManager, bookingId: string | null, now: string): Promise<void> {
  if (bookingId === null) return;
  await em.query(
    `UPDATE bookings SET
        status = CASE WHEN lower(during) + interval '15 minutes' > $2::timestamptz THEN 'cancelled' ELSE status END,
        cancelled_at = CASE WHEN lower(during) + interval '15 minutes' > $2::timestamptz THEN $2::timestamptz END,
        during = CASE WHEN lower(during) + interval '15 minutes' > $2::timestamptz THEN during
                      ELSE tstzrange(lower(during), $2::timestamptz, '[)') END
      WHERE club_id = bellcrank_club() AND id = $1 AND status = 'booked' AND upper(during) > $2::timestamptz`,
    [bookingId, now],
  );
}
