import { useRef, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Answers } from '../api/types.js';
import { ANSWER_WORD } from '../../../rules/explain/words.js';
import { attempt } from '../parts/attempt.js';
import { newKey } from '../parts/key.js';
import { Refusal } from '../parts/refusal.js';
import { spanIn } from '../parts/time.js';
import { partSays } from './fit-words.js';
import type { BookedAny } from './types.js';
import './standby.css';

interface Props {
  asked: { request: object; answers: Answers };
  zone: string;
  booked(): Promise<void>;
}

/** Books whichever aircraft fits the flight best, and says why it is that one. Shown where there is a choice. */
export function BookBest({ asked, zone, booked }: Props) {
  const key = useRef(newKey());
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const [done, setDone] = useState<BookedAny | null>(null);
  const open = asked.answers.decisions.filter(({ answer }) => answer.startsWith('yes'));
  if (done) return <Chosen done={done} zone={zone} />;
  if (open.length < 2) return null;
  const book = async () => {
    setBusy(true);
    await attempt(setProblem, async () => {
      const aircraftIds = asked.answers.decisions.map(({ aircraft }) => aircraft.id);
      setDone(
        await call<BookedAny>(
          'POST',
          '/bookings/any',
          { ...asked.request, aircraftIds },
          { 'Idempotency-Key': key.current },
        ),
      );
      await booked();
    });
    setBusy(false);
  };
  return (
    <div class="book-best">
      <button class="main" disabled={busy} onClick={() => void book()}>
        Book the one that fits best
      </button>
      <span class="hint">Any that will do: the service chooses, and says why.</span>
      <Refusal problem={problem} />
    </div>
  );
}

function Chosen({ done, zone }: { done: BookedAny; zone: string }) {
  const { booking, order } = done;
  return (
    <div class="book-best" role="status">
      <p>
        <strong>{booking.registration}</strong> is booked for {spanIn(zone, booking.departs, booking.arrives)}
        .
      </p>
      <details>
        <summary>Why this one</summary>
        <p class="hint">
          A plain yes goes first; among the same answers, the fewest points by the club’s policy.
        </p>
        <ol>
          {order
            .filter(({ bookable }) => bookable)
            .map(({ aircraftId, registration, answer, points, parts }) => (
              <li key={aircraftId}>
                <strong>{registration}</strong>: {ANSWER_WORD[answer].toLowerCase()}, {points} points
                {parts.length > 0 && ` — ${parts.map(partSays).join('; ')}`}
                {done.missedIds.includes(aircraftId) && '. Taken by the time it was to be booked.'}
              </li>
            ))}
        </ol>
      </details>
    </div>
  );
}
