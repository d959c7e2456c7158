import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { Day } from '../parts/said.js';
import type { Item, Named, Progress } from './types.js';
import type { Done } from './undo-bar.js';

/** What is signed of a checkout; one's own sign-off can be withdrawn with a reason, and both stay on record. */
export function SignedItems({
  one,
  member,
  me,
  signed,
}: {
  one: Progress;
  member: Named;
  me?: Me;
  signed?: (done: Done | null) => Promise<unknown>;
}) {
  const all = one.items.filter(({ state }) => state === 'signed');
  if (all.length === 0) return null;
  return (
    <details class="signed">
      <summary>Signed: {all.length === 1 ? '1 item' : `${all.length} items`}</summary>
      <ul class="items">
        {all.map((item) => (
          <li key={item.itemId} class="item is-signed">
            <strong>{item.title}</strong>
            {item.mark && (
              <small>
                <Day date={item.mark.on} />, {item.mark.signedBy.name}
                {item.mark.note && `: ${item.mark.note}`}
              </small>
            )}
            {signed && item.mark && item.mark.signedBy.id === me?.memberId && (
              <Withdraw {...{ item, member }} mark={item.mark.id} done={() => signed(null)} />
            )}
          </li>
        ))}
      </ul>
    </details>
  );
}

function Withdraw({
  item,
  member,
  mark,
  done,
}: {
  item: Item;
  member: Named;
  mark: string;
  done: () => Promise<unknown>;
}) {
  const [open, setOpen] = useState(false);
  const [because, setBecause] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  if (!open)
    return (
      <button class="quiet" aria-label={`Withdraw ${item.title}`} onClick={() => setOpen(true)}>
        Withdraw
      </button>
    );
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        void attempt(setProblem, async () => {
          await call('POST', `/members/${member.id}/checkout-marks/${mark}/correct`, {
            because,
            record: null,
          });
          await done();
        });
      }}
    >
      <label>
        Why it is withdrawn; both stay on record
        <input
          required
          minLength={5}
          maxLength={500}
          value={because}
          onInput={(event) => setBecause(event.currentTarget.value)}
        />
      </label>
      <button class="main">Withdraw it</button>
      <Refusal problem={problem} />
    </form>
  );
}
