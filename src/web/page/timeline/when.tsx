import { useState } from 'preact/hooks';
import { ApiProblem, call } from '../api/client.js';
import type { FlightForm } from '../ask/flight.js';
import { dateIn, momentIn, now, spanIn, today } from '../parts/time.js';
import { Working } from '../parts/working.js';
import { at, daysFrom, instantOf } from './days.js';
import { Lane, opening } from './lane.js';
import { Legend, Patterns } from './patterns.js';
import { questionOf } from './question.js';
import { firstIn, GOOD, type Frame } from './slots.js';
import type { AircraftTimeline, Slot, Timelines } from './types.js';
import './when.css';

const SPANS = [
  { days: 7, name: '7 days' },
  { days: 30, name: '30 days' },
  { days: 365, name: 'a year' },
];

interface Shown {
  key: string;
  lanes: AircraftTimeline[];
  frame: Frame;
  caution: string;
}

interface Props {
  form: FlightForm;
  zone: string;
  change(part: Partial<FlightForm>): void;
}

/** When the flight of the form works: the answer at every departure of the days to come, and the first that may be booked. */
export function When({ form, zone, change }: Props) {
  const [days, setDays] = useState(30);
  const [shown, setShown] = useState<Shown | null>(null);
  const [busy, setBusy] = useState(false);
  const [wrong, setWrong] = useState<string | null>(null);
  const [taken, setTaken] = useState<string | null>(null);
  const question = questionOf(form, zone);
  const stale = shown !== null && 'key' in question && question.key !== shown.key;

  const look = async (count: number) => {
    setDays(count);
    if ('message' in question) return setWrong(question.message);
    setBusy(true);
    setWrong(null);
    setTaken(null);
    try {
      setShown(await asked(question, zone, count));
    } catch (error) {
      if (!(error instanceof ApiProblem)) throw error;
      setWrong(error.problem.errors?.[0]?.message ?? error.problem.detail);
    } finally {
      setBusy(false);
    }
  };
  const take = ({ departs, arrives }: Slot) => {
    setShown(null);
    setTaken(spanIn(zone, departs, arrives));
    change({ date: dateIn(zone, departs), from: clock(zone, departs), to: clock(zone, arrives) });
    document.querySelector<HTMLElement>('form.ask button.main')?.focus();
  };

  return (
    <section class="when" aria-label="When it works">
      <div class="when-head">
        <h2>When does it work?</h2>
        <div role="group" aria-label="Days to look at" class="spans">
          {SPANS.map(({ days: count, name }) => (
            <button
              key={count}
              class="span"
              aria-pressed={shown !== null && days === count}
              disabled={busy}
              onClick={() => void look(count)}
            >
              {name}
            </button>
          ))}
        </div>
        {shown && (
          <button class="quiet" onClick={() => setShown(null)}>
            Close
          </button>
        )}
      </div>
      {!shown && !busy && (
        <p class="hint" role="status">
          {taken === null
            ? 'Look at the days to come for a flight as long as the one above: which departures work, and in which aircraft.'
            : `${taken} is in the flight above. Ask the club, and book it.`}
        </p>
      )}
      {wrong && (
        <p class="problem" role="alert">
          {wrong}
        </p>
      )}
      {busy && <Working what={`Judging every departure of ${days} days`} />}
      {stale && (
        <p class="stale" role="status">
          The flight above has changed since.{' '}
          <button class="quiet" onClick={() => void look(days)}>
            Look again
          </button>
        </p>
      )}
      {shown && <Found shown={shown} zone={zone} take={take} />}
    </section>
  );
}

function Found({ shown, zone, take }: { shown: Shown; zone: string; take(slot: Slot): void }) {
  const { lanes, frame, caution } = shown;
  const answers = new Set(lanes.flatMap(({ steps }) => steps.map(({ answer }) => answer)));
  return (
    <>
      <First lanes={lanes} frame={frame} zone={zone} take={take} />
      <Patterns />
      <Legend answers={answers} />
      <p class="hint small">
        A column is a day, midnight to midnight by the club’s clock; filled is the answer for a departure
        then. Point at it, or walk along it with the arrow keys.
      </p>
      <ul class="lanes">
        {lanes.map((timeline) => (
          <Lane key={timeline.aircraft.id} timeline={timeline} frame={frame} zone={zone} take={take} />
        ))}
      </ul>
      <p class="caution small">{caution}</p>
    </>
  );
}

/** The first slot of all, to put into the form. */
function First({
  lanes,
  frame,
  zone,
  take,
}: Omit<Shown, 'key' | 'caution'> & { zone: string; take(slot: Slot): void }) {
  const [lane] = lanes;
  const slot = lane ? firstIn(lane.steps, GOOD, frame) : null;
  if (!lane || !slot) {
    const dual = lane ? firstIn(lane.steps, ['dual-only'], frame) : null;
    return (
      <p class="first none">
        No departure in these days may be booked as it is.
        {dual && ` With an instructor from ${momentIn(zone, dual.departs)}.`}
      </p>
    );
  }
  return (
    <p class="first">
      The first that works:{' '}
      <button class="main" onClick={() => take(slot)}>
        {spanIn(zone, slot.departs, slot.arrives)} in {lane.aircraft.registration}
      </button>
    </p>
  );
}

/** Asks for the days from today on. A year is asked for joined by answer: what stands in the way each night is not drawn. */
async function asked(
  { flight, durationMinutes, key }: { flight: object; durationMinutes: number; key: string },
  zone: string,
  count: number,
): Promise<Shown> {
  const days = daysFrom(zone, today(zone), count);
  const { aircraft, knownAt, caution } = await call<Timelines>('POST', '/decisions/timeline', {
    ...flight,
    ...{ from: now(), to: instantOf(days.at(-1)!.to), durationMinutes },
    join: count > 31 ? 'answer' : 'detail',
  });
  const frame = { days, length: durationMinutes * 60_000, now: at(knownAt) };
  const lanes = [...aircraft].sort((a, b) => opening(a, frame) - opening(b, frame));
  return { key, lanes, frame, caution };
}

/** 'HH:MM', as the form's inputs hold it. */
const clock = (zone: string, instant: string): string =>
  new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  }).format(new Date(instant));
