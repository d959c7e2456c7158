import { useEffect, useRef, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Link } from '../parts/link.js';
import { Refusal } from '../parts/refusal.js';
import { momentIn } from '../parts/time.js';
import { isOfficer, looksAfterOthers } from '../session/roles.js';
import { all, names } from '../session/session.js';
import { AskedPage } from './asked-page.js';
import { CheckoutHead } from './checkout-head.js';
import './checkouts.css';
import { QuizPage } from './quiz-page.js';
import { SignedItems } from './signed-items.js';
import type { Attempt, MemberProgress, Progress } from './types.js';
import { keyOf, stands } from './words.js';

/** The checkouts page; behind the `#` a quiz (`quiz.ID`, `attempt.ID`), or what the club asks (`asked`). */
export function CheckoutsPage({ me, part }: { me: Me; part: string }) {
  const officer = isOfficer(me.roles);
  if (part === 'asked' && officer) return <AskedPage me={me} />;
  if (part.startsWith('quiz.') || part.startsWith('attempt.'))
    return <QuizPage key={part} part={part} zone={me.club.zone} />;
  return <OwnPage me={me} officer={officer} />;
}

function OwnPage({ me, officer }: { me: Me; officer: boolean }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const [whose, setWhose] = useState(me.memberId);
  const [progress, setProgress] = useState<MemberProgress | null>(null);
  const [quizzes, setQuizzes] = useState<Attempt[]>([]);
  const [problem, setProblem] = useState<string | null>(null);
  const zone = me.club.zone;
  useEffect(() => heading.current?.focus(), []);
  useEffect(() => {
    setProgress(null);
    void attempt(setProblem, async () => {
      setProgress(await call('GET', `/members/${whose}/checkout-progress`));
      setQuizzes(await all(`/members/${whose}/quiz-attempts`));
    });
  }, [whose]);
  const own = whose === me.memberId;
  const entries = progress?.checkouts ?? [];
  const begun = entries.filter((one) => !stands(one) && (one.state !== 'not-begun' || one.difference));
  const standing = entries.filter(stands);
  const others = entries.filter((one) => one.state === 'not-begun' && !one.difference);
  const shown = (list: Progress[]) =>
    list.map((one) => <CheckoutBlock key={keyOf(one)} {...{ one, own, zone }} member={progress!.member} />);
  return (
    <main class="page checkouts">
      <h2 ref={heading} tabIndex={-1}>
        Checkouts
      </h2>
      {officer && (
        <p>
          <Link to="/checkouts#asked">What the club asks for, and its questions</Link>
        </p>
      )}
      {looksAfterOthers(me.roles) && (
        <label class="whose">
          Whose
          <select value={whose} onChange={(event) => setWhose(event.currentTarget.value)}>
            {names.value.map(({ id, name }) => (
              <option key={id} value={id}>
                {id === me.memberId ? `${name} (you)` : name}
              </option>
            ))}
          </select>
        </label>
      )}
      <Refusal problem={problem} />
      {progress === null && problem === null && <p class="hint">Reading…</p>}
      {progress && (
        <div class="two">
          <section aria-labelledby="to-do">
            <h3 id="to-do">Under way</h3>
            {begun.length === 0 && <p class="hint">Nothing is under way.</p>}
            {shown(begun)}
            {others.length > 0 && (
              <details>
                <summary>Not begun: {others.length}</summary>
                {shown(others)}
              </details>
            )}
          </section>
          <section aria-labelledby="standing">
            <h3 id="standing">Standing</h3>
            {standing.length === 0 && <p class="hint">No checkout stands.</p>}
            {shown(standing)}
            {quizzes.some(({ result }) => result) && (
              <details>
                <summary>Quizzes handed in</summary>
                <ul class="items">
                  {quizzes.map(
                    ({ id, title, result }) =>
                      result && (
                        <li key={id} class="item">
                          <Link to={`/checkouts#attempt.${id}`}>{title}</Link>
                          <small>
                            {momentIn(zone, result.handedInAt)}: {result.rightCount} of {result.askedCount}{' '}
                            right, {result.passed ? 'passed' : 'not passed'}
                          </small>
                        </li>
                      ),
                  )}
                </ul>
              </details>
            )}
          </section>
        </div>
      )}
      {progress && <p class="caution">{progress.caution}</p>}
    </main>
  );
}

function CheckoutBlock({
  one,
  own,
  zone,
  member,
}: {
  one: Progress;
  own: boolean;
  zone: string;
  member: MemberProgress['member'];
}) {
  const open = one.items.filter(({ state }) => state !== 'signed');
  const quiz = one.quiz?.state;
  return (
    <article>
      <CheckoutHead of={one} zone={zone} />
      {own && one.requirementId && one.state !== 'standing' && (quiz === 'to-do' || quiz === 'open') && (
        <Link class="button" to={`/checkouts#quiz.${one.requirementId}`}>
          {quiz === 'open' ? 'Go on with the quiz' : 'Take the quiz'}
          <span class="sr"> of {one.title}</span>
        </Link>
      )}
      {open.length > 0 && (
        <details open={one.state === 'in-progress'}>
          <summary>
            {headOf(one)}: {open.length === 1 ? '1 item' : `${open.length} items`}
          </summary>
          <ul class="items">
            {open.map((item) => (
              <li key={item.itemId} class={`item is-${item.state}`}>
                <strong>{item.title}</strong>
                {!item.required && <small>not required</small>}
                <span>{item.standard}</span>
                {item.state === 'not-yet' && item.mark && (
                  <small>
                    Not yet to standard, {item.mark.signedBy.name}: {item.mark.note}
                  </small>
                )}
              </li>
            ))}
          </ul>
        </details>
      )}
      <SignedItems {...{ one, member }} />
    </article>
  );
}

/** What the items that are not signed are: asked for, left to choice, or of the time after this one. */
function headOf(one: Progress): string {
  if (stands(one)) return 'Asked for the next time';
  return one.itemsLeft === 0 ? 'Not required' : 'To be shown';
}
