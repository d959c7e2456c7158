import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { TextInput } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import { Day } from '../parts/said.js';
import type { Step } from './types.js';

/** What is done about a report; with `finish`, a step can be recorded as done. */
export function Steps({
  of,
  finish,
}: {
  of: Step[];
  finish?: { at: string; today: string; done: () => void };
}) {
  return (
    <ol class="steps">
      {of.map((step) => (
        <li key={step.id}>
          {step.what}, {step.responsibleName}, by <Day date={step.dueOn} />.{' '}
          {step.doneOn ? (
            <>
              Done <Day date={step.doneOn} />: {step.outcome}
            </>
          ) : (
            <b>Open</b>
          )}
          {finish && !step.doneOn && <Finish step={step} {...finish} />}
        </li>
      ))}
    </ol>
  );
}

function Finish({ step, at, today, done }: { step: Step; at: string; today: string; done: () => void }) {
  const [outcome, setOutcome] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  return (
    <form
      class="fields"
      onSubmit={(event) => {
        event.preventDefault();
        void attempt(setProblem, async () => {
          const match = { 'If-Match': `"${step.rowVersion}"` };
          await call('PATCH', `${at}/steps/${step.id}`, { doneOn: today, outcome }, match);
          done();
        });
      }}
    >
      <TextInput label="What came of it" value={outcome} set={setOutcome} required max={2000} />
      <Refusal problem={problem} />
      <button class="main">Done today</button>
    </form>
  );
}
