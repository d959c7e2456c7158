import { signal } from '@preact/signals';
import { useEffect, useState } from 'preact/hooks';
import { ApiProblem, call } from '../api/client.js';
import type { Booking, Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { useLive } from '../live/live.js';
import { now, spanIn } from '../parts/time.js';
import { all } from '../session/session.js';
import { Refusal } from '../parts/refusal.js';

const flights = signal<Booking[] | null>(null);

/** Reads the member's coming bookings again. */
export async function refreshFlights(memberId: string): Promise<void> {
  const found = await all<Booking>(`/bookings?memberId=${memberId}&from=${encodeURIComponent(now())}`);
  flights.value = found
    .filter((booking) => booking.status === 'booked' || booking.status === 'dispatched')
    .sort((a, b) => (a.departs < b.departs ? -1 : 1));
}

/** What the member has booked, soonest first. */
export function MyFlights({ me }: { me: Me }) {
  useEffect(() => {
    void refreshFlights(me.memberId);
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
      {flights.value === null ? (
        <p class="hint">Reading…</p>
      ) : flights.value.length === 0 ? (
        <p class="hint">Nothing booked.</p>
      ) : (
        <ul>
          {flights.value.map((booking) => (
            <Flight key={booking.id} booking={booking} me={me} />
          ))}
        </ul>
      )}
    </aside>
  );
}

function Flight({ booking, me }: { booking: Booking; me: Me }) {
  const [sure, setSure] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const others = booking.people
    .filter((person) => person.memberId !== me.memberId)
    .map((person) => person.name);
  const cancel = async () => {
    try {
      await call('POST', `/bookings/${booking.id}/cancel`, undefined, {
        'If-Match': `"${booking.rowVersion}"`,
      });
    } catch (error) {
      if (!(error instanceof ApiProblem)) throw error;
      setProblem(error.problem.detail);
    }
    await refreshFlights(me.memberId);
  };
  return (
    <li class="flight">
      <strong>{booking.registration}</strong> {spanIn(me.club.zone, booking.departs, booking.arrives)}
      {others.length > 0 && <span class="with"> with {others.join(', ')}</span>}
      <Refusal problem={problem} />
      {sure ? (
        <span class="sure">
          <button class="quiet danger" onClick={() => void cancel()}>
            Give it back
          </button>
          <button class="quiet" onClick={() => setSure(false)}>
            Keep it
          </button>
        </span>
      ) : (
        <button
          class="quiet"
          onClick={() => setSure(true)}
          aria-label={`Cancel ${booking.registration} ${spanIn(me.club.zone, booking.departs, booking.arrives)}`}
        >
          Cancel
        </button>
      )}
    </li>
  );
}
