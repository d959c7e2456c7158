import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { Day } from '../parts/said.js';
import type { Wish } from './types.js';

const EMPTY = { title: '', shopDays: '1', worthHours: '10', partsOn: '', withAnnual: true };

/** Upgrades the club wishes for: they ride along with shop visits. */
export function Wishes({
  aircraftId,
  wishes,
  changed,
}: {
  aircraftId: string;
  wishes: Wish[];
  changed: () => void;
}) {
  const [form, setForm] = useState(EMPTY);
  const [problem, setProblem] = useState<string | null>(null);
  const open = wishes.filter(({ doneOn }) => doneOn === null);
  const path = `/aircraft/${aircraftId}/wishes`;
  const add = () =>
    attempt(setProblem, async () => {
      const { title, shopDays, worthHours, partsOn, withAnnual } = form;
      await call('POST', path, {
        ...{ title, withAnnual, shopDays: Number(shopDays), worthHours: Number(worthHours) },
        partsOn: partsOn === '' ? null : partsOn,
      });
      setForm(EMPTY);
      changed();
    });
  const remove = (wish: Wish) =>
    attempt(setProblem, async () => {
      await call('DELETE', `${path}/${wish.id}`, undefined, { 'If-Match': `"${wish.rowVersion}"` });
      changed();
    });
  return (
    <details class="card">
      <summary>
        Upgrades wished for <span class="chip">{open.length}</span>
      </summary>
      <ul>
        {open.map((wish) => (
          <li key={wish.id}>
            {wish.title}: {wish.shopDays} shop days, worth {wish.worthHours} h of flying
            {wish.withAnnual && ', with the annual'}
            {wish.partsOn !== null && (
              <>
                , parts there on <Day date={wish.partsOn} />
              </>
            )}
            <button class="quiet" onClick={() => void remove(wish)} aria-label={`Strike ${wish.title}`}>
              Strike
            </button>
          </li>
        ))}
        {open.length === 0 && <li class="hint">None.</li>}
      </ul>
      <form
        class="in-line"
        aria-label="Wish for an upgrade"
        onSubmit={(event) => {
          event.preventDefault();
          void add();
        }}
      >
        <label>
          Upgrade
          <input
            required
            maxLength={200}
            value={form.title}
            onInput={(event) => setForm({ ...form, title: event.currentTarget.value })}
          />
        </label>
        <label>
          Days in the shop
          <input
            required
            type="number"
            min="0.5"
            max="60"
            step="0.5"
            value={form.shopDays}
            onInput={(event) => setForm({ ...form, shopDays: event.currentTarget.value })}
          />
        </label>
        <label>
          Worth, hours of flying
          <input
            required
            type="number"
            min="0"
            max="10000"
            step="any"
            value={form.worthHours}
            onInput={(event) => setForm({ ...form, worthHours: event.currentTarget.value })}
          />
        </label>
        <label>
          Parts there on
          <input
            type="date"
            value={form.partsOn}
            onChange={(event) => setForm({ ...form, partsOn: event.currentTarget.value })}
          />
        </label>
        <label class="tick">
          <input
            type="checkbox"
            checked={form.withAnnual}
            onChange={(event) => setForm({ ...form, withAnnual: event.currentTarget.checked })}
          />
          Only with the annual
        </label>
        <button class="main">Wish for it</button>
      </form>
      <Refusal problem={problem} />
    </details>
  );
}
