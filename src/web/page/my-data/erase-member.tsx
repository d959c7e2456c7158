import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Me, PersonName } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Choice, TextInput } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import { all, names } from '../session/session.js';
import { inWords } from './words.js';

interface Erasure {
  newName: string;
  deleted: Record<string, number>;
  emptiedNotes: number;
  bareAuditEntries: number;
  kept: { what: string; why: string; count: number }[];
}

/** Erases a member: whom and why, then what it would do, then the name typed, since nothing brings it back. */
export function EraseMember({ me }: { me: Me }) {
  const [memberId, setMemberId] = useState('');
  const [reason, setReason] = useState('');
  const [would, setWould] = useState<Erasure | null>(null);
  const [typed, setTyped] = useState('');
  const [done, setDone] = useState<string | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const name = names.value.find(({ id }) => id === memberId)?.name ?? '';

  const change = (set: (value: string) => void) => (value: string) => {
    set(value);
    setWould(null);
    setTyped('');
    setDone(null);
  };
  const ask = async (rest: string, then: (erasure: Erasure) => void | Promise<void>) => {
    setBusy(true);
    await attempt(setProblem, async () =>
      then(await call<Erasure>('POST', `/members/${memberId}/erasure${rest}`, { reason: reason.trim() })),
    );
    setBusy(false);
  };
  const erase = () =>
    ask('', async ({ newName }) => {
      setWould(null);
      setTyped('');
      setMemberId('');
      setReason('');
      setDone(`Erased. In the club's records the member is now called ${newName}.`);
      names.value = await all<PersonName>('/members/names');
    });

  return (
    <>
      <form
        class="erase"
        aria-label="Look at what erasing would do"
        onSubmit={(event) => {
          event.preventDefault();
          void ask('/preview', setWould);
        }}
      >
        <Choice
          label="Member"
          value={memberId}
          set={change(setMemberId)}
          of={[
            ['', 'Choose'],
            ...names.value.filter(({ id }) => id !== me.memberId).map(({ id, name }) => [id, name] as const),
          ]}
        />
        <TextInput
          label="Why (who asked, and how)"
          value={reason}
          set={change(setReason)}
          required
          max={500}
        />
        <button class="main" disabled={busy || memberId === ''}>
          See what it would do
        </button>
      </form>
      <Refusal problem={problem} />
      <p role="status">{done}</p>
      {would && (
        <section class="would" aria-labelledby="would">
          <h4 id="would">Erasing {name} would</h4>
          <h5>delete for good</h5>
          <dl class="counts">
            {Object.entries(would.deleted)
              .filter(([, count]) => count > 0)
              .map(([what, count]) => (
                <div key={what}>
                  <dt>{inWords(what)}</dt>
                  <dd>{count}</dd>
                </div>
              ))}
            <div>
              <dt>Remarks and notes emptied</dt>
              <dd>{would.emptiedNotes}</dd>
            </div>
            <div>
              <dt>Audit entries that lose what was said</dt>
              <dd>{would.bareAuditEntries}</dd>
            </div>
          </dl>
          <h5>keep, under the name “{would.newName}”</h5>
          <ul class="kept">
            {would.kept
              .filter(({ count }) => count > 0)
              .map(({ what, why, count }) => (
                <li key={what}>
                  <strong>
                    {what} ({count}).
                  </strong>{' '}
                  {why}
                </li>
              ))}
          </ul>
          <form
            class="erase"
            aria-label={`Erase ${name}`}
            onSubmit={(event) => {
              event.preventDefault();
              void erase();
            }}
          >
            <TextInput
              label={`Nothing brings it back. Type the name to go on: ${name}`}
              value={typed}
              set={setTyped}
              required
            />
            <button class="main grave" disabled={busy || typed.trim() !== name}>
              Erase {name}
            </button>
          </form>
        </section>
      )}
    </>
  );
}
