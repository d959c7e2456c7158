import { useState } from 'preact/hooks';
import { ApiProblem, call } from '../api/client.js';
import type { Booking, Problem } from '../api/types.js';
import { ClockInput } from '../calendar/change-form.js';
import { attempt } from '../parts/attempt.js';
import { Choice, DayInput, TextInput } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import { NO_SUCH_TIME, clockIn, dateIn, instantIn, plusDays, spanIn, today } from '../parts/time.js';
import type { Aircraft } from './blocks-page.js';

type Displaced = { memberName: string; departs: string; arrives: string };

const KINDS = [
  ['maintenance', 'maintenance'],
  ['club', 'the club’s own use'],
] as const;

/** A new block, or another time for one. What stands in the way is shown before anybody's flight is cancelled. */
export function BlockForm({
  fleet,
  block,
  zone,
  done,
}: {
  fleet: Aircraft[];
  /** The block that is changed. */
  block?: Booking;
  zone: string;
  done: (displaced: Displaced[]) => Promise<void>;
}) {
  const [aircraftId, setAircraftId] = useState(block?.aircraftId ?? fleet[0]?.id ?? '');
  const [kind, setKind] = useState<'maintenance' | 'club'>(block?.kind === 'club' ? 'club' : 'maintenance');
  const [first, setFirst] = useState(block ? dateIn(zone, block.departs) : plusDays(today(zone), 1));
  const [from, setFrom] = useState(block ? clockIn(zone, block.departs) : '08:00');
  const [last, setLast] = useState(block ? dateIn(zone, block.arrives) : plusDays(today(zone), 1));
  const [to, setTo] = useState(block ? clockIn(zone, block.arrives) : '17:00');
  const [note, setNote] = useState(block?.note ?? '');
  const [problem, setProblem] = useState<string | null>(null);
  const [inTheWay, setInTheWay] = useState<NonNullable<Problem['inTheWay']>>([]);
  const [busy, setBusy] = useState(false);
  const set =
    <T,>(change: (value: T) => void) =>
    (value: T) => {
      change(value);
      setInTheWay([]);
      setProblem(null);
    };
  const send = async (displace: boolean) => {
    const [begins, ends] = [instantIn(zone, first, from), instantIn(zone, last < first ? first : last, to)];
    if (!begins || !ends) return setProblem(NO_SUCH_TIME);
    setBusy(true);
    await attempt(setProblem, async () => {
      const body = { kind, from: begins, to: ends, note, displace };
      try {
        const answer = block
          ? await call<{ displaced: Displaced[] }>('PATCH', `/bookings/blocks/${block.id}`, body, {
              'If-Match': `"${block.rowVersion}"`,
            })
          : await call<{ displaced: Displaced[] }>('POST', '/bookings/blocks', { ...body, aircraftId });
        setInTheWay([]);
        if (!block) setNote('');
        await done(answer.displaced);
      } catch (error) {
        if (error instanceof ApiProblem) setInTheWay(error.problem.inTheWay ?? []);
        throw error;
      }
    });
    setBusy(false);
  };
  const movable = inTheWay.length > 0 && inTheWay.every(({ kind: of }) => of === 'flight' || of === 'hold');
  return (
    <form
      class="act"
      onSubmit={(event) => {
        event.preventDefault();
        void send(false);
      }}
    >
      <div class="row">
        {!block && (
          <Choice
            label="Aircraft"
            value={aircraftId}
            set={set(setAircraftId)}
            of={fleet.map(({ id, registration }) => [id, registration] as const)}
          />
        )}
        <Choice label="For" value={kind} set={set(setKind)} of={KINDS} />
      </div>
      <div class="row">
        <DayInput label="From" value={first} set={set(setFirst)} required />
        <ClockInput label="at" value={from} set={set(setFrom)} />
        <DayInput label="Until" value={last < first ? first : last} set={set(setLast)} required min={first} />
        <ClockInput label="at" value={to} set={set(setTo)} />
      </div>
      <TextInput label="What for" value={note} set={set(setNote)} required max={500} />
      <Refusal problem={problem} />
      {inTheWay.length > 0 && (
        <ul class="in-the-way">
          {inTheWay.map((one) => (
            <li key={one.bookingId}>
              {one.memberName}, {spanIn(zone, one.departs, one.arrives)}
            </li>
          ))}
        </ul>
      )}
      {movable ? (
        <button type="button" class="main" disabled={busy} onClick={() => void send(true)}>
          Cancel {inTheWay.length === 1 ? 'this flight' : `these ${inTheWay.length} flights`} and tell their
          people
        </button>
      ) : (
        <button class="main" disabled={busy}>
          {block ? 'Change it' : 'Block it'}
        </button>
      )}
    </form>
  );
}
