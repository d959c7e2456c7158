import { useEffect, useId, useState } from 'preact/hooks';
import { ANSWER_WORD } from '../../../rules/explain/words.js';
import { call } from '../api/client.js';
import type { Answers, Me } from '../api/types.js';
import { Ways } from '../answer/ways.js';
import { refreshFlights } from './my-flights.js';
import { useLive } from '../live/live.js';
import { attempt } from '../parts/attempt.js';
import { Said } from '../parts/said.js';
import { Refusal } from '../parts/refusal.js';
import { momentIn, spanIn } from '../parts/time.js';

interface Displacement {
  id: string;
  aircraftId: string;
  registration: string;
  departs: string;
  arrives: string;
  because: string;
  backAt: string | null;
  request: object;
}

/** Flights of the member that had to make room, with ways on. Nothing is shown while there are none. */
export function Displaced({ me }: { me: Me }) {
  const [all, setAll] = useState<Displacement[]>([]);
  const [problem, setProblem] = useState<string | null>(null);
  // Also on another page than the first one, which stays.
  const title = useId();
  const read = () =>
    attempt(setProblem, async () =>
      setAll((await call<{ items: Displacement[] }>('GET', '/displacements')).items),
    );
  useEffect(() => {
    void read();
  }, [me.memberId]);
  useLive(['flights'], () => void read());
  if (all.length === 0) return <Refusal problem={problem} />;
  return (
    <section class="displaced" aria-labelledby={title}>
      <h2 id={title}>
        {all.length === 1
          ? 'A flight of yours had to make room'
          : `${all.length} flights of yours had to make room`}
      </h2>
      <Refusal problem={problem} />
      {all.map((one) => (
        <One key={one.id} of={one} zone={me.club.zone} memberId={me.memberId} away={() => void read()} />
      ))}
    </section>
  );
}

function One({
  of,
  zone,
  memberId,
  away,
}: {
  of: Displacement;
  zone: string;
  memberId: string;
  away: () => void;
}) {
  const [answers, setAnswers] = useState<Answers | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const look = async () => {
    setBusy(true);
    await attempt(setProblem, async () =>
      setAnswers(await call<Answers>('POST', '/decisions', { ...of.request, aircraftIds: [of.aircraftId] })),
    );
    setBusy(false);
  };
  const putAway = () =>
    attempt(setProblem, async () => {
      await call('POST', `/displacements/${of.id}/seen`);
      away();
    });
  const decision = answers?.decisions[0];
  const bookable = decision?.answer === 'yes' || decision?.answer === 'yes-with-conditions';
  const book = async () => {
    setBusy(true);
    const booked = await attempt(setProblem, async () => {
      const body = { ...of.request, aircraftId: of.aircraftId };
      await call('POST', '/bookings', body, { 'Idempotency-Key': decision!.id });
    });
    setBusy(false);
    if (!booked) return;
    await refreshFlights(memberId);
    await putAway();
  };
  return (
    <article data-displaced={of.registration}>
      <p>
        <strong>{of.registration}</strong> {spanIn(zone, of.departs, of.arrives)} was cancelled: the aircraft
        is taken for “{of.because}”{of.backAt !== null && `, until ${momentIn(zone, of.backAt)}`}.
      </p>
      <Refusal problem={problem} />
      {decision && (
        <p>
          <strong>{ANSWER_WORD[decision.answer]}</strong>. <Said text={decision.says} zone={zone} />
        </p>
      )}
      {decision && decision.conditions.length > 0 && (
        <ul class="conditions">
          {decision.conditions.map((says) => (
            <li key={says}>
              <Said text={says} zone={zone} />
            </li>
          ))}
        </ul>
      )}
      {decision && <p class="caution">{decision.caution}</p>}
      {bookable && (
        <button class="main" disabled={busy} onClick={() => void book()}>
          Book it again
        </button>
      )}
      {decision && <Ways decision={decision} zone={zone} />}
      <p class="sure">
        {!decision && (
          <button class="main" disabled={busy} onClick={() => void look()}>
            {busy ? 'Asking…' : 'Ask again'}
          </button>
        )}
        <button class="quiet" onClick={() => void putAway()}>
          I have seen it
        </button>
      </p>
    </article>
  );
}
