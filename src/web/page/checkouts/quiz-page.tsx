import { useEffect, useRef, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Link } from '../parts/link.js';
import { Refusal } from '../parts/refusal.js';
import { momentIn } from '../parts/time.js';
import { QuizQuestion, type Given } from './quiz-question.js';
import type { WholeAttempt } from './types.js';

const isGiven = ({ chosen, value }: Given): boolean => chosen.length > 0 || value.trim() !== '';

/** Takes a quiz, or shows how one came out. Nothing about right answers is here before it is handed in. */
export function QuizPage({ part, zone }: { part: string; zone: string }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const [quiz, setQuiz] = useState<WholeAttempt | null>(null);
  const [given, setGiven] = useState<Record<string, Given>>({});
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const id = part.slice(part.indexOf('.') + 1);
  useEffect(() => {
    void attempt(setProblem, async () =>
      setQuiz(
        part.startsWith('quiz.')
          ? await call('POST', `/checkout-requirements/${id}/quiz`)
          : await call('GET', `/quiz-attempts/${id}`),
      ),
    );
  }, []);
  const result = quiz?.result ?? null;
  useEffect(() => heading.current?.focus(), [quiz?.id, result?.handedInAt]);
  const leftOut = quiz ? quiz.questions.filter((one) => !isGiven(given[one.id] ?? NONE)).length : 0;
  const handIn = async () => {
    setBusy(true);
    const answers = quiz!.questions.flatMap(({ id: questionId, kind }) => {
      const answer = given[questionId] ?? NONE;
      if (!isGiven(answer)) return [];
      return [
        kind === 'number'
          ? { questionId, value: Number(answer.value) }
          : { questionId, chosen: answer.chosen },
      ];
    });
    if (
      await attempt(setProblem, async () =>
        setQuiz(await call('POST', `/quiz-attempts/${quiz!.id}/answers`, { answers })),
      )
    )
      scrollTo(0, 0);
    setBusy(false);
  };
  return (
    <main class="page checkouts quiz">
      <p>
        <Link to="/checkouts">Back to checkouts</Link>
      </p>
      <h2 ref={heading} tabIndex={-1}>
        {quiz ? `Quiz: ${quiz.title}` : 'Quiz'}
      </h2>
      <Refusal problem={problem} />
      {!quiz && problem === null && <p class="hint">Drawing questions…</p>}
      {result && (
        <p class={`score ${result.passed ? 'good' : 'bad'}`}>
          <strong>{result.passed ? 'Passed' : 'Not passed'}</strong>: {result.rightCount} of{' '}
          {result.askedCount} right, {result.passPercent} of 100 needed. Handed in{' '}
          {momentIn(zone, result.handedInAt)}.
        </p>
      )}
      {quiz && (
        <form
          onSubmit={(event) => {
            event.preventDefault();
            void handIn();
          }}
        >
          {quiz.questions.map((question, index) => (
            <QuizQuestion
              key={question.id}
              {...{ question, number: index + 1 }}
              given={given[question.id] ?? NONE}
              give={(answer) => setGiven({ ...given, [question.id]: answer })}
            />
          ))}
          {!result && (
            <div class="hand-in">
              {leftOut > 0 && (
                <p class="hint">
                  {leftOut === 1 ? 'One question is' : `${leftOut} questions are`} not answered; what is left
                  out is wrong.
                </p>
              )}
              <button class="main" disabled={busy}>
                {leftOut > 0 ? `Hand in with ${leftOut} left out` : 'Hand in'}
              </button>
            </div>
          )}
        </form>
      )}
      {quiz && <p class="caution">{quiz.caution}</p>}
    </main>
  );
}

const NONE: Given = { chosen: [], value: '' };
