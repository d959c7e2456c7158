import { ANSWER_WORD } from '../../../rules/explain/words.js';
import { LOOKS } from '../answer/words.js';
import { clockIn, spanIn } from '../parts/time.js';
import { changesOf, titlesInTheWay } from './step-words.js';
import type { Slot, Step } from './types.js';

interface Props {
  step: Step;
  slot: Slot | null;
  zone: string;
  take(slot: Slot): void;
}

/** The step that was pointed at: the answer, what changes where it begins, what stands in the way, and a way into the form. */
export function StepDetail({ step, slot, zone, take }: Props) {
  const { shape, tone } = LOOKS[step.answer];
  const way = titlesInTheWay(step);
  const changes = changesOf(step);
  return (
    <div class={`step-detail aircraft ${tone}`}>
      <p>
        <span class="shape" aria-hidden="true">
          {shape}
        </span>{' '}
        <strong class="word">{ANSWER_WORD[step.answer]}</strong>
        {' for a departure from '}
        {spanIn(zone, step.from, step.to)}
      </p>
      {way.length > 0 && <Titles name="In the way" of={way} />}
      {changes.length > 0 && <Titles name="What changed where it begins" of={changes} />}
      {slot && (
        <button class="quiet" onClick={() => take(slot)}>
          Put {clockIn(zone, slot.departs)} into the flight above
        </button>
      )}
    </div>
  );
}

function Titles({ name, of }: { name: string; of: string[] }) {
  return (
    <p class="titles">
      {name}: {of.join('; ')}.
    </p>
  );
}
