/**
 * How good the expectation was: at every week of the past it is made with what was known then and held against what was flown. The
 * errors give the bounds of today's forecast (split conformal: older errors set the bounds, newer ones test them), and the share
 * of the newer ones within the bounds is told beside it.
 */
import { expectWeeks } from './expect.js';

/** One comparison: so many weeks ahead, hours expected in sum and flown. */
export interface Attempt {
  /** Index of the first week forecast. */
  origin: number;
  ahead: number;
  expected: number;
  flown: number;
}

/** Whole weeks of history before the first attempt. */
export const LEAST_HISTORY = 12;
/** Share of outcomes the bounds are to hold. */
export const WITHIN = 0.8;

/** Bounds for the error of a sum, and how they did. */
export interface Bounds {
  /** Normalised error below and above which a tenth of the outcomes lay; see `scale`. */
  lower: number;
  upper: number;
  /** Attempts the bounds were set by, and tested by. */
  setBy: number;
  testedBy: number;
  /** Share of the tested ones within the bounds; null when there were none. */
  coverage: number | null;
  /** Half of the tested ones were off by less than this share of what was expected; null when there were none. */
  medianErrorShare: number | null;
}

/** Every attempt a history allows, up to so many weeks ahead. */
export function attemptsOf(history: readonly number[], mostAhead: number): Attempt[] {
  const attempts: Attempt[] = [];
  for (let origin = LEAST_HISTORY; origin < history.length; origin += 1) {
    const ahead = Math.min(mostAhead, history.length - origin);
    const expected = expectWeeks(history.slice(0, origin), ahead)!;
    let [sum, flown] = [0, 0];
    for (let week = 0; week < ahead; week += 1) {
      sum += expected[week]!.tenths;
      flown += history[origin + week]!;
      attempts.push({ origin, ahead: week + 1, expected: sum, flown });
    }
  }
  return attempts;
}

/** Spread grows with the hours expected; two hours are added so that a week of nothing has a spread, too. */
export const scale = (expectedTenths: number): number => Math.sqrt((expectedTenths + 20) * 10);

const normalised = ({ expected, flown }: Attempt): number => (flown - expected) / scale(expected);

/** Fewer than these set no bounds: a tenth on each side cannot be told from them. */
const LEAST_ATTEMPTS = 20;

/** Bounds out of attempts of all aircraft of the club; null where there are too few. The newest third of the origins tests them. */
export function boundsOf(attempts: readonly Attempt[]): Bounds | null {
  const origins = [...new Set(attempts.map(({ origin }) => origin))].sort((a, b) => a - b);
  const split = origins[Math.floor((origins.length * 2) / 3)] ?? 0;
  const setting = attempts.filter(({ origin }) => origin < split).map(normalised);
  if (setting.length < LEAST_ATTEMPTS) return null;
  const testing = attempts.filter(({ origin }) => origin >= split);
  const [lower, upper] = [(1 - WITHIN) / 2, (1 + WITHIN) / 2].map((share) => quantile(setting, share)) as [
    number,
    number,
  ];
  const held = testing.filter((one) => normalised(one) >= lower && normalised(one) <= upper);
  const shares = testing
    .filter(({ expected }) => expected > 0)
    .map(({ expected, flown }) => Math.abs(flown - expected) / expected);
  return {
    ...{ lower, upper, setBy: setting.length, testedBy: testing.length },
    coverage: testing.length === 0 ? null : held.length / testing.length,
    medianErrorShare: shares.length === 0 ? null : quantile(shares, 0.5),
  };
}

/** The value at a share of the ordered values, the lower neighbour taken. */
function quantile(values: readonly number[], share: number): number {
  const ordered = [...values].sort((a, b) => a - b);
  return ordered[Math.min(ordered.length - 1, Math.floor(share * ordered.length))]!;
}
