import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Booking, Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Choice } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import { names } from '../session/session.js';

/** Offers a flight to another member, or takes the offer back. */
export function HandOverForm({ booking, me, done }: { booking: Booking; me: Me; done: () => Promise<void> }) {
  const [toId, setToId] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const aboard = booking.people.map(({ memberId }) => memberId);
  const members = names.value.filter(({ id }) => id !== me.memberId && !aboard.includes(id));
  const at = `/bookings/${booking.id}/hand-over`;
  const offer = () =>
    attempt(setProblem, async () => {
      await call('POST', at, { toId }, { 'If-Match': `"${booking.rowVersion}"` });
      await done();
    });
  const withdraw = () =>
    attempt(setProblem, async () => {
      await call('DELETE', at);
      await done();
    });
  if (booking.handOver)
    return (
      <div class="act">
        <Refusal problem={problem} />
        <button class="quiet" onClick={() => void withdraw()}>
          Take the offer to {booking.handOver.toName} back
        </button>
      </div>
    );
  return (
    <form
      class="act"
      onSubmit={(event) => {
        event.preventDefault();
        void offer();
      }}
    >
      <Choice
        label="To"
        value={toId}
        set={setToId}
        of={[['', 'choose a member'], ...members.map(({ id, name }) => [id, name] as const)]}
      />
      <Refusal problem={problem} />
      <button class="main" disabled={toId === ''}>
        Offer it
      </button>
      <p class="hint">It stays yours until it is taken, and is judged for whoever takes it.</p>
    </form>
  );
}
