/**
 * How rusty a manoeuvre is: 0 just after it was done to standard, 1 when it never was. The model is a halving time, and
 * says so: what is left after d days is 2^(-d / halving time), and the halving time grows with each performance to
 * standard that came some days after the one before, since spaced practice lasts (common practice, no source for the
 * numbers, which are arguments). It ranks what to practise; it is no measure of a pilot and gates nothing.
 */
import { daysBetween, type LocalDate } from '../../rules/calendar/dates.js';
import type { Task } from '../tolerances/standards.js';
import { meets, type Condition, type Flown } from './conditions.js';
import { conditionSaid, said, TASK_NAMES, type Said } from './words.js';

export interface DecayModel {
  /** Halving time after one performance to standard. */
  firstHalfLifeDays: number;
  /** By what each further spaced one multiplies it; 1 or more. */
  growth: number;
  longestHalfLifeDays: number;
  /** Performances closer together than this count as one. */
  spacingDays: number;
  /** Older performances do not lengthen it any more. */
  countedDays: number;
  /** What performances outside the standard, after the last good one, multiply it by; 0 to 1. */
  outsideShare: number;
}

/** Somebody's starting values, for tests and until a club sets its own: common practice, no source. */
export const DECAY_EXAMPLE: DecayModel = {
  firstHalfLifeDays: 30,
  growth: 1.5,
  longestHalfLifeDays: 180,
  spacingDays: 5,
  countedDays: 730,
  outsideShare: 0.5,
};

export interface Rust {
  manoeuvre: Task;
  condition: Condition;
  /** 0 to 1. */
  rust: number;
  lastGoodOn: LocalDate | null;
  days: number | null;
  /** Spaced performances to standard that were counted. */
  spaced: number;
  halfLifeDays: number | null;
  /** Performances outside the standard after the last good one; all there are where none was good. */
  outsideSince: number;
  /** On record and not judged, or in conditions not recorded: neither counts as good. */
  notJudged: number;
  conditionUnknown: number;
  /** What was counted, oldest first. */
  evidence: string[];
  said: Said[];
}

/** Throws RangeError where the model makes no sense. */
export function checkModel(model: DecayModel): void {
  const { firstHalfLifeDays, growth, longestHalfLifeDays, spacingDays, countedDays, outsideShare } = model;
  const fine =
    firstHalfLifeDays > 0 &&
    growth >= 1 &&
    longestHalfLifeDays >= firstHalfLifeDays &&
    spacingDays >= 0 &&
    countedDays >= 0 &&
    outsideShare > 0 &&
    outsideShare <= 1;
  if (!fine || !Object.values(model).every(Number.isFinite))
    throw new RangeError('no model of decay: check its numbers');
}

/** Rust of one manoeuvre in one condition on a day; what is dated later is not yet known and left out. */
export function rustOf(
  manoeuvre: Task,
  condition: Condition,
  flown: readonly Flown[],
  model: DecayModel,
  on: LocalDate,
): Rust {
  checkModel(model);
  const known = flown
    .filter((one) => one.manoeuvre === manoeuvre && one.on <= on)
    .sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : a.id < b.id ? -1 : 1));
  const here = known.filter((one) => meets(one, condition) === true);
  const good = here.filter((one) => one.good === true);
  const last = good[good.length - 1];
  // What fails in easier conditions is not safe in harder ones: a performance outside counts against every condition.
  const outsideSince = known.filter((one) => one.good === false && (!last || one.on >= last.on)).length;
  const counts = {
    outsideSince,
    notJudged: here.filter((one) => one.good === null).length,
    conditionUnknown: known.filter((one) => meets(one, condition) === null).length,
  };
  const words = { manoeuvre: TASK_NAMES[manoeuvre], condition: conditionSaid(condition) };
  const more: Said[] = [
    ...(outsideSince > 0 && last ? [said('rust.outside-since', { times: outsideSince })] : []),
    ...(counts.notJudged > 0 ? [said('rust.not-judged', { times: counts.notJudged })] : []),
    ...(counts.conditionUnknown > 0
      ? [said('rust.condition-unknown', { times: counts.conditionUnknown })]
      : []),
  ];
  if (!last)
    return {
      manoeuvre,
      condition,
      rust: 1,
      lastGoodOn: null,
      days: null,
      spaced: 0,
      halfLifeDays: null,
      ...counts,
      evidence: [],
      said: [said('rust.never', words), ...more],
    };
  const days = daysBetween(last.on, on);
  const counted = good.filter((one) => daysBetween(one.on, on) <= model.countedDays || one === last);
  const spaced = spacedCount(counted, model.spacingDays);
  const grown = Math.min(model.longestHalfLifeDays, model.firstHalfLifeDays * model.growth ** (spaced - 1));
  const halfLifeDays = outsideSince > 0 ? grown * model.outsideShare : grown;
  return {
    manoeuvre,
    condition,
    rust: 1 - 2 ** (-days / halfLifeDays),
    lastGoodOn: last.on,
    days,
    spaced,
    halfLifeDays,
    ...counts,
    evidence: counted.map(({ id }) => id),
    said: [said('rust.since', { ...words, lastGoodOn: last.on, days }), ...more],
  };
}

/** The most performances that can be picked with the spacing between them: the earliest first. */
function spacedCount(good: readonly Flown[], spacingDays: number): number {
  let count = 0;
  let before: LocalDate | null = null;
  for (const { on } of good) {
    // Two on one day are one, however small the spacing.
    if (before !== null && daysBetween(before, on) < Math.max(1, spacingDays)) continue;
    before = on;
    count += 1;
  }
  return count;
}
