import { useEffect, useRef, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Booking, Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Choice } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import { overrideOf, SetAside } from '../parts/set-aside.js';
import { now, spanIn } from '../parts/time.js';
import { Working } from '../parts/working.js';
import { all, names } from '../session/session.js';
import { ChangeForm } from './change-form.js';
import './flights.css';

/** What officers do with flights of others: accept a hand-over for somebody, and change a flight, setting club rules aside anew. */
export function SeeToPage({ me }: { me: Me }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const [flights, setFlights] = useState<Booking[] | null>(null);
  const [whose, setWhose] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const read = async () => {
    await attempt(setProblem, async () => {
      const found = await all<Booking>(`/bookings?from=${encodeURIComponent(now())}`);
      setFlights(
        found
          .filter(({ kind, status }) => kind === 'flight' && status === 'booked')
          .sort((a, b) => (a.departs < b.departs ? -1 : 1)),
      );
    });
  };
  useEffect(() => {
    heading.current?.focus();
    void read();
  }, []);
  const offered = (flights ?? []).filter(({ handOver }) => handOver !== null);
  const theirs = (flights ?? []).filter(({ memberId }) => memberId === whose);
  return (
    <main class="page see-to">
      <h2 ref={heading} tabIndex={-1}>
        Flights of others
      </h2>
      <Refusal problem={problem} />
      {flights === null && problem === null && <Working what="Reading booked flights" />}
      {flights && (
        <>
          <section class="flights" aria-labelledby="handed">
            <h3 id="handed">Offered to somebody, not taken yet</h3>
            {offered.length === 0 && <p class="hint">No flight is offered to anybody.</p>}
            <ul>
              {offered.map((one) => (
                <Offered key={one.id} booking={one} zone={me.club.zone} done={read} />
              ))}
            </ul>
          </section>
          <section class="flights" aria-labelledby="changed">
            <h3 id="changed">Change a member’s flight</h3>
            <p class="hint">
              It is judged anew. What was set aside for it counts for the flight as it was: a change that
              still needs it needs it again, with a reason.
            </p>
            <Choice
              label="Whose"
              value={whose}
              set={setWhose}
              of={[['', 'choose'], ...names.value.map(({ id, name }) => [id, name] as const)]}
            />
            {whose !== '' && theirs.length === 0 && <p class="hint">Nothing booked.</p>}
            <ul>
              {theirs.map((one) => (
                <Theirs key={`${one.id} ${one.rowVersion}`} booking={one} me={me} done={read} />
              ))}
            </ul>
          </section>
        </>
      )}
    </main>
  );
}

function Offered({ booking, zone, done }: { booking: Booking; zone: string; done: () => Promise<void> }) {
  const [reason, setReason] = useState('');
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const { id, registration, memberName, rowVersion } = booking;
  const { toName, id: offerId } = booking.handOver!;
  const accept = async () => {
    setBusy(true);
    const went = await attempt(setProblem, () =>
      call('POST', `/bookings/${id}/hand-over/accept`, overrideOf(reason), {
        'If-Match': `"${rowVersion}"`,
        'Idempotency-Key': `accept-${offerId}-${now()}`,
      }),
    );
    setBusy(false);
    if (went) await done();
  };
  return (
    <li class="flight" data-offered={registration}>
      <strong>{registration}</strong> {spanIn(zone, booking.departs, booking.arrives)}: {memberName} offers it
      to {toName}.
      <form
        class="act"
        onSubmit={(event) => {
          event.preventDefault();
          void accept();
        }}
      >
        <SetAside value={reason} set={setReason} />
        <Refusal problem={problem} />
        <button class="main" disabled={busy}>
          {busy ? 'Asking…' : `Take it over for ${toName}`}
        </button>
        <p class="hint">It is judged for {toName}; without a yes nothing changes.</p>
      </form>
    </li>
  );
}

function Theirs({ booking, me, done }: { booking: Booking; me: Me; done: () => Promise<void> }) {
  const [open, setOpen] = useState(false);
  const span = spanIn(me.club.zone, booking.departs, booking.arrives);
  return (
    <li class="flight" data-booking={booking.registration}>
      <strong>{booking.registration}</strong> {span}
      <p class="acts">
        <button
          class="quiet"
          aria-expanded={open}
          aria-label={`Change ${booking.registration} ${span}`}
          onClick={() => setOpen(!open)}
        >
          Change
        </button>
      </p>
      {open && <ChangeForm booking={booking} me={me} done={done} />}
    </li>
  );
}
