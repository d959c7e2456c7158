import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { Day } from '../parts/said.js';
import { today } from '../parts/time.js';
import type { Weighing } from './types.js';

const SOURCES: Record<string, string> = {
  weighing: 'weighed',
  computed: 'computed',
  'equipment-change': 'by an equipment change',
};

/** Empty weights by date. */
export function Weighings({
  aircraftId,
  weighings,
  zone,
  changed,
}: {
  aircraftId: string;
  weighings: Weighing[];
  zone: string;
  changed: () => void;
}) {
  const empty = { on: today(zone), lb: '', arm: '', source: 'weighing' };
  const [form, setForm] = useState(empty);
  const [problem, setProblem] = useState<string | null>(null);
  const standing = weighings.filter(({ voidedAt }) => voidedAt === null);
  const add = () =>
    attempt(setProblem, async () => {
      await call('POST', `/aircraft/${aircraftId}/weighings`, {
        ...{ effectiveOn: form.on, source: form.source, emptyWeightLb: Number(form.lb) },
        emptyArmIn: form.arm === '' ? null : Number(form.arm),
      });
      setForm(empty);
      changed();
    });
  const strike = (id: string) =>
    attempt(setProblem, async () => {
      await call('POST', `/aircraft/${aircraftId}/weighings/${id}/void`);
      changed();
    });
  return (
    <details class="card">
      <summary>
        Empty weight{' '}
        {standing[0] && (
          <span class="chip">
            {standing[0].emptyWeightLb} lb
            {standing[0].emptyArmIn !== null && ` at ${standing[0].emptyArmIn.toFixed(2)} in`}
          </span>
        )}
      </summary>
      <ul>
        {standing.map((one) => (
          <li key={one.id}>
            <Day date={one.effectiveOn} />: {one.emptyWeightLb} lb
            {one.emptyArmIn === null ? ', arm not known' : ` at ${one.emptyArmIn.toFixed(2)} in`},{' '}
            {SOURCES[one.source]}
            {one.source !== 'equipment-change' && (
              <button
                class="quiet"
                onClick={() => void strike(one.id)}
                aria-label={`Strike the weight of ${one.effectiveOn}`}
              >
                Entered wrong: strike it
              </button>
            )}
          </li>
        ))}
        {standing.length === 0 && <li class="hint">No weighing is on record.</li>}
      </ul>
      <form
        class="in-line"
        aria-label="Record a weighing"
        onSubmit={(event) => {
          event.preventDefault();
          void add();
        }}
      >
        <label>
          Holds from
          <input
            type="date"
            required
            max={today(zone)}
            value={form.on}
            onChange={(event) => setForm({ ...form, on: event.currentTarget.value })}
          />
        </label>
        <label>
          Empty weight, lb
          <input
            required
            inputMode="decimal"
            pattern="[0-9]+([.][0-9]+)?"
            value={form.lb}
            onInput={(event) => setForm({ ...form, lb: event.currentTarget.value })}
          />
        </label>
        <label>
          Its arm, in aft of datum
          <input
            inputMode="decimal"
            pattern="-?[0-9]+([.][0-9]+)?"
            value={form.arm}
            onInput={(event) => setForm({ ...form, arm: event.currentTarget.value })}
          />
        </label>
        <label>
          How
          <select
            value={form.source}
            onChange={(event) => setForm({ ...form, source: event.currentTarget.value })}
          >
            <option value="weighing">weighed on scales</option>
            <option value="computed">computed from the last</option>
          </select>
        </label>
        <button class="main">Record it</button>
      </form>
      <Refusal problem={problem} />
    </details>
  );
}
