import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { PartsForm } from './parts-form.js';
import type { Part, Squawk } from './types.js';
import { isOpen } from './words.js';

interface Props {
  squawk: Squawk;
  others: Squawk[];
  at: string;
  busy: boolean;
  run(work: () => Promise<void>): Promise<void>;
  changed(): void;
}

type How = 'fix' | 'no-fault-found' | 'duplicate';

/** How a squawk ends, or begins again. */
export function Closing({ squawk, others, at, busy, run, changed }: Props) {
  const [how, setHow] = useState<How>('fix');
  const [done, setDone] = useState('');
  const [signedBy, setSignedBy] = useState('');
  const [certificate, setCertificate] = useState('');
  const [parts, setParts] = useState<Part[]>([]);
  const [ofSquawkId, setOf] = useState('');
  const keepers = others.filter(({ state }) => isOpen(state));
  const open = isOpen(squawk.state);
  const signed = { signedBy, signedCertificate: certificate.trim() === '' ? null : certificate };
  const body = (): [string, object] => {
    if (!open) return ['reopen', { because: done }];
    if (how === 'duplicate') return [how, { ofSquawkId }];
    return [how, how === 'fix' ? { correctiveAction: done, parts, ...signed } : { finding: done, ...signed }];
  };
  const words = how === 'fix' ? 'What was done' : 'What was tested, how, and what was found';
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        const [step, sent] = body();
        void run(async () => {
          await call('POST', `${at}/${step}`, sent);
          changed();
        });
      }}
    >
      {open && (
        <label>
          How it ends
          <select value={how} onChange={(event) => setHow(event.currentTarget.value as How)}>
            <option value="fix">It is fixed</option>
            <option value="no-fault-found">No fault was found</option>
            {keepers.length > 0 && <option value="duplicate">It is a duplicate of another</option>}
          </select>
        </label>
      )}
      {open && how === 'duplicate' ? (
        <label>
          Of which
          <select required value={ofSquawkId} onChange={(event) => setOf(event.currentTarget.value)}>
            <option value="">Choose an open squawk</option>
            {keepers.map(({ id, title }) => (
              <option key={id} value={id}>
                {title}
              </option>
            ))}
          </select>
        </label>
      ) : (
        <label>
          {open ? words : 'Why it is opened again'}
          <textarea
            required
            rows={2}
            minLength={open ? undefined : 5}
            maxLength={open ? 2000 : 500}
            value={done}
            onInput={(event) => setDone(event.currentTarget.value)}
          />
        </label>
      )}
      {open && how === 'fix' && <PartsForm parts={parts} change={setParts} />}
      {open && how !== 'duplicate' && (
        <>
          <label>
            Who signed
            <input
              required
              maxLength={200}
              value={signedBy}
              onInput={(event) => setSignedBy(event.currentTarget.value)}
            />
          </label>
          <label>
            Their certificate, kept as entered
            <input
              maxLength={200}
              value={certificate}
              onInput={(event) => setCertificate(event.currentTarget.value)}
            />
          </label>
          <p class="hint">
            This is a note of what was signed elsewhere. It grants nobody authority to return the aircraft to
            service.
          </p>
        </>
      )}
      <button class="main" disabled={busy}>
        {open ? 'Close it' : 'Reopen it'}
      </button>
    </form>
  );
}
