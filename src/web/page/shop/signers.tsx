import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { Day } from '../parts/said.js';
import { today } from '../parts/time.js';
import { HOLDS, type Signer } from './types.js';

/** Who is on record as entitled to sign for work. */
export function Signers({
  signers,
  zone,
  changed,
}: {
  signers: Signer[];
  zone: string;
  changed: () => void;
}) {
  const empty = { name: '', certificate: '', holds: 'mechanic', validFrom: today(zone), validThrough: '' };
  const [form, setForm] = useState(empty);
  const [problem, setProblem] = useState<string | null>(null);
  const add = () =>
    attempt(setProblem, async () => {
      await call('POST', '/signers', {
        ...form,
        validThrough: form.validThrough === '' ? null : form.validThrough,
      });
      setForm(empty);
      changed();
    });
  return (
    <details class="card">
      <summary>
        Who may sign <span class="chip">{signers.length}</span>
      </summary>
      <p class="hint">The record grants nobody authority; certificates and their limits decide.</p>
      <ul>
        {signers.map((one) => (
          <li key={one.id}>
            {one.name}, {one.certificate}: {HOLDS[one.holds] ?? one.holds}, from <Day date={one.validFrom} />
            {one.validThrough !== null && (
              <>
                {' '}
                through <Day date={one.validThrough} />
              </>
            )}
          </li>
        ))}
      </ul>
      <form
        class="in-line"
        aria-label="Record who may sign"
        onSubmit={(event) => {
          event.preventDefault();
          void add();
        }}
      >
        <label>
          Name
          <input
            required
            maxLength={120}
            value={form.name}
            onInput={(event) => setForm({ ...form, name: event.currentTarget.value })}
          />
        </label>
        <label>
          Certificate
          <input
            required
            maxLength={80}
            value={form.certificate}
            onInput={(event) => setForm({ ...form, certificate: event.currentTarget.value })}
          />
        </label>
        <label>
          As
          <select
            value={form.holds}
            onChange={(event) => setForm({ ...form, holds: event.currentTarget.value })}
          >
            {Object.entries(HOLDS).map(([holds, words]) => (
              <option key={holds} value={holds}>
                {words}
              </option>
            ))}
          </select>
        </label>
        <label>
          From
          <input
            type="date"
            required
            value={form.validFrom}
            onChange={(event) => setForm({ ...form, validFrom: event.currentTarget.value })}
          />
        </label>
        <label>
          Through
          <input
            type="date"
            value={form.validThrough}
            onChange={(event) => setForm({ ...form, validThrough: event.currentTarget.value })}
          />
        </label>
        <button class="main">Record</button>
      </form>
      <Refusal problem={problem} />
    </details>
  );
}
