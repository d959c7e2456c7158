import { useState } from 'preact/hooks';
import { ApiProblem, call } from '../api/client.js';
import { Day } from '../parts/said.js';
import type { Change } from './types.js';
import { Refusal } from '../parts/refusal.js';

/** Changes so far, newest first; the last may be taken back while the aircraft has not flown. */
export function ChangeHistory({
  aircraftId,
  changes,
  mayTakeBack,
  done,
}: {
  aircraftId: string;
  changes: Change[];
  mayTakeBack: boolean;
  done: () => void;
}) {
  if (changes.length === 0) return <p class="hint">No change of equipment is on record.</p>;
  return (
    <section class="changes">
      <h3>Changes</h3>
      <ul>
        {changes.map((change) => (
          <li key={change.id}>
            <strong>{change.title}</strong>, <Day date={change.doneOn} />
            {change.removed.length > 0 && <> · out: {change.removed.join(', ')}</>}
            {change.installed.length > 0 && <> · in: {change.installed.join(', ')}</>} · signed by{' '}
            {change.signedBy}
            {change.takenBackAt !== null && <span class="chip">taken back: {change.takenBackReason}</span>}
            {mayTakeBack && change.takenBackAt === null && (
              <TakeBack
                path={`/aircraft/${aircraftId}/equipment-changes/${change.id}/take-back`}
                done={done}
              />
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

function TakeBack({ path, done }: { path: string; done: () => void }) {
  const [open, setOpen] = useState(false);
  const [reason, setReason] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const send = async () => {
    setProblem(null);
    try {
      await call('POST', path, { reason });
      done();
    } catch (error) {
      if (!(error instanceof ApiProblem)) throw error;
      setProblem(error.problem.detail);
    }
  };
  if (!open)
    return (
      <button class="quiet" onClick={() => setOpen(true)}>
        Take back
      </button>
    );
  return (
    <form
      class="take-back"
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <label>
        Why (at least 10 characters)
        <input
          value={reason}
          minLength={10}
          required
          onInput={(event) => setReason(event.currentTarget.value)}
        />
      </label>
      <button class="quiet danger">Take it back</button>
      <button type="button" class="quiet" onClick={() => setOpen(false)}>
        Keep it
      </button>
      <Refusal problem={problem} />
    </form>
  );
}
