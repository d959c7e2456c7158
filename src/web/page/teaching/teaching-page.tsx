import { useEffect, useRef, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Choice, DayInput } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import '../standby/standby.css';
import { ClockInput } from '../standby/standby-form.js';

interface Hours {
  id: string;
  kind: 'weekly' | 'date';
  weekday: number | null;
  on: string | null;
  opens: string | null;
  closes: string | null;
  validFrom: string | null;
  validThrough: string | null;
  rowVersion: number;
}

const DAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];
const KINDS = [
  ...DAYS.map((name, index) => [String(index + 1), `every ${name}`] as const),
  ['date', 'on one date'] as const,
  ['away', 'away on one date'] as const,
];

/** When an instructor teaches: each week, and other hours or none on single dates. */
export function TeachingPage({ me }: { me: Me }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const [hours, setHours] = useState<Hours[] | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const [said, setSaid] = useState('');
  const at = `/members/${me.memberId}/teaching-hours`;
  const read = async () => setHours((await call<{ items: Hours[] }>('GET', at)).items);
  useEffect(() => {
    heading.current?.focus();
    void attempt(setProblem, read);
  }, []);
  const remove = (one: Hours) =>
    attempt(setProblem, async () => {
      await call('DELETE', `${at}/${one.id}`, undefined, { 'If-Match': `"${one.rowVersion}"` });
      setSaid('Taken away.');
      await read();
    });
  return (
    <main class="page teaching">
      <h2 ref={heading} tabIndex={-1}>
        Teaching hours
      </h2>
      <p class="hint">
        A lesson outside of them is to be agreed on with you, or is not booked where the club says so. Without
        any hours only your bookings count. Times are those of the club’s clock.
      </p>
      <Refusal problem={problem} />
      <p role="status">{said}</p>
      <HoursForm
        at={at}
        added={(items) => {
          setHours(items);
          setSaid('Added.');
        }}
      />
      {hours === null ? (
        problem === null && <p class="hint">Reading…</p>
      ) : hours.length === 0 ? (
        <p class="hint">You keep no hours.</p>
      ) : (
        <ul class="hours">
          {hours.map((one) => (
            <li key={one.id}>
              {hoursSay(one)}{' '}
              <button
                class="quiet"
                aria-label={`Take away: ${hoursSay(one)}`}
                onClick={() => void remove(one)}
              >
                Take away
              </button>
            </li>
          ))}
        </ul>
      )}
    </main>
  );
}

function HoursForm({ at, added }: { at: string; added(items: Hours[]): void }) {
  const [kind, setKind] = useState('1');
  const [on, setOn] = useState('');
  const [opens, setOpens] = useState('09:00');
  const [closes, setCloses] = useState('17:00');
  const [problem, setProblem] = useState<string | null>(null);
  const dated = kind === 'date' || kind === 'away';
  const submit = () =>
    attempt(setProblem, async () => {
      const times = kind === 'away' ? {} : { opens, closes: closes === '00:00' ? '24:00' : closes };
      const day = dated ? { kind: 'date', on } : { kind: 'weekly', weekday: Number(kind) };
      added((await call<{ items: Hours[] }>('POST', at, { ...day, ...times })).items);
    });
  return (
    <form
      aria-label="Add hours"
      onSubmit={(event) => {
        event.preventDefault();
        void submit();
      }}
    >
      <Choice label="When" value={kind} set={setKind} of={KINDS} />
      {dated && <DayInput label="Date" required value={on} set={setOn} />}
      {kind !== 'away' && (
        <>
          <ClockInput label="From" value={opens} set={setOpens} />
          <ClockInput label="To" value={closes} set={setCloses} />
        </>
      )}
      <button class="main">Add</button>
      <Refusal problem={problem} />
    </form>
  );
}

function hoursSay({ weekday, on, opens, closes, validThrough }: Hours): string {
  const when = on ? `On ${on}` : `Every ${DAYS[weekday! - 1]}`;
  const span = opens ? `${opens} to ${closes}` : 'away';
  return `${when}: ${span}${validThrough ? `, through ${validThrough}` : ''}`;
}
