import { useEffect, useId, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Link } from '../parts/link.js';
import { Refusal } from '../parts/refusal.js';
import { momentIn } from '../parts/time.js';
import './flights.css';

interface Alert {
  id: string;
  bookingId: string;
  registration: string;
  memberName: string;
  dueBackAt: string;
  stage: 'crew' | 'named' | 'officers';
  out: boolean;
}

/** How often the first page looks again. */
const AGAIN_MS = 60_000;

/** Aircraft that are not back, for those who are told. Nothing while there are none. */
export function OverdueAlerts({ me }: { me: Me }) {
  const [all, setAll] = useState<{ items: Alert[]; caution: string } | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  // Also on another page than the first one, which stays.
  const title = useId();
  const read = () => attempt(setProblem, async () => setAll(await call('GET', '/overdue')));
  useEffect(() => {
    void read();
    const timer = setInterval(() => void read(), AGAIN_MS);
    return () => clearInterval(timer);
  }, [me.memberId]);
  const seen = (id: string) =>
    attempt(setProblem, async () => {
      await call('POST', `/overdue/${id}/seen`);
      await read();
    });
  if (!all || all.items.length === 0) return null;
  return (
    <section class="overdue-alerts" aria-labelledby={title}>
      <h2 id={title}>{all.items.some(({ out }) => out) ? 'Not back' : 'Was overdue, is back'}</h2>
      <ul>
        {all.items.map((one) => (
          <li key={one.id}>
            <strong>{one.registration}</strong> with {one.memberName} was due back{' '}
            {momentIn(me.club.zone, one.dueBackAt)}
            {one.out ? ' and is not returned.' : ' and is back.'}{' '}
            {one.out && one.stage === 'crew' && <Link to={`/flights#${one.bookingId}`}>Return it</Link>}
            <button
              class="quiet"
              aria-label={`Seen to ${one.registration}`}
              onClick={() => void seen(one.id)}
            >
              Seen to
            </button>
          </li>
        ))}
      </ul>
      <Refusal problem={problem} />
      <p class="small">{all.caution}</p>
    </section>
  );
}
