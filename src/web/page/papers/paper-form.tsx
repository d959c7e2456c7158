import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import type { Field, Kind } from './kinds.js';
import { bodyOf, changesOf, typedOf, type Typed } from './typed.js';
import type { Paper } from './types.js';

interface Props {
  kind: Kind;
  memberId: string;
  /** The paper to change; without it, a new one is entered. */
  paper?: Paper;
  saved(): void;
}

/** Enters a paper of one kind, or changes one. */
export function PaperForm({ kind, memberId, paper, saved }: Props) {
  const before = paper === undefined ? {} : typedOf(kind, paper);
  const [values, setValues] = useState<Typed>(before);
  const [problem, setProblem] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const send = async () => {
    setBusy(true);
    const at = `/members/${memberId}/${kind.path}`;
    const done = await attempt(setProblem, async () => {
      if (paper === undefined) await call('POST', at, bodyOf(kind, values));
      else
        await call('PATCH', `${at}/${paper.id}`, changesOf(kind, before, values), {
          'If-Match': `"${paper.rowVersion}"`,
        });
    });
    setBusy(false);
    if (!done) return;
    if (paper === undefined) setValues({});
    saved();
  };
  return (
    <form
      aria-label={paper === undefined ? `Enter: ${kind.title}` : `Change: ${kind.names(paper)}`}
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
  );
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
