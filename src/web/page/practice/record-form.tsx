import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { TextInput } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import { today } from '../parts/time.js';
import { RecordFields } from './record-fields.js';
import { bodyOf, nothingYet, typedOf, type Typed } from './record-typed.js';
import { verdictSays } from './words.js';
import type { PracticeRecord } from './types.js';

/** One manoeuvre, as flown. What is left empty is not recorded. */
export function RecordForm({
  at,
  zone,
  signs,
  recorded,
}: {
  at: string;
  zone: string;
  signs: boolean;
  recorded: () => void;
}) {
  const [typed, setTyped] = useState<Typed>(() => nothingYet(today(zone)));
  const [done, setDone] = useState<PracticeRecord | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const send = () =>
    attempt(setProblem, async () => {
      setDone(await call<PracticeRecord>('POST', at, bodyOf(typed)));
      const { flownOn = '', manoeuvre = '' } = typed;
      setTyped({ flownOn, manoeuvre });
      recorded();
    });
  return (
    <section aria-labelledby="record">
      <h3 id="record">{signs ? 'Sign what you saw' : 'Record a manoeuvre'}</h3>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void send();
        }}
      >
        <RecordFields zone={zone} typed={typed} change={setTyped} />
        <button class="main">{signs ? 'Sign it' : 'Record it'}</button>
      </form>
      <Refusal problem={problem} />
      {done && (
        <p role="status">
          Recorded: {done.title}. {verdictSays(done)}
        </p>
      )}
    </section>
  );
}

/** Puts another record in the place of one; both stay on record. */
export function CorrectForm({
  at,
  zone,
  record,
  corrected,
}: {
  at: string;
  zone: string;
  record: PracticeRecord;
  corrected: () => void;
}) {
  const [typed, setTyped] = useState<Typed>(() => typedOf(record));
  const [because, setBecause] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const send = () =>
    attempt(setProblem, async () => {
      // What the form does not ask for stays as it was.
      const body = { ...bodyOf(typed), logEntryId: record.logEntryId };
      await call('POST', `${at}/${record.id}/correct`, { because, record: body });
      corrected();
    });
  return (
    <form
      aria-label={`Correct ${record.title} of ${record.flownOn}`}
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <RecordFields zone={zone} typed={typed} change={setTyped} />
      <TextInput
        label="Why it is corrected; the first record stays, and this one counts"
        value={because}
        set={setBecause}
        required
        max={500}
      />
      <Refusal problem={problem} />
      <button class="main">Put it in its place</button>
    </form>
  );
}
