import { useState } from 'preact/hooks';
import { ApiProblem, call } from '../api/client.js';
import type { Series } from '../api/types.js';
import { OccurrenceList } from '../calendar/occurrence-list.js';
import { attempt } from '../parts/attempt.js';
import { Choice, FigureInput } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import { now } from '../parts/time.js';

const EVERY = [
  ['FREQ=WEEKLY', 'week'],
  ['FREQ=WEEKLY;INTERVAL=2', 'second week'],
  ['FREQ=DAILY', 'day'],
  ['FREQ=MONTHLY', 'month'],
] as const;
type Every = (typeof EVERY)[number][0];

/** The same flight again and again: looked at first, each with its answer, and then booked. */
export function SeriesForm({
  request,
  aircraftId,
  registration,
  zone,
  booked,
}: {
  request: object;
  aircraftId: string;
  registration: string;
  zone: string;
  booked: () => Promise<void>;
}) {
  const [every, setEvery] = useState<Every>('FREQ=WEEKLY');
  const [count, setCount] = useState('4');
  const [shown, setShown] = useState<{ of: Series['occurrences']; booked: boolean } | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const send = async (preview: boolean) => {
    setBusy(true);
    await attempt(setProblem, async () => {
      const body = { ...request, aircraftId, recurrence: `${every};COUNT=${count}`, preview };
      try {
        const answer = await call<Series>('POST', '/booking-series', body, {
          'Idempotency-Key': `series-${preview ? 'look' : 'book'}-${every}-${count}-${aircraftId}-${now()}`,
        });
        setShown({ of: answer.occurrences, booked: !preview });
        if (!preview) await booked();
      } catch (error) {
        if (error instanceof ApiProblem && error.problem.occurrences)
          setShown({ of: error.problem.occurrences, booked: false });
        throw error;
      }
    });
    setBusy(false);
  };
  const free = shown?.of.filter((one) => one.problem === null).length ?? 0;
  const changed =
    <T,>(set: (value: T) => void) =>
    (value: T) => {
      set(value);
      setShown(null);
    };
  return (
    <details class="series">
      <summary aria-label={`Book it as a series, ${registration}`}>Book it as a series</summary>
      <form
        class="act"
        onSubmit={(event) => {
          event.preventDefault();
          void send(true);
        }}
      >
        <div class="row">
          <Choice label="Every" value={every} set={changed(setEvery)} of={EVERY} />
          <FigureInput
            label="How many times"
            value={count}
            set={changed(setCount)}
            required
            min={2}
            max={60}
            step="1"
          />
        </div>
        <Refusal problem={problem} />
        {shown === null && (
          <button class="main" disabled={busy}>
            {busy ? 'Asking…' : 'Which of them can be had?'}
          </button>
        )}
        <div aria-live="polite">
          {shown && (
            <OccurrenceList of={shown.of} zone={zone} done={shown.booked ? 'booked' : 'can be booked'} />
          )}
        </div>
        {shown && !shown.booked && free > 0 && (
          <button type="button" class="main" disabled={busy} onClick={() => void send(false)}>
            {busy
              ? 'Booking…'
              : free === shown.of.length
                ? `Book all ${free}`
                : `Book the ${free} that can be had`}
          </button>
        )}
        <p class="hint">
          Each is judged alone, on the club’s clock. It is an aid; look at each again before you fly.
        </p>
      </form>
    </details>
  );
}
