import { useEffect, useId, useState } from 'preact/hooks';
import { ANSWER_WORD } from '../../../rules/explain/words.js';
import { Ways } from '../answer/ways.js';
import { call } from '../api/client.js';
import type { Decision, Me } from '../api/types.js';
import { useLive } from '../live/live.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { Said } from '../parts/said.js';
import { momentIn, spanIn } from '../parts/time.js';
import './standing.css';

type Answer = Decision['answer'];

interface StandingAnswer {
  bookingId: string;
  registration: string;
  memberId: string;
  memberName: string;
  departs: string;
  arrives: string;
  bookedAt: Answer;
  now: Answer;
  because: { rule: string; title: string; says: string }[];
  judgedAt: string;
  caution: string;
}

interface Change {
  at: string;
  before: Answer;
  after: Answer;
  causes: string[];
}

/** Booked flights that are answered otherwise than when they were booked: one's own, or everybody's. Nothing while there are none. */
export function StandingAnswers({ me, everybody = false }: { me: Me; everybody?: boolean }) {
  const [all, setAll] = useState<StandingAnswer[]>([]);
  const [problem, setProblem] = useState<string | null>(null);
  const id = useId();
  const read = () =>
    attempt(setProblem, async () => {
      const whose = everybody ? 'everybody=true' : '';
      const page = await call<{ items: StandingAnswer[] }>(
        'GET',
        `/standing-answers?changed=true&limit=100&${whose}`,
      );
      setAll([...page.items].sort((a, b) => (a.departs < b.departs ? -1 : 1)));
    });
  useEffect(() => void read(), [me.memberId, everybody]);
  useLive([everybody ? 'standing' : 'flights'], () => void read());
  if (all.length === 0) return <Refusal problem={problem} />;
  return (
    <section class="standing" aria-labelledby={id}>
      <h2 id={id}>
        {all.length === 1 ? 'A booked flight is' : `${all.length} booked flights are`} answered otherwise now
      </h2>
      <Refusal problem={problem} />
      {all.map((one) => (
        <One key={one.bookingId} of={one} zone={me.club.zone} named={one.memberId !== me.memberId} />
      ))}
      <p class="caution">{all[0]!.caution}</p>
    </section>
  );
}

function One({ of, zone, named }: { of: StandingAnswer; zone: string; named: boolean }) {
  const [changes, setChanges] = useState<Change[] | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const look = () =>
    attempt(setProblem, async () =>
      setChanges((await call<{ changes: Change[] }>('GET', `/standing-answers/${of.bookingId}`)).changes),
    );
  return (
    <article data-standing={of.registration}>
      <h3>
        {of.registration}, {spanIn(zone, of.departs, of.arrives)}
        {named && `, ${of.memberName}`}
      </h3>
      <p>
        Booked as <q>{ANSWER_WORD[of.bookedAt]}</q>, now <strong>{ANSWER_WORD[of.now]}</strong>.
      </p>
      {of.because.length > 0 && (
        <ul>
          {of.because.map(({ rule, title, says }) => (
            <li key={rule}>
              <strong>{title}:</strong> <Said text={says} zone={zone} />
            </li>
          ))}
        </ul>
      )}
      <Ways
        decision={{ id: of.bookingId, answer: of.now, aircraft: { registration: of.registration } }}
        zone={zone}
        at={`/standing-answers/${of.bookingId}/ways`}
      />
      <Refusal problem={problem} />
      {changes === null ? (
        <button class="quiet" onClick={() => void look()}>
          What changed it?
        </button>
      ) : (
        <ul class="changes">
          {changes.map((change) => (
            <li key={change.at}>
              {momentIn(zone, change.at)}: {ANSWER_WORD[change.before]} → {ANSWER_WORD[change.after]}
              {change.causes.length > 0 && `, after a change of ${change.causes.join(', ')}`}
            </li>
          ))}
        </ul>
      )}
    </article>
  );
}
