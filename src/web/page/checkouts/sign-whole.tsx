import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { DayInput, TextInput } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import { today } from '../parts/time.js';
import type { Named, Progress } from './types.js';
import type { Done } from './undo-bar.js';

/** Signs a checkout whole, once everything it asks for is there. */
export function SignWhole({
  one,
  member,
  me,
  signed,
}: {
  one: Progress;
  member: Named;
  me: Me;
  signed: (done: Done) => Promise<unknown>;
}) {
  const [open, setOpen] = useState(false);
  const [on, setOn] = useState(today(me.club.zone));
  const [remarks, setRemarks] = useState('');
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const { kind, title, difference } = one;
  const send = async () => {
    setBusy(true);
    await attempt(setProblem, async () => {
      const made = await call<{ id: string }>('POST', `/members/${member.id}/checkouts`, {
        kind,
        modelId: kind === 'model' ? one.modelId : null,
        aircraftId: kind === 'differences' ? (difference?.aircraftId ?? null) : null,
        equipmentGroup: kind === 'equipment' ? one.equipmentGroup : null,
        condition: kind === 'condition' ? one.condition : null,
        signedOn: on,
        remarks,
      });
      setOpen(false);
      await signed({
        says: `Checkout signed: ${title}, ${member.name}.`,
        path: `/checkouts/${made.id}/void`,
        body: { reason: 'Signed by mistake, taken back at once' },
      });
    });
    setBusy(false);
  };
  if (!open)
    return (
      <button class="main whole" onClick={() => setOpen(true)}>
        {one.state === 'standing' || one.state === 'ending' ? 'Sign it anew' : 'Sign the whole checkout'}
      </button>
    );
  return (
    <form
      class="answers"
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <p>
        You sign that {member.name} may fly on it
        {one.goodDays === null ? '' : `; good for ${one.goodDays} days`}. It is never edited, only taken back.
      </p>
      <DayInput label="Day of the flight" value={on} set={setOn} max={today(me.club.zone)} required />
      <TextInput label="Remarks, if any" value={remarks} set={setRemarks} max={2000} />
      <div class="taps">
        <button class="main" disabled={busy}>
          Sign it off
        </button>
        <button type="button" onClick={() => setOpen(false)}>
          Back
        </button>
      </div>
      <Refusal problem={problem} />
    </form>
  );
}
