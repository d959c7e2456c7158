import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import type { Item, Named } from './types.js';
import type { Done } from './undo-bar.js';

/** Taps by mistake happen: this is what the record of taking one back says. */
const AT_ONCE = 'Signed by mistake, taken back at once';

/** An open item. One tap shows its standard and the two answers, the second signs. */
export function SignItem({
  item,
  member,
  differenceId,
  maySign,
  signed,
}: {
  item: Item;
  member: Named;
  differenceId: string | null;
  maySign: boolean;
  signed: (done: Done) => Promise<unknown>;
}) {
  const [open, setOpen] = useState(false);
  const [lacking, setLacking] = useState(false);
  const [note, setNote] = useState('');
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const path = `/members/${member.id}/checkout-marks`;
  const sign = async (outcome: 'signed' | 'not-yet') => {
    setBusy(true);
    await attempt(setProblem, async () => {
      const body = { itemId: item.itemId, differenceId, outcome, note };
      const mark = await call<{ id: string }>('POST', path, body);
      setOpen(false);
      setLacking(false);
      setNote('');
      await signed({
        says: `${outcome === 'signed' ? 'Signed' : 'Not yet'}: ${item.title}, ${member.name}.`,
        path: `${path}/${mark.id}/correct`,
        body: { because: AT_ONCE, record: null },
      });
    });
    setBusy(false);
  };
  return (
    <li class={`item is-${item.state}`}>
      <button class="row" aria-expanded={open} onClick={() => setOpen(!open)}>
        <span>{item.title}</span>
        <small>
          {item.state === 'not-yet' ? 'Not yet to standard' : 'Open'}
          {!item.required && ', not required'}
        </small>
      </button>
      {open && (
        <div class="answers">
          <p>{item.standard}</p>
          {item.mark?.note && (
            <p class="hint">
              {item.mark.signedBy.name}: {item.mark.note}
            </p>
          )}
          {maySign && !lacking && (
            <div class="taps">
              <button class="main" disabled={busy} onClick={() => void sign('signed')}>
                To standard: sign
              </button>
              <button disabled={busy} onClick={() => setLacking(true)}>
                Not yet
              </button>
            </div>
          )}
          {lacking && (
            <form
              onSubmit={(event) => {
                event.preventDefault();
                void sign('not-yet');
              }}
            >
              <label>
                What is missing
                <input
                  required
                  maxLength={1000}
                  value={note}
                  onInput={(event) => setNote(event.currentTarget.value)}
                />
              </label>
              <div class="taps">
                <button class="main" disabled={busy}>
                  Note it
                </button>
                <button type="button" onClick={() => setLacking(false)}>
                  Back
                </button>
              </div>
            </form>
          )}
          <Refusal problem={problem} />
        </div>
      )}
    </li>
  );
}
