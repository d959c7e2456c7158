import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { useKeyFor } from '../parts/key.js';
import { Refusal } from '../parts/refusal.js';
import { clockIn, instantIn, momentIn, NO_SUCH_TIME, now, plusDays, spanIn, today } from '../parts/time.js';
import type { Flight } from './types.js';

interface PutOff {
  flight: Flight;
  kept: boolean;
  inTheWay: { bookingId: string; holder: string; registration: string; departs: string; arrives: string }[];
  caution: string;
}

/** Says that a flight that is out comes back at another time. */
export function DueBackForm(of: { flight: Flight; zone: string; done(flight: Flight): void }) {
  const { flight, zone } = of;
  const [clock, setClock] = useState(clockIn(zone, flight.dueBackAt ?? flight.booking.arrives));
  const [said, setSaid] = useState<PutOff | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const keyFor = useKeyFor();
  const send = () =>
    attempt(setProblem, async () => {
      const dueBackAt = next(zone, clock);
      if (dueBackAt === null) return setProblem(NO_SUCH_TIME);
      const answer = await call<PutOff>(
        'POST',
        `/flights/${flight.booking.id}/due-back`,
        { dueBackAt },
        { 'Idempotency-Key': keyFor(dueBackAt) },
      );
      setSaid(answer);
      of.done(answer.flight);
    });
  return (
    <details>
      <summary>Back at another time?</summary>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void send();
        }}
      >
        <label>
          Expected back at
          <input
            type="time"
            required
            value={clock}
            onInput={(event) => setClock(event.currentTarget.value)}
          />
        </label>
        <p class="hint">The next time the club’s clock shows it, within a day.</p>
        <Refusal problem={problem} />
        <button class="quiet">Say so</button>
      </form>
      {said && (
        <div role="status">
          <p>
            Expected back {momentIn(zone, said.flight.dueBackAt ?? said.flight.booking.arrives)}.{' '}
            {said.kept
              ? 'The aircraft is kept in the calendar until then.'
              : 'The calendar keeps its booked end, since others are in the way; who has the aircraft next is told:'}
          </p>
          {said.inTheWay.length > 0 && (
            <ul>
              {said.inTheWay.map((one) => (
                <li key={one.bookingId}>
                  {one.registration}, {one.holder}, {spanIn(zone, one.departs, one.arrives)}
                </li>
              ))}
            </ul>
          )}
          <p class="small">{said.caution}</p>
        </div>
      )}
    </details>
  );
}

/** That time of the club's clock, the next time it comes; null where the clocks change. */
function next(zone: string, clock: string): string | null {
  const day = today(zone);
  const at = instantIn(zone, day, clock);
  return at !== null && at <= now() ? instantIn(zone, plusDays(day, 1), clock) : at;
}
