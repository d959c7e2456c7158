import { useEffect, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { all } from '../session/session.js';
import { QuestionForm } from './question-form.js';
import type { BankQuestion } from './types.js';
import { TOPIC } from './words.js';

const STATES = { draft: 'draft', published: 'drawn', retired: 'retired' };

/** The club's own questions for one checkout, with their answers. */
export function QuestionBank({ requirementId, of }: { requirementId: string; of: string }) {
  const [list, setList] = useState<BankQuestion[] | null>(null);
  const [writing, setWriting] = useState<BankQuestion | 'new' | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const at = `/checkout-requirements/${requirementId}/questions`;
  const reload = () => attempt(setProblem, async () => setList(await all(at)));
  useEffect(() => void reload(), []);
  const step = (method: string, one: BankQuestion, body?: unknown) =>
    attempt(setProblem, async () => {
      await call(method, `/checkout-questions/${one.id}`, body, { 'If-Match': `"${one.rowVersion}"` });
      await reload();
    });
  return (
    <div class="bank" role="group" aria-label={`Questions of ${of}`}>
      <p class="hint">
        Written out of the flight manual of your own aircraft. A published question is never changed: retire
        it and write another.
      </p>
      <Refusal problem={problem} />
      {list?.length === 0 && <p class="hint">No questions yet.</p>}
      <ol>
        {list?.map((one) => (
          <li key={one.id}>
            <strong>{one.text}</strong>
            <small>
              {TOPIC[one.topic]}, {STATES[one.state]}
            </small>
            <Answer of={one} />
            <div class="acts">
              {one.state === 'draft' && (
                <>
                  <button class="quiet" onClick={() => void step('PATCH', one, { state: 'published' })}>
                    Publish
                    <span class="sr"> “{one.text}”</span>
                  </button>
                  <button class="quiet" onClick={() => setWriting(one)}>
                    Change
                    <span class="sr"> “{one.text}”</span>
                  </button>
                  <button class="quiet danger" onClick={() => void step('DELETE', one)}>
                    Delete
                    <span class="sr"> “{one.text}”</span>
                  </button>
                </>
              )}
              {one.state === 'published' && (
                <button class="quiet" onClick={() => void step('PATCH', one, { state: 'retired' })}>
                  Retire
                  <span class="sr"> “{one.text}”</span>
                </button>
              )}
            </div>
          </li>
        ))}
      </ol>
      {writing === null ? (
        <button class="quiet" onClick={() => setWriting('new')}>
          Write a question
        </button>
      ) : (
        <QuestionForm
          key={writing === 'new' ? 'new' : writing.id}
          from={writing === 'new' ? null : writing}
          send={async (body) => {
            if (writing === 'new') await call('POST', at, body);
            else
              await call('PATCH', `/checkout-questions/${writing.id}`, body, {
                'If-Match': `"${writing.rowVersion}"`,
              });
            setWriting(null);
            await reload();
          }}
          back={() => setWriting(null)}
        />
      )}
    </div>
  );
}

function Answer({ of }: { of: BankQuestion }) {
  if (of.kind === 'number')
    return (
      <p>
        {of.rightValue}
        {of.unit && ` ${of.unit}`}
        {of.tolerance ? `, give or take ${of.tolerance}` : ''}
        {of.reference && ` (${of.reference})`}
      </p>
    );
  return (
    <ul>
      {of.choices.map(({ text, right }) => (
        <li key={text}>
          {text}
          {right && <b> (right)</b>}
        </li>
      ))}
      {of.reference && <li class="hint">{of.reference}</li>}
    </ul>
  );
}
