import { signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Booking, Me } from '../api/types.js';
import { sendKept } from '../flights/kept-returns.js';
import type { FlightOut } from '../flights/types.js';
import { attempt } from '../parts/attempt.js';
import { useLive } from '../live/live.js';
import { now } from '../parts/time.js';
import { place } from '../parts/route.js';
import { all } from '../session/session.js';
import { FlightItem } from './flight-item.js';
import { HoldForm } from './hold-form.js';
import { Offers } from './offers.js';
import './flights.css';

const flights = signal<Booking[] | null>(null);

/** Reads the member's coming bookings again. */
export async function refreshFlights(memberId: string): Promise<void> {
  const found = await all<Booking>(`/bookings?memberId=${memberId}&from=${encodeURIComponent(now())}`);
  // One that is out stays until it is back, however long its time has passed.
  const { items } = await call<{ items: FlightOut[] }>('GET', '/flights/out');
  const late = items.filter(({ mine, bookingId }) => mine && !found.some(({ id }) => id === bookingId));
  for (const { bookingId } of late) found.push(await call<Booking>('GET', `/bookings/${bookingId}`));
  flights.value = found
    .filter((booking) => booking.status === 'booked' || booking.status === 'dispatched')
    .filter(({ holdUntil }) => holdUntil === null || holdUntil > now())
    .sort((a, b) => (a.departs < b.departs ? -1 : 1));
}

/** What the member has booked, soonest first, and what is offered to them. */
export function MyFlights({ me }: { me: Me }) {
  const refresh = () => refreshFlights(me.memberId);
  const { path } = place.value;
  useEffect(() => {
    // Coming back to the page, something may have been handed out or brought back.
    if (path === '/') void refresh();
  }, [path]);
  useEffect(() => {
    sendKept(me.memberId);
    void refresh();
  }, [me.memberId]);
  useLive(
    ['flights'],
    () =>
      void attempt(
        () => undefined,
        () => refreshFlights(me.memberId),
      ),
  );
  return (
    <aside class="flights" aria-label="My flights">
      <h2>My flights</h2>
      <Offers me={me} refresh={refresh} />
      {flights.value === null ? (
        <p class="hint">Reading…</p>
      ) : flights.value.length === 0 ? (
        <p class="hint">Nothing booked.</p>
      ) : (
        <ul>
          {flights.value.map((booking) => (
            <FlightItem key={booking.id} booking={booking} me={me} refresh={refresh} />
          ))}
        </ul>
      )}
      {me.roles.includes('instructor') && <HoldForm me={me} refresh={refresh} />}
    </aside>
  );
}
