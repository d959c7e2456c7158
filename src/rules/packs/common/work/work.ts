/** Pieces of work in hand, as the rules of this folder tell of them. */
import { localDateOf, toSeconds } from '../../../calendar/instants.js';
import type { Moment } from '../../../engine/moment.js';
import type { Counted } from '../../../engine/rule.js';
import type { WorkFact } from '../../../facts/aircraft.js';

/** By the time they began. */
export const inOrder = (work: readonly WorkFact[]): WorkFact[] =>
  [...work].sort((a, b) => (`${a.begunAt} ${a.id}` < `${b.begunAt} ${b.id}` ? -1 : 1));

/** '“Annual inspection”, “Engine mounts”'. */
export const namesOf = (work: readonly WorkFact[]): string =>
  work.map(({ title }) => `“${title}”`).join(', ');

/** What was counted: each piece of work by the day it began. */
export const evidenceOf = (work: readonly WorkFact[], { zone }: Moment): Counted[] =>
  work.map(({ id, title, begunAt }) => ({ id, on: localDateOf(toSeconds(begunAt), zone), what: title }));
