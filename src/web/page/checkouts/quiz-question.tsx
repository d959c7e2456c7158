import type { Question } from './types.js';
import { TOPIC } from './words.js';

/** An answer as it is being given. */
export interface Given {
  chosen: string[];
  value: string;
}

/** A question to be answered; handed in, with what was right and where it is written. */
export function QuizQuestion({
  question,
  number,
  given,
  give,
}: {
  question: Question;
  number: number;
  given: Given;
  give: (answer: Given) => void;
}) {
  const { kind, choices, scored, unit } = question;
  const pick = (letter: string, on: boolean) => {
    const others = kind === 'single' ? [] : given.chosen.filter((one) => one !== letter);
    give({ ...given, chosen: on ? [...others, letter].sort() : others });
  };
  return (
    <fieldset class={scored ? (scored.right ? 'good' : 'bad') : ''}>
      <legend>
        {number}. {question.text}
      </legend>
      <p class="hint">
        {TOPIC[question.topic]}
        {kind === 'multiple' && '; more than one may be right'}
        {scored && (
          <>
            : <strong>{scored.right ? 'right' : 'wrong'}</strong>
          </>
        )}
      </p>
      {kind === 'number' && !scored && (
        <label>
          Your answer{unit && `, ${unit}`}
          <input
            type="number"
            step="any"
            inputMode="decimal"
            value={given.value}
            onInput={(event) => give({ ...given, value: event.currentTarget.value })}
          />
        </label>
      )}
      {choices.map(({ letter, text }) =>
        scored ? (
          <p key={letter} class={scored.rightLetters.includes(letter) ? 'is-right' : ''}>
            {text}
            <small>{verdict(letter, scored)}</small>
          </p>
        ) : (
          <label key={letter} class="tick">
            <input
              type={kind === 'single' ? 'radio' : 'checkbox'}
              name={question.id}
              checked={given.chosen.includes(letter)}
              onChange={(event) => pick(letter, event.currentTarget.checked)}
            />
            <span>{text}</span>
          </label>
        ),
      )}
      {scored && kind === 'number' && (
        <p>
          You said {scored.value ?? 'nothing'}; right is {scored.rightValue}
          {scored.tolerance ? `, give or take ${scored.tolerance}` : ''}
          {unit && ` ${unit}`}.
        </p>
      )}
      {scored?.reference && <p class="hint">Where it is written: {scored.reference}</p>}
    </fieldset>
  );
}

function verdict(letter: string, { chosen, rightLetters }: NonNullable<Question['scored']>): string {
  const [yours, right] = [chosen.includes(letter), rightLetters.includes(letter)];
  if (yours) return right ? 'your answer, right' : 'your answer, wrong';
  return right ? 'this is right' : '';
}
