import { useEffect, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { now, spanIn } from '../parts/time.js';

interface HandOver {
  id: string;
  bookingId: string;
  registration: string;
  departs: string;
  arrives: string;
  fromName: string;
  toId: string;
  bookingVersion: number;
}

/** Flights that others offer to the member. Nothing is shown while there are none. */
export function Offers({ me, refresh }: { me: Me; refresh: () => Promise<void> }) {
  const [offers, setOffers] = useState<HandOver[]>([]);
  const [problem, setProblem] = useState<string | null>(null);
  const read = async () => {
    const { items } = await call<{ items: HandOver[] }>('GET', '/hand-overs');
    setOffers(items.filter(({ toId }) => toId === me.memberId));
  };
  useEffect(() => {
    void attempt(setProblem, read);
  }, [me.memberId]);
  const answer = (work: () => Promise<unknown>) =>
    attempt(setProblem, async () => {
      await work();
      await read();
      await refresh();
    });
  const take = ({ id, bookingId, bookingVersion }: HandOver) =>
    answer(() =>
      call(
        'POST',
        `/bookings/${bookingId}/hand-over/accept`,
        {},
        {
          'If-Match': `"${bookingVersion}"`,
          'Idempotency-Key': `take-${id}-${now()}`,
        },
      ),
    );
  return (
    <>
      {offers.map((one) => (
        <article class="offer" key={one.id} data-offer={one.registration}>
          <p>
            {one.fromName} offers you <strong>{one.registration}</strong>{' '}
            {spanIn(me.club.zone, one.departs, one.arrives)}.
          </p>
          <span class="sure">
            <button class="main" onClick={() => void take(one)}>
              Take it
            </button>
            <button
              class="quiet"
              onClick={() => void answer(() => call('DELETE', `/bookings/${one.bookingId}/hand-over`))}
            >
              No, thank you
            </button>
          </span>
        </article>
      ))}
      <Refusal problem={problem} />
    </>
  );
}
