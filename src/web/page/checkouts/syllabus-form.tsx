import { useState } from 'preact/hooks';
import { attempt } from '../parts/attempt.js';
import { Choice, FigureInput, figureOf, TextInput, Tick, typed } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import { MANOEUVRES, titleOf } from '../practice/words.js';
import type { Model, Requirement, Version } from './types.js';

interface ItemDraft {
  key: number;
  title: string;
  standard: string;
  manoeuvre: string;
  required: boolean;
}

const NO_MANOEUVRE = ['', 'none of them'] as const;

/** What a checkout asks for, as it is written. */
export function SyllabusForm({
  from,
  others,
  models,
  save,
  send,
  back,
}: {
  from: Version | null;
  others: Requirement[];
  models: Model[];
  save: string;
  send: (syllabus: Record<string, unknown>) => Promise<void>;
  back: () => void;
}) {
  const [title, setTitle] = useState(from?.title ?? '');
  const [goodDays, setGoodDays] = useState(typed(from?.goodDays));
  const [first, setFirst] = useState(from?.prerequisites.map(({ requirementId }) => requirementId) ?? []);
  const [alike, setAlike] = useState(from?.alsoModels.map(({ id }) => id) ?? []);
  const [quiz, setQuiz] = useState(from?.quiz !== null && from?.quiz !== undefined);
  const [questions, setQuestions] = useState(typed(from?.quiz?.questions ?? 10));
  const [percent, setPercent] = useState(typed(from?.quiz?.passPercent ?? 80));
  const [items, setItems] = useState<ItemDraft[]>(() =>
    (from?.items ?? [{ title: '', standard: '' }]).map((one, key) => ({
      key,
      title: one.title,
      standard: one.standard,
      manoeuvre: ('manoeuvre' in one && one.manoeuvre) || '',
      required: !('required' in one) || one.required !== false,
    })),
  );
  const [problem, setProblem] = useState<string | null>(null);
  const change = (key: number, fields: Partial<ItemDraft>) =>
    setItems(items.map((one) => (one.key === key ? { ...one, ...fields } : one)));
  const up = (index: number) => {
    const moved = [...items];
    moved.splice(index - 1, 0, ...moved.splice(index, 1));
    setItems(moved);
  };
  const add = () =>
    setItems([
      ...items,
      {
        key: Math.max(0, ...items.map(({ key }) => key)) + 1,
        title: '',
        standard: '',
        manoeuvre: '',
        required: true,
      },
    ]);
  const among = (list: string[], id: string, on: boolean) =>
    on ? [...list, id] : list.filter((other) => other !== id);
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        void attempt(setProblem, () =>
          send({
            title,
            goodDays: figureOf(goodDays),
            prerequisiteIds: first,
            alsoModelIds: alike,
            quiz: quiz ? { questions: Number(questions), passPercent: Number(percent) } : null,
            items: items.map(({ key: _key, manoeuvre, ...rest }) => ({
              ...rest,
              manoeuvre: manoeuvre === '' ? null : manoeuvre,
            })),
          }),
        );
      }}
    >
      <div class="row">
        <TextInput label="Title" value={title} set={setTitle} required />
        <FigureInput
          label="Days it is good for; empty: no end"
          value={goodDays}
          set={setGoodDays}
          {...{ min: 1, max: 3660, step: '1' }}
        />
      </div>
      <Tick value={quiz} set={setQuiz}>
        A written quiz is passed first
      </Tick>
      {quiz && (
        <div class="row">
          <FigureInput
            label="Questions drawn"
            value={questions}
            set={setQuestions}
            {...{ min: 1, max: 100, step: '1' }}
            required
          />
          <FigureInput
            label="Of a hundred, to be right"
            value={percent}
            set={setPercent}
            {...{ min: 1, max: 100, step: '1' }}
            required
          />
        </div>
      )}
      {others.length > 0 && (
        <fieldset>
          <legend>Must stand first</legend>
          <div class="row">
            {others.map(({ id, inForce, draft, subject }) => (
              <Tick key={id} value={first.includes(id)} set={(on) => setFirst(among(first, id, on))}>
                {(inForce ?? draft)?.title ?? subject}
              </Tick>
            ))}
          </div>
        </fieldset>
      )}
      {models.length > 0 && (
        <fieldset>
          <legend>Like models for which it counts too, where the club’s policy lets it</legend>
          <div class="row">
            {models.map(({ id, makeModel }) => (
              <Tick key={id} value={alike.includes(id)} set={(on) => setAlike(among(alike, id, on))}>
                {makeModel}
              </Tick>
            ))}
          </div>
        </fieldset>
      )}
      {items.map((one, index) => (
        <fieldset key={one.key}>
          <legend>Item {index + 1}</legend>
          <div class="row">
            <TextInput
              label="What is shown"
              value={one.title}
              set={(value) => change(one.key, { title: value })}
              required
            />
            <Choice
              label="Manoeuvre of the practice records"
              value={one.manoeuvre}
              set={(value) => change(one.key, { manoeuvre: value })}
              of={[NO_MANOEUVRE, ...MANOEUVRES.map((name) => [name, titleOf(name)] as const)]}
            />
          </div>
          <TextInput
            label="To standard means"
            value={one.standard}
            set={(value) => change(one.key, { standard: value })}
            required
            max={1000}
          />
          <div class="acts">
            <Tick value={one.required} set={(on) => change(one.key, { required: on })}>
              Required
            </Tick>
            {index > 0 && (
              <button
                type="button"
                class="quiet"
                aria-label={`Up: item ${index + 1}`}
                onClick={() => up(index)}
              >
                Up
              </button>
            )}
            {items.length > 1 && (
              <button
                type="button"
                class="quiet"
                aria-label={`Leave out item ${index + 1}`}
                onClick={() => setItems(items.filter(({ key }) => key !== one.key))}
              >
                Leave out
              </button>
            )}
          </div>
        </fieldset>
      ))}
      <button type="button" class="quiet" onClick={add}>
        Another item
      </button>
      <Refusal problem={problem} />
      <div class="acts">
        <button class="main">{save}</button>
        <button type="button" class="quiet" onClick={back}>
          Back
        </button>
      </div>
    </form>
  );
}
