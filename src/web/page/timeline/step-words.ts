/** What is said of a step. */
import { ANSWER_WORD, listed, STATUS_WORD } from '../../../rules/explain/words.js';
import { spanIn } from '../parts/time.js';
import type { Step } from './types.js';

/** 'Thu 12 Mar 07:05 to 18:25: Yes. In the way: ...' for whoever hears it. */
export function stepSays(step: Step, zone: string): string {
  const way = titlesInTheWay(step);
  return [
    `${spanIn(zone, step.from, step.to)}: ${ANSWER_WORD[step.answer]}`,
    ...(way.length > 0 ? [`in the way: ${listed(way)}`] : []),
    ...(step.changed.length > 0 ? [`changed here: ${listed(changesOf(step))}`] : []),
  ].join('; ');
}

export const titlesInTheWay = ({ inTheWay }: Step): string[] => inTheWay.map(({ title }) => title);

/** 'Night landings, met before, not met now'. */
export function changesOf({ changed }: Step): string[] {
  // What moves on the flight as asked moves with an instructor too, as a rule: once is enough.
  const asked = new Set(changed.filter((one) => !one.withInstructor).map(({ rule }) => rule));
  const told = changed.filter(({ rule, withInstructor }) => !withInstructor || !asked.has(rule));
  return told.map(({ title, was, is, withInstructor }) => {
    const moved = was === is ? 'other conditions' : `${STATUS_WORD[was]} before, ${STATUS_WORD[is]} now`;
    return `${title}${withInstructor ? ' (with an instructor)' : ''}, ${moved}`;
  });
}
