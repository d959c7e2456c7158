import { Said } from '../parts/said.js';
import type { Guide, GuideStep } from './types.js';

export type Answers = Record<string, boolean | string | null>;

interface Props {
  guide: Guide;
  answers: Answers;
  deadlineOn: string;
  answer(field: string, value: boolean | string | null): void;
  setDeadline(date: string): void;
}

const TEXTS = new Set(['noHazardDeterminedBy', 'equipmentListItem']);

/** The published steps in their order: what the record knows is told, what a person must answer is asked. */
export function GuideForm({ guide, answers, deadlineOn, answer, setDeadline }: Props) {
  return (
    <section class="guide" aria-label="Steps of the deferral">
      <p class={guide.outcome === 'no-deferral' ? 'problem' : 'hint'}>{guide.says}</p>
      <ol>
        {guide.steps.map((step) => (
          <li key={step.id} data-step={step.id} class={step.stops ? 'stops' : ''}>
            <Step step={step} given={step.field === null ? null : answers[step.field]} answer={answer} />
          </li>
        ))}
      </ol>
      {guide.outcome !== 'no-deferral' && (
        <label>
          Last day it may stay deferred
          <input type="date" value={deadlineOn} onInput={(event) => setDeadline(event.currentTarget.value)} />
        </label>
      )}
      <p class="hint">{guide.source}</p>
      <p class="caution">{guide.caution}</p>
    </section>
  );
}

const ANSWERED = { yes: 'Yes', no: 'No', open: 'Not known' };

function Step({
  step,
  given,
  answer,
}: {
  step: GuideStep;
  given: boolean | string | null | undefined;
  answer: Props['answer'];
}) {
  const { field } = step;
  const help = `help-${step.id}`;
  const says = (
    <p class="hint" id={help}>
      {step.paragraph}. <Said text={step.says} zone="UTC" />
    </p>
  );
  if (step.by !== 'person' || field === null)
    return (
      <>
        <p>
          {step.question} <strong>{ANSWERED[step.answer]}</strong>{' '}
          <small>{step.by === 'rules' ? 'as the rules say' : 'as on record'}</small>
        </p>
        {says}
      </>
    );
  if (TEXTS.has(field))
    return (
      <>
        <label>
          {step.question}
          <input
            maxLength={200}
            aria-describedby={help}
            value={(given as string | null) ?? ''}
            onInput={(event) =>
              answer(field, event.currentTarget.value.trim() === '' ? null : event.currentTarget.value)
            }
          />
        </label>
        {says}
      </>
    );
  return (
    <fieldset aria-describedby={help}>
      <legend>{step.question}</legend>
      <div class="choices">
        {[true, false, null].map((value) => (
          <label key={String(value)} class="tick">
            <input
              type="radio"
              name={`answer-${step.id}`}
              checked={(given ?? null) === value}
              onChange={() => answer(field, value)}
            />
            {value === null ? 'Not known yet' : value ? 'Yes' : 'No'}
          </label>
        ))}
      </div>
      {says}
      {given === true && field.startsWith('requiredBy') && (
        <p class="problem" role="alert">
          Then it is repaired and not deferred. Ground the aircraft until it is fixed.
        </p>
      )}
    </fieldset>
  );
}
