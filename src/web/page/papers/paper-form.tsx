import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import type { Field, Kind } from './kinds.js';

/** Enters a paper of one kind. */
export function PaperForm({ kind, memberId, saved }: { kind: Kind; memberId: string; saved(): void }) {
  const [values, setValues] = useState<Record<string, string>>({});
  const [problem, setProblem] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const send = async () => {
    setBusy(true);
    const body = Object.fromEntries(
      kind.fields.flatMap((field) => {
        const value = values[field.name] ?? '';
        return value === '' ? [] : [[field.name, read(field, value)]];
      }),
    );
    const done = await attempt(setProblem, async () => {
      await call('POST', `/members/${memberId}/${kind.path}`, body);
    });
    setBusy(false);
    if (!done) return;
    setValues({});
    saved();
  };
  return (
    <details>
      <summary>Enter one</summary>
      <form
        aria-label={`Enter: ${kind.title}`}
        onSubmit={(event) => {
          event.preventDefault();
          void send();
        }}
      >
        {kind.fields.map((field) => (
          <Input
            key={field.name}
            field={field}
            value={values[field.name] ?? ''}
            change={(value) => setValues({ ...values, [field.name]: value })}
          />
        ))}
        <Refusal problem={problem} />
        <button class="main" disabled={busy}>
          {busy ? 'Saving…' : 'Save'}
        </button>
      </form>
    </details>
  );
}

function read({ name, type }: Field, value: string): unknown {
  if (type === 'ticks') {
    const picked = value.split('\n').filter((one) => one !== '');
    if (name !== 'ratings' || !picked.some((one) => one.includes(' '))) return picked;
    return picked.map((one) => {
      const [category, ...rest] = one.split(' ');
      return { category, class: rest.join(' ') };
    });
  }
  if (type === 'hours' || type === 'number') return Number(value);
  if (type === 'tick') return value === 'yes';
  if (type === 'words') return value.split('\n').flatMap((line) => line.trim() || []);
  return value;
}

function Input({ field, value, change }: { field: Field; value: string; change(value: string): void }) {
  const { label, type, choices, required = false } = field;
  if (type === 'tick')
    return (
      <label class="tick">
        <input
          type="checkbox"
          checked={value === 'yes'}
          onChange={(event) => change(event.currentTarget.checked ? 'yes' : '')}
        />
        {label}
      </label>
    );
  if (type === 'ticks') {
    const picked = value.split('\n').filter((one) => one !== '');
    const set = (one: string, on: boolean) =>
      change([...picked.filter((other) => other !== one), ...(on ? [one] : [])].join('\n'));
    return (
      <fieldset>
        <legend>{label}</legend>
        {choices?.map(([word, text]) => (
          <label key={word} class="tick">
            <input
              type="checkbox"
              checked={picked.includes(word)}
              onChange={(event) => set(word, event.currentTarget.checked)}
            />
            {text}
          </label>
        ))}
      </fieldset>
    );
  }
  return (
    <label>
      {label}
      {choices ? (
        <select required={required} value={value} onChange={(event) => change(event.currentTarget.value)}>
          <option value="">Choose</option>
          {choices.map(([word, text]) => (
            <option key={word} value={word}>
              {text}
            </option>
          ))}
        </select>
      ) : type === 'words' ? (
        <textarea rows={2} value={value} onInput={(event) => change(event.currentTarget.value)} />
      ) : (
        <input
          type={(type === 'day' ? 'date' : type === 'text' ? 'text' : 'number') as 'text'}
          {...(type === 'hours' ? { min: 0, step: 0.1 } : {})}
          required={required}
          value={value}
          onInput={(event) => change(event.currentTarget.value)}
        />
      )}
    </label>
  );
}
