import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Booking } from '../api/types.js';
import { History } from '../calendar/history.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { spanIn } from '../parts/time.js';
import { BlockForm } from './block-form.js';

/** One block, with what can be done to it. */
export function BlockItem({
  block,
  zone,
  done,
}: {
  block: Booking;
  zone: string;
  done: (displaced: { memberName: string; departs: string; arrives: string }[]) => Promise<void>;
}) {
  const [open, setOpen] = useState<'change' | 'remove' | 'history' | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const span = spanIn(zone, block.departs, block.arrives);
  const remove = () =>
    attempt(setProblem, async () => {
      await call('POST', `/bookings/${block.id}/cancel`, {}, { 'If-Match': `"${block.rowVersion}"` });
      await done([]);
    });
  const button = (what: 'change' | 'remove' | 'history', word: string) => (
    <button
      class="quiet"
      aria-expanded={open === what}
      aria-label={`${word} ${block.registration} ${span}`}
      onClick={() => setOpen(open === what ? null : what)}
    >
      {word}
    </button>
  );
  return (
    <li class="flight" data-block={block.registration}>
      <strong>{block.registration}</strong> {span}
      <p class="hint">
        {block.kind === 'club' ? 'The club’s own use' : 'Maintenance'}: {block.note}, by {block.memberName}
      </p>
      <p class="acts">
        {button('change', 'Change')}
        {button('remove', 'Remove')}
        {button('history', 'History')}
      </p>
      <Refusal problem={problem} />
      {open === 'change' && <BlockForm fleet={[]} block={block} zone={zone} done={done} />}
      {open === 'remove' && (
        <span class="sure">
          <button class="quiet danger" onClick={() => void remove()}>
            Give the time back
          </button>
          <button class="quiet" onClick={() => setOpen(null)}>
            Keep it
          </button>
        </span>
      )}
      {open === 'history' && <History booking={block} zone={zone} />}
    </li>
  );
}
