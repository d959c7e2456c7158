import { useEffect, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { TextInput } from '../parts/fields.js';
import { Link } from '../parts/link.js';
import { Refusal } from '../parts/refusal.js';
import { momentIn, now, spanIn } from '../parts/time.js';
import { all } from '../session/session.js';
import { DispatchForm } from './dispatch-form.js';
import { DueBackForm } from './due-back.js';
import { Flown } from './flown.js';
import { answered, kept, keepReturn, sendKept } from './kept-returns.js';
import { FlightsOutList } from './out-list.js';
import { ReturnForm } from './return-form.js';
import type { ReturnTexts } from './return-texts.js';
import { Waiting } from './waiting.js';
import type { Flight } from './types.js';
import './flights.css';

/** A flight at the aircraft, or with none open the flights that are out. */
export function FlightsPage({ me, open }: { me: Me; open: string | null }) {
  return open ? <OneFlight me={me} id={open} /> : <FlightsOutList me={me} />;
}

function OneFlight({ me, id }: { me: Me; id: string }) {
  const { zone } = me.club;
  const [flight, setFlight] = useState<Flight | null>(null);
  const [aircraft, setAircraft] = useState<{ id: string; registration: string }[]>([]);
  const [correcting, setCorrecting] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const mine = kept.value.find((one) => one.bookingId === id && one.memberId === me.memberId);
  const waiting = mine?.problem === null ? mine : undefined;
  const answer = answered.value[id];
  useEffect(() => {
    sendKept(me.memberId);
    void attempt(setProblem, async () => {
      setFlight(await call<Flight>('GET', `/flights/${id}`));
      setAircraft(await all<{ id: string; registration: string }>('/aircraft?'));
    });
  }, [id]);
  useEffect(() => {
    if (answer) {
      setFlight(answer);
      setCorrecting(false);
    }
  }, [answer]);

  const send = (part: string) => (body: object, texts: ReturnTexts) =>
    keepReturn({
      ...{ bookingId: id, memberId: me.memberId, registration: flight!.booking.registration },
      ...{ path: `/flights/${id}/${part}`, body, texts },
    });
  const swapped = (out: Flight) => {
    setFlight(out);
    // With another aircraft it is another booking.
    if (out.booking.id !== id) history.replaceState(null, '', `/flights#${out.booking.id}`);
  };
  // While a return is on its way its form stays as it was filled in, out of sight.
  const form = { refused: mine?.problem ?? null, begun: (mine?.texts as ReturnTexts | undefined) ?? null };
  const head = flight?.booking;
  return (
    <main class="page flight-page">
      <h1>{head ? head.registration : 'Flight'}</h1>
      {head && (
        <p class="lead">
          {spanIn(zone, head.departs, head.arrives)}, {head.people.map(({ name }) => name).join(' with ')}
        </p>
      )}
      <Refusal problem={problem} />
      {waiting && <Waiting of={waiting} />}
      {flight === null && !problem && !waiting && <p class="hint">Reading…</p>}
      {flight && head!.status === 'booked' && (
        <DispatchForm key={head!.id} {...{ me, flight, aircraft, out: swapped }} />
      )}
      {flight && head!.status === 'dispatched' && (
        <div hidden={waiting !== undefined}>
          <Out flight={flight} zone={zone} />
          <DueBackForm flight={flight} zone={zone} done={setFlight} />
          <ReturnForm {...{ me, flight, ...form, send: send('return') }} />
          <NotFlown flight={flight} done={setFlight} />
        </div>
      )}
      {flight?.return && <Flown flight={flight} zone={zone} />}
      {flight?.return && mayCorrect(me, flight) && (
        <div hidden={waiting !== undefined}>
          {correcting || mine ? (
            <ReturnForm {...{ me, flight, ...form, send: send('return/corrections') }} />
          ) : (
            <button class="quiet" onClick={() => setCorrecting(true)}>
              Something in it is wrong
            </button>
          )}
        </div>
      )}
      {head?.status === 'cancelled' && <p>It was cancelled.</p>}
      {head?.status === 'returned' && !flight!.return && (
        <p>It is back; how, was not kept. Log and meters tell.</p>
      )}
      <p>
        <Link to="/">My flights</Link>
      </p>
    </main>
  );
}

const mayCorrect = (me: Me, { booking }: Flight): boolean =>
  booking.memberId === me.memberId ||
  me.roles.some((role) => ['maintenance-coordinator', 'safety-officer', 'administrator'].includes(role));

/** Out since when, and due back. */
function Out({ flight, zone }: { flight: Flight; zone: string }) {
  const { booking, dispatch, caution } = flight;
  const dueBackAt = flight.dueBackAt ?? booking.arrives;
  const late = dueBackAt < now();
  return (
    <div class={late ? 'out late' : 'out'} role="status">
      <p>
        Out since {momentIn(zone, dispatch!.dispatchedAt)}, due back{' '}
        <strong>{momentIn(zone, dueBackAt)}</strong>
        {late && '. That has passed: bring it back here, say below when it will be back, or call the club'}.
      </p>
      <p class="small">{caution}</p>
    </div>
  );
}

function NotFlown({ flight, done }: { flight: Flight; done(flight: Flight): void }) {
  const [reason, setReason] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  return (
    <details>
      <summary>Not flown after all?</summary>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void attempt(setProblem, async () =>
            done(await call<Flight>('POST', `/flights/${flight.booking.id}/dispatch/take-back`, { reason })),
          );
        }}
      >
        <TextInput label="Why" value={reason} set={setReason} max={500} required />
        <Refusal problem={problem} />
        <button class="quiet">Take the dispatch back</button>
      </form>
    </details>
  );
}
