import type { EntityManager } from 'typeorm';
import { postNotice } from '../../notices/outbox/post-notice.js';
import { toSeconds } from '../../rules/index.js';
import type { DisplacedFlight, Taken } from './displace.js';

/** A flight that leaves so soon is told of in quiet hours too: common practice, no source. */
const SOON_S = 24 * 3600;

/** Tells everybody aboard that their flights make room for the shop or a block: one notice each, however many flights. */
export async function tellDisplaced(
  em: EntityManager,
  time: Taken,
  of: { flights: readonly DisplacedFlight[]; people: readonly { bookingId: string; memberId: string }[] },
): Promise<void> {
  const [taken]: { title: string; registration: string }[] = await em.query(
    `SELECT coalesce(w.title, b.note) AS title, a.registration FROM aircraft a
       LEFT JOIN work_orders w ON w.club_id = a.club_id AND w.id = $2
       LEFT JOIN bookings b ON b.club_id = a.club_id AND b.id = $3
      WHERE a.club_id = bellcrank_club() AND a.id = $1`,
    [time.aircraftId, time.orderId ?? null, time.blockId ?? null],
  );
  const { title, registration } = taken!;
  const where = time.orderId === undefined ? 'is taken for' : 'is in the shop for';
  const flights = new Map(of.flights.map((flight) => [flight.bookingId, flight]));
  const to = [...new Set(of.people.map(({ memberId }) => memberId))].map((memberId) => {
    const own = of.people
      .filter((one) => one.memberId === memberId)
      .map(({ bookingId }) => flights.get(bookingId)!);
    return {
      memberId,
      urgent: own.some(({ departs }) => toSeconds(departs) - toSeconds(time.now) < SOON_S),
      items: own.map(({ bookingId, departs, arrives }) => ({
        key: bookingId,
        title: `${registration}, ${departs} to ${arrives}`,
        says: [
          `It was cancelled: the aircraft ${where} “${title}”, from ${time.from} to ${time.to}.`,
          'Ask it again on the first page: another aircraft or another time may do.',
        ],
        link: '/',
      })),
    };
  });
  await postNotice(em, {
    kind: 'flight-displaced',
    cause: time.orderId === undefined ? `block:${time.blockId}` : `order:${time.orderId}`,
    at: time.now,
    to,
  });
}
