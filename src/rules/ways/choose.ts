/** At most three ways, really different: none does all that another does and more, and other kinds of act come first. */
import { isUnnamed, type State } from './state.js';

export const MOST_PLANS = 3;

/** A way as far as choosing goes. */
export interface Candidate {
  /** Acts by name; practice flights by what they put right, for that is all that tells them apart to a reader. */
  acts: ReadonlySet<string>;
  /** Kinds of act, as text. */
  kinds: string;
  /** It hangs on nobody's leave. */
  plain: boolean;
  total: number;
}

/** The end as a candidate; a lesson whose instructor nobody was asked for hangs on nobody more than it did. */
export function candidateOf(state: State, root: State): Candidate {
  return {
    acts: new Set(
      state.done.map(({ offer, cures, sortie }) =>
        sortie && cures.length > 0 ? `flown for ${[...cures].sort().join()}` : offer.act,
      ),
    ),
    kinds: [...new Set(state.done.map(({ offer }) => offer.entries[0]!.kind))].sort().join(),
    plain: state.overrides.length === 0 && (!isUnnamed(state) || isUnnamed(root)),
    total: state.cost.total,
  };
}

const holds = (whole: ReadonlySet<string>, part: ReadonlySet<string>): boolean =>
  [...part].every((act) => whole.has(act));

/** Of candidates in order of cost: the cheapest plain one for certain, then other kinds, then whatever is next. */
export function choose<T extends Candidate>(candidates: readonly T[]): T[] {
  const plainFirst = [
    ...candidates.filter(({ plain }) => plain),
    ...candidates.filter(({ plain }) => !plain),
  ];
  const different: T[] = [];
  for (const one of plainFirst) {
    const same = different.some(({ acts }) => holds(one.acts, acts) || holds(acts, one.acts));
    if (!same) different.push(one);
  }
  const chosen = different.slice(0, 1);
  const take = (wanted: (one: T) => boolean): void => {
    for (const one of candidates) {
      if (chosen.length < MOST_PLANS && different.includes(one) && !chosen.includes(one) && wanted(one))
        chosen.push(one);
    }
  };
  take(({ kinds }) => !chosen.some((one) => one.kinds === kinds));
  take(() => true);
  return chosen.sort((a, b) => candidates.indexOf(a) - candidates.indexOf(b));
}
