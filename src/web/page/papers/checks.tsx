import { useEffect, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Choice, DayInput, TextInput } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import { Day } from '../parts/said.js';
import { today } from '../parts/time.js';
import { all, names } from '../session/session.js';
import type { Check } from './types.js';

const KINDS = [
  ['identity', 'Identity document'],
  ['citizenship', 'Citizenship, or eligibility for flight training'],
  ['background', 'Background check'],
] as const;
const wordsOf = (kind: Check['kind']): string => KINDS.find(([word]) => word === kind)![1];

/** What officers have seen of who a member is; `takeBack` for those who may. */
function CheckList({ checks, takeBack }: { checks: Check[]; takeBack?: (check: Check) => void }) {
  if (checks.length === 0) return <p class="hint">None on record.</p>;
  return (
    <ul class="checks">
      {checks.map((one) => (
        <li key={one.id}>
          {wordsOf(one.kind)}: seen on <Day date={one.seenOn} />
          {one.expiresOn !== null && (
            <>
              , good through <Day date={one.expiresOn} />
            </>
          )}
          {one.voided !== null && <strong> Taken back: {one.voided.reason}</strong>}
          {one.voided === null && takeBack && (
            <button
              type="button"
              class="quiet"
              aria-label={`Take back: ${wordsOf(one.kind)} seen on ${one.seenOn}`}
              onClick={() => takeBack(one)}
            >
              Take back
            </button>
          )}
        </li>
      ))}
    </ul>
  );
}

/** One's own checks. */
export function OwnChecks({ me }: { me: Me }) {
  const [checks, setChecks] = useState<Check[] | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => {
    void attempt(setProblem, async () => setChecks(await all<Check>(`/members/${me.memberId}/checks`)));
  }, []);
  return (
    <section aria-labelledby="own-checks">
      <h3 id="own-checks">Seen by an officer</h3>
      <p class="hint">That an officer saw it, and when. No number and no copy is kept.</p>
      <Refusal problem={problem} />
      {checks && <CheckList checks={checks} />}
    </section>
  );
}

/** For officers: what was seen of a member, and recording that it was seen. */
export function CheckDesk({ me }: { me: Me }) {
  const day = today(me.club.zone);
  const [memberId, setMemberId] = useState('');
  const [checks, setChecks] = useState<Check[]>([]);
  const [form, setForm] = useState<{ kind: Check['kind']; seenOn: string; expiresOn: string }>({
    ...{ kind: 'identity', seenOn: day, expiresOn: '' },
  });
  const [reason, setReason] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const at = `/members/${memberId}/checks`;
  const read = async () => setChecks(await all<Check>(at));
  useEffect(() => {
    setChecks([]);
    if (memberId !== '') void attempt(setProblem, read);
  }, [memberId]);
  const record = () =>
    attempt(setProblem, async () => {
      await call('POST', at, { ...form, expiresOn: form.expiresOn || null });
      setForm({ ...form, expiresOn: '' });
      await read();
    });
  const takeBack = (one: Check) =>
    void attempt(setProblem, async () => {
      await call('POST', `/member-checks/${one.id}/void`, { reason });
      setReason('');
      await read();
    });
  const others = names.value.filter(({ id }) => id !== me.memberId);
  return (
    <section aria-labelledby="check-desk">
      <h3 id="check-desk">Identity and citizenship</h3>
      <p class="hint">
        Record only that you saw the original, and until when it holds: never its number, never a copy.
        Whoever gives flight training answers for the verification (49 CFR 1552.7).
      </p>
      <Choice
        label="Member"
        value={memberId}
        set={setMemberId}
        of={[['', 'Choose'], ...others.map(({ id, name }) => [id, name] as const)]}
      />
      {memberId !== '' && (
        <>
          <CheckList checks={checks} takeBack={takeBack} />
          {checks.some(({ voided }) => voided === null) && (
            <TextInput label="To take one back: why" max={500} value={reason} set={setReason} />
          )}
          <form
            aria-label="Record what you have seen"
            onSubmit={(event) => {
              event.preventDefault();
              void record();
            }}
          >
            <Choice label="Kind" value={form.kind} set={(kind) => setForm({ ...form, kind })} of={KINDS} />
            <DayInput
              label="Seen on"
              required
              max={day}
              value={form.seenOn}
              set={(seenOn) => setForm({ ...form, seenOn })}
            />
            <DayInput
              label="Holds through, if it names an end"
              value={form.expiresOn}
              set={(expiresOn) => setForm({ ...form, expiresOn })}
            />
            <button class="main">I have seen the original</button>
          </form>
        </>
      )}
      <Refusal problem={problem} />
    </section>
  );
}
