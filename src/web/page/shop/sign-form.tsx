import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Link } from '../parts/link.js';
import { Refusal } from '../parts/refusal.js';
import { today } from '../parts/time.js';
import { Effects } from './effects.js';
import { HOLDS, METER_WORDS, type Line, type Signer, type StepResult, type WorkOrder } from './types.js';

interface LineForm {
  done: boolean;
  note: string;
  action: string;
}

/** The approval for return to service: meters, every line, the statement and the signature, looked at before it is recorded. */
export function SignForm({
  order,
  zone,
  signers,
  meters,
  signed,
}: {
  order: WorkOrder;
  zone: string;
  signers: Signer[];
  meters: string[];
  signed: (result: StepResult) => void;
}) {
  const [signerId, setSigner] = useState(signers[0]?.id ?? '');
  const [signedOn, setSignedOn] = useState(today(zone));
  const [statement, setStatement] = useState('');
  const [readings, setReadings] = useState<Record<string, string>>({});
  const [lines, setLines] = useState<Record<string, LineForm>>({});
  const [weight, setWeight] = useState({ lb: '', arm: '' });
  const [checkNeeded, setCheckNeeded] = useState(false);
  const [checkBecause, setCheckBecause] = useState('');
  const [shown, setShown] = useState<StepResult | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const set =
    <T,>(change: (value: T) => void) =>
    (value: T) => {
      change(value);
      setShown(null);
    };
  const lineOf = (line: Line): LineForm => lines[line.id] ?? { done: true, note: '', action: '' };
  const setLine = (line: Line, more: Partial<LineForm>) =>
    set(setLines)({ ...lines, [line.id]: { ...lineOf(line), ...more } });
  const weighed = order.lines.some((line) => line.kind === 'weighing' && lineOf(line).done);

  const body = (preview: string | null) => ({
    ...{ signerId, signedOn, statement, checkFlightNeeded: checkNeeded },
    ...(checkNeeded ? { checkFlightBecause: checkBecause } : {}),
    readings: meters
      .filter((kind) => (readings[kind] ?? '').trim() !== '')
      .map((kind) => ({ kind, shownH: Number(readings[kind]) })),
    lines: order.lines.map((line) => {
      const { done, note, action } = lineOf(line);
      return {
        ...{ lineId: line.id, outcome: done ? 'done' : 'not-done', note },
        ...(line.kind === 'squawk' && done ? { correctiveAction: action } : {}),
      };
    }),
    ...(weighed
      ? {
          weighing: {
            emptyWeightLb: Number(weight.lb),
            emptyArmIn: weight.arm === '' ? null : Number(weight.arm),
          },
        }
      : {}),
    ...(preview === null ? {} : { preview }),
  });
  const send = async (where: '' | '/preview') => {
    setBusy(true);
    await attempt(setProblem, async () => {
      const path = `/aircraft/${order.aircraftId}/work-orders/${order.id}/return-to-service${where}`;
      const answer = await call<StepResult>(
        'POST',
        path,
        body(where === '' ? (shown?.preview ?? null) : null),
      );
      if (where === '/preview') setShown(answer);
      else signed(answer);
    });
    setBusy(false);
  };

  if (signers.length === 0)
    return (
      <p class="problem">
        Nobody is on record who may sign. Record a signer first, below under “Who may sign”.{' '}
        <Link to="/shop">Read again</Link>
      </p>
    );
  return (
    <form
      class="sign"
      aria-label={`Return to service after ${order.title}`}
      onSubmit={(event) => {
        event.preventDefault();
        void send('/preview');
      }}
    >
      <fieldset>
        <legend>Meters at the end</legend>
        <div class="fields">
          {meters.map((kind) => (
            <label key={kind}>
              {METER_WORDS[kind]}, hours
              <input
                inputMode="decimal"
                pattern="[0-9]+([.][0-9])?"
                title="hours to a tenth"
                value={readings[kind] ?? ''}
                onInput={(event) => set(setReadings)({ ...readings, [kind]: event.currentTarget.value })}
              />
            </label>
          ))}
        </div>
      </fieldset>
      <fieldset>
        <legend>What was done</legend>
        {order.lines.map((line) => {
          const form = lineOf(line);
          return (
            <div key={line.id} class="line">
              <label class="tick">
                <input
                  type="checkbox"
                  checked={form.done}
                  onChange={(event) => setLine(line, { done: event.currentTarget.checked })}
                />
                {line.title}
              </label>
              {line.kind === 'squawk' && form.done && (
                <label>
                  What was done about it
                  <input
                    required
                    maxLength={2000}
                    value={form.action}
                    onInput={(event) => setLine(line, { action: event.currentTarget.value })}
                  />
                </label>
              )}
              <label>
                {form.done ? 'Note, if any' : 'Why not'}
                <input
                  maxLength={2000}
                  value={form.note}
                  onInput={(event) => setLine(line, { note: event.currentTarget.value })}
                />
              </label>
            </div>
          );
        })}
        {order.lines.length === 0 && <p class="hint">Nothing was noted to be done.</p>}
      </fieldset>
      {weighed && (
        <fieldset>
          <legend>As weighed</legend>
          <div class="fields">
            <label>
              Empty weight, lb
              <input
                required
                inputMode="decimal"
                pattern="[0-9]+([.][0-9]+)?"
                value={weight.lb}
                onInput={(event) => set(setWeight)({ ...weight, lb: event.currentTarget.value })}
              />
            </label>
            <label>
              Its arm, in aft of datum
              <input
                inputMode="decimal"
                pattern="-?[0-9]+([.][0-9]+)?"
                value={weight.arm}
                onInput={(event) => set(setWeight)({ ...weight, arm: event.currentTarget.value })}
              />
            </label>
          </div>
        </fieldset>
      )}
      <fieldset>
        <legend>Check flight</legend>
        <label class="tick">
          <input
            type="checkbox"
            checked={checkNeeded}
            onChange={(event) => set(setCheckNeeded)(event.currentTarget.checked)}
          />
          The work may have changed how it flies (14 CFR 91.407(b))
        </label>
        {checkNeeded && (
          <label>
            What makes it necessary
            <input
              required
              maxLength={500}
              value={checkBecause}
              onInput={(event) => set(setCheckBecause)(event.currentTarget.value)}
            />
          </label>
        )}
      </fieldset>
      <div class="fields">
        <label>
          Signed by
          <select value={signerId} onChange={(event) => set(setSigner)(event.currentTarget.value)}>
            {signers.map(({ id, name, holds }) => (
              <option key={id} value={id}>
                {name}, {HOLDS[holds] ?? holds}
              </option>
            ))}
          </select>
        </label>
        <label>
          On
          <input
            type="date"
            required
            value={signedOn}
            max={today(zone)}
            onChange={(event) => set(setSignedOn)(event.currentTarget.value)}
          />
        </label>
        <label>
          Statement in the maintenance record
          <input
            required
            maxLength={4000}
            value={statement}
            onInput={(event) => set(setStatement)(event.currentTarget.value)}
          />
        </label>
      </div>
      <Refusal problem={problem} />
      <button class="main" disabled={busy}>
        What would it record?
      </button>
      {shown && (
        <>
          <Effects of={shown} zone={zone} />
          <button type="button" class="main" disabled={busy} onClick={() => void send('')}>
            Record the return to service
          </button>
        </>
      )}
    </form>
  );
}
