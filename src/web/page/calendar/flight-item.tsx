import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Booking, Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Link } from '../parts/link.js';
import { Refusal } from '../parts/refusal.js';
import { momentIn, now, spanIn } from '../parts/time.js';
import { ChangeForm } from './change-form.js';
import { GiveBack } from './give-back.js';
import { HandOverForm } from './hand-over-form.js';
import { History } from './history.js';

type Open = 'change' | 'hand-over' | 'give-back' | 'history';

/** One booking of the member's, with what can be done to it; one thing at a time is open. */
export function FlightItem({
  booking,
  me,
  refresh,
}: {
  booking: Booking;
  me: Me;
  refresh: () => Promise<void>;
}) {
  const [open, setOpen] = useState<Open | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const others = booking.people
    .filter((person) => person.memberId !== me.memberId)
    .map((person) => person.name);
  const span = spanIn(me.club.zone, booking.departs, booking.arrives);
  const which = `${booking.registration} ${span}`;
  const own = booking.memberId === me.memberId;
  const teaches = booking.people.some(
    ({ memberId, role }) => memberId === me.memberId && role === 'instructor',
  );
  const held = booking.kind === 'hold';
  const out = booking.status === 'dispatched';
  const done = async () => {
    setOpen(null);
    await refresh();
  };
  const confirm = () =>
    attempt(setProblem, async () => {
      await call(
        'POST',
        `/bookings/${booking.id}/confirm`,
        {},
        {
          'If-Match': `"${booking.rowVersion}"`,
          'Idempotency-Key': `confirm-${booking.id}-${booking.rowVersion}-${now()}`,
        },
      );
      await done();
    });
  const button = (what: Open, word: string) => (
    <button
      class="quiet"
      aria-expanded={open === what}
      aria-label={`${word} ${which}`}
      onClick={() => setOpen(open === what ? null : what)}
    >
      {word}
    </button>
  );
  return (
    <li class="flight" data-booking={booking.registration}>
      <strong>{booking.registration}</strong> {span}
      {others.length > 0 && <span class="with"> with {others.join(', ')}</span>}
      {booking.seriesId !== null && <span class="tag">one of a series</span>}
      {held && (
        <p class="hint">
          Held for a checkout until {momentIn(me.club.zone, booking.holdUntil!)}; not judged yet, and nothing
          to fly on.
        </p>
      )}
      {booking.handOver && (
        <p class="hint">Offered to {booking.handOver.toName}. It stays booked until it is taken.</p>
      )}
      <Refusal problem={problem} />
      {!held && (out || isNear(booking.departs)) && (
        <p class="do">
          <Link class="go" to={`/flights#${booking.id}`}>
            {out ? 'Return' : 'Dispatch'}
          </Link>
        </p>
      )}
      <p class="acts">
        {held && (
          <button class="quiet" aria-label={`Confirm ${which}`} onClick={() => void confirm()}>
            Confirm
          </button>
        )}
        {!held && !out && (own || teaches) && button('change', 'Change')}
        {!held && !out && own && button('hand-over', 'Hand over')}
        {!out && button('give-back', 'Cancel')}
        {button('history', 'History')}
      </p>
      {open === 'change' && <ChangeForm booking={booking} me={me} done={done} />}
      {open === 'hand-over' && <HandOverForm booking={booking} me={me} done={done} />}
      {open === 'give-back' && <GiveBack booking={booking} done={done} keep={() => setOpen(null)} />}
      {open === 'history' && <History booking={booking} zone={me.club.zone} />}
    </li>
  );
}

const DAY_MS = 86_400_000;

/** Near enough to look at what is to be looked at before it. */
const isNear = (departs: string): boolean => Date.parse(departs) - Date.parse(now()) < DAY_MS;
