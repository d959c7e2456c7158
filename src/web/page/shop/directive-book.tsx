import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { Day } from '../parts/said.js';
import { all } from '../session/session.js';
import { DirectiveForm } from './directive-form.js';
import type { Directive, Model } from './types.js';

/** Every directive on record, and the form for another: entered, corrected, superseded, withdrawn. */
export function DirectiveBook({ zone, changed }: { zone: string; changed: () => void }) {
  const [directives, setDirectives] = useState<Directive[] | null>(null);
  const [models, setModels] = useState<Model[]>([]);
  const [form, setForm] = useState<{ of: Directive | null } | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const read = () =>
    attempt(setProblem, async () => {
      setModels(await all<Model>('/models'));
      setDirectives((await call<{ items: Directive[] }>('GET', '/directives')).items);
    });
  const done = () => {
    setForm(null);
    void read();
    changed();
  };
  return (
    <details
      class="card"
      onToggle={(event) => event.currentTarget.open && directives === null && void read()}
    >
      <summary>Enter or correct a directive</summary>
      <Refusal problem={problem} />
      <ul>
        {directives?.map((one) => (
          <li key={one.id}>
            <strong>
              {one.issuer} {one.number}
            </strong>{' '}
            {one.title}, in force since <Day date={one.effectiveOn} />
            {one.withdrawnOn && (
              <>
                , withdrawn <Day date={one.withdrawnOn} />
              </>
            )}
            {one.supersededBy && (
              <>, superseded by {directives.find(({ id }) => id === one.supersededBy)?.number}</>
            )}{' '}
            <button
              class="quiet"
              onClick={() => setForm({ of: one })}
              aria-label={`Correct it: ${one.number}`}
            >
              Correct it
            </button>
          </li>
        ))}
      </ul>
      {directives !== null && form === null && (
        <button class="main" onClick={() => setForm({ of: null })}>
          Enter another
        </button>
      )}
      {form !== null && directives !== null && (
        <DirectiveForm
          key={form.of?.id ?? 'new'}
          of={form.of}
          others={directives.filter(({ id, supersededBy }) => id !== form.of?.id && supersededBy === null)}
          models={models}
          zone={zone}
          done={done}
          leave={() => setForm(null)}
        />
      )}
    </details>
  );
}
