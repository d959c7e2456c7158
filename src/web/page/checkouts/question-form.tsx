import { useState } from 'preact/hooks';
import { attempt } from '../parts/attempt.js';
import { Choice, FigureInput, figureOf, TextInput, Tick, typed } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import type { BankQuestion, Topic } from './types.js';
import { TOPIC } from './words.js';

const KINDS = [
  ['single', 'One choice is right'],
  ['multiple', 'Several choices are right'],
  ['number', 'A number'],
] as const;

/** A question as it is written. */
export function QuestionForm({
  from,
  send,
  back,
}: {
  from: BankQuestion | null;
  send: (body: Record<string, unknown>) => Promise<void>;
  back: () => void;
}) {
  const [topic, setTopic] = useState<Topic>(from?.topic ?? 'limits');
  const [kind, setKind] = useState<BankQuestion['kind']>(from?.kind ?? 'single');
  const [text, setText] = useState(from?.text ?? '');
  const [choices, setChoices] = useState(
    from && from.choices.length > 0
      ? from.choices
      : [0, 1, 2].map((index) => ({ text: '', right: index === 0 })),
  );
  const [right, setRight] = useState(typed(from?.rightValue));
  const [tolerance, setTolerance] = useState(typed(from?.tolerance));
  const [unit, setUnit] = useState(from?.unit ?? '');
  const [reference, setReference] = useState(from?.reference ?? '');
  const [problem, setProblem] = useState<string | null>(null);
  const change = (index: number, fields: Partial<(typeof choices)[number]>) =>
    setChoices(
      choices.map((one, at) => {
        if (at === index) return { ...one, ...fields };
        return kind === 'single' && fields.right ? { ...one, right: false } : one;
      }),
    );
  const number = kind === 'number';
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        void attempt(setProblem, () =>
          send({
            ...{ topic, kind, text, reference },
            choices: number ? [] : choices.filter((one) => one.text.trim() !== ''),
            rightValue: number ? figureOf(right) : null,
            tolerance: number ? (figureOf(tolerance) ?? 0) : null,
            unit: number && unit.trim() !== '' ? unit : null,
          }),
        );
      }}
    >
      <div class="row">
        <Choice label="Topic" value={topic} set={setTopic} of={Object.entries(TOPIC) as [Topic, string][]} />
        <Choice label="Kind of answer" value={kind} set={setKind} of={KINDS} />
      </div>
      <TextInput label="Question" value={text} set={setText} required max={1000} />
      {number ? (
        <div class="row">
          <FigureInput label="Right number" value={right} set={setRight} required />
          <FigureInput label="Give or take" value={tolerance} set={setTolerance} min={0} />
          <TextInput label="Unit, if any" value={unit} set={setUnit} max={40} />
        </div>
      ) : (
        <fieldset>
          <legend>Choices; those left empty are not kept</legend>
          {choices.map((one, index) => (
            <div class="choice" key={index}>
              <TextInput
                label={`Choice ${index + 1}`}
                value={one.text}
                set={(value) => change(index, { text: value })}
                max={300}
              />
              <Tick value={one.right} set={(on) => change(index, { right: on })}>
                Right<span class="sr">: choice {index + 1}</span>
              </Tick>
            </div>
          ))}
          {choices.length < 8 && (
            <button
              type="button"
              class="quiet"
              onClick={() => setChoices([...choices, { text: '', right: false }])}
            >
              Another choice
            </button>
          )}
        </fieldset>
      )}
      <TextInput label="Where the answer is written" value={reference} set={setReference} />
      <Refusal problem={problem} />
      <div class="acts">
        <button class="main">Keep the question</button>
        <button type="button" class="quiet" onClick={back}>
          Back
        </button>
      </div>
    </form>
  );
}
