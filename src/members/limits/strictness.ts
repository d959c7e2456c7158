/** Which of two sets of limits asks more, figure by figure. A figure not set is the loosest there is. */
import type { PersonalLimits } from './limits.entity.js';

/** Figures of which less is stricter, and those of which more is. */
const AT_MOST = ['windKt', 'crosswindKt', 'gustSpreadKt'] as const;
const AT_LEAST = [
  'ceilingDayFtAgl',
  'ceilingNightFtAgl',
  'visibilityDaySm',
  'visibilityNightSm',
  'runwayFt',
] as const;

export type Limits = Pick<PersonalLimits, (typeof AT_MOST)[number] | (typeof AT_LEAST)[number] | 'night'>;

/** Nothing set. */
export const NO_LIMITS: Limits = {
  ...{ windKt: null, crosswindKt: null, gustSpreadKt: null, ceilingDayFtAgl: null, ceilingNightFtAgl: null },
  ...{ visibilityDaySm: null, visibilityNightSm: null, runwayFt: null, night: null },
};

/** Only the limits of a row or a request; what is left out is not set. */
export const limitsIn = (of: Partial<Limits>): Limits =>
  Object.fromEntries(
    (Object.keys(NO_LIMITS) as (keyof Limits)[]).map((name) => [name, of[name] ?? null]),
  ) as unknown as Limits;

/** Of both, figure by figure, the one that asks more. */
export function strictestOf(a: Limits, b: Limits): Limits {
  const either = (x: number | null, y: number | null, choose: (...of: number[]) => number): number | null =>
    x === null ? y : y === null ? x : choose(x, y);
  const strict: Limits = { ...NO_LIMITS };
  for (const name of AT_MOST) strict[name] = either(a[name], b[name], Math.min);
  for (const name of AT_LEAST) strict[name] = either(a[name], b[name], Math.max);
  // No night flying is the only limit there is on it; the night said to be open is none.
  strict.night = a.night === false || b.night === false ? false : b.night;
  return strict;
}

export const sameLimits = (a: Limits, b: Limits): boolean =>
  (Object.keys(NO_LIMITS) as (keyof Limits)[]).every((name) => a[name] === b[name]);

/** Does `next` ask less than `before` in anything? */
export const isLooser = (before: Limits, next: Limits): boolean =>
  !sameLimits(strictestOf(before, next), next);
