import { useEffect, useRef, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { toRequest, type FlightForm } from '../ask/flight.js';
import { ownForm } from '../ask/shared-form.js';
import { attempt } from '../parts/attempt.js';
import { Choice, DayInput } from '../parts/fields.js';
import { newKey } from '../parts/key.js';
import { Refusal } from '../parts/refusal.js';
import { clockIn, dateIn } from '../parts/time.js';
import { all } from '../session/session.js';

const PURPOSES = [
  ['solo', 'alone'],
  ['passengers', 'with passengers'],
] as const;

/** The flight to wait for: what the first page's form holds, at the times given in `part`. */
export function StandbyForm({ me, part, added }: { me: Me; part: string; added(): Promise<void> }) {
  const { zone } = me.club;
  const [wanted, departs, arrives] = part.split('~');
  const key = useRef(newKey());
  const [fleet, setFleet] = useState<{ id: string; registration: string }[]>([]);
  const [aircraftId, setAircraftId] = useState(wanted ?? '');
  const [problem, setProblem] = useState<string | null>(null);
  const [form, setForm] = useState<FlightForm>(() => ({
    ...ownForm(zone),
    ...(departs && arrives
      ? { date: dateIn(zone, departs), from: clockIn(zone, departs), to: clockIn(zone, arrives) }
      : {}),
  }));
  const change = (more: Partial<FlightForm>) => setForm({ ...form, ...more });
  useEffect(() => {
    void attempt(setProblem, async () => setFleet(await all('/aircraft')));
  }, []);
  const submit = async () => {
    const read = toRequest(form, zone);
    if ('message' in read) return setProblem(read.message);
    const body = { ...read.request, ...(aircraftId ? { aircraftId } : {}) };
    await attempt(setProblem, async () => {
      await call('POST', '/standby', body, { 'Idempotency-Key': key.current });
      key.current = newKey();
      await added();
    });
  };
  const taught = form.purpose === 'dual' || form.purpose === 'checkout';
  return (
    <form
      aria-label="Wait for a slot"
      onSubmit={(event) => {
        event.preventDefault();
        void submit();
      }}
    >
      <DayInput label="Day" required value={form.date} set={(date) => change({ date })} />
      <ClockInput label="From" value={form.from} set={(from) => change({ from })} />
      <ClockInput label="To" value={form.to} set={(to) => change({ to })} />
      <Choice
        label="Aircraft"
        value={aircraftId}
        set={setAircraftId}
        of={[['', 'any that will do'], ...fleet.map((one) => [one.id, one.registration] as const)]}
      />
      {taught ? (
        <p>With the instructor of your flight on the first page.</p>
      ) : (
        <Choice
          label="You fly"
          value={form.purpose as 'solo' | 'passengers'}
          set={(purpose) => change({ purpose })}
          of={PURPOSES}
        />
      )}
      {form.purpose === 'passengers' && (
        <Choice
          label="Passengers"
          value={String(form.passengers)}
          set={(count) => change({ passengers: Number(count) })}
          of={['1', '2', '3', '4', '5'].map((count) => [count, count] as const)}
        />
      )}
      <button class="main">Go on standby</button>
      <Refusal problem={problem} />
    </form>
  );
}

export function ClockInput({
  label,
  value,
  set,
  required = true,
}: {
  label: string;
  value: string;
  set(value: string): void;
  required?: boolean;
}) {
  return (
    <label>
      {label}
      <input
        type="time"
        required={required}
        value={value}
        onInput={(event) => set(event.currentTarget.value)}
      />
    </label>
  );
}
