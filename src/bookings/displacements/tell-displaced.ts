import type { EntityManager } from 'typeorm';
import { postNotice } from '../../notices/outbox/post-notice.js';
import { toSeconds } from '../../rules/index.js';
import type { DisplacedFlight, ShopTime } from './displace.js';

/** A flight that leaves so soon is told of in quiet hours too: common practice, no source. */
const SOON_S = 24 * 3600;

/** Tells everybody aboard that their flights make room for the shop: one notice each, however many flights. */
export async function tellDisplaced(
  em: EntityManager,
  time: ShopTime,
  of: { flights: readonly DisplacedFlight[]; people: readonly { bookingId: string; memberId: string }[] },
): Promise<void> {
  const [order]: { title: string; registration: string }[] = await em.query(
    `SELECT w.title, a.registration FROM work_orders w JOIN aircraft a ON a.club_id = w.club_id AND a.id = w.aircraft_id
      WHERE w.club_id = bellcrank_club() AND w.id = $1`,
    [time.orderId],
  );
  const { title, registration } = order!;
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
          `It was cancelled: the aircraft is in the shop for “${title}”, from ${time.from} to ${time.to}.`,
          'Ask it again on the first page: another aircraft or another time may do.',
        ],
        link: '/',
      })),
    };
  });
  await postNotice(em, { kind: 'flight-displaced', cause: `order:${time.orderId}`, at: time.now, to });
}
