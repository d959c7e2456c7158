/**
 * Hours an aircraft is expected to fly in the weeks to come: what it flew in the same weeks of last year where that is known, moved
 * to the level of the recent weeks; else the recent weeks alone. A plain method on purpose: what it is worth is measured (backtest.ts)
 * and told with it.
 */

/** Weeks looked back over for the present level. */
export const RECENT_WEEKS = 8;
const YEAR_WEEKS = 52;
/** How far a level may move last year's weeks: one fair month must not double a winter. */
const LEVEL = { least: 0.5, most: 2 };

/** How the expectation of a week came about. */
export type Basis = 'last-year' | 'recent';

export interface ExpectedWeek {
  tenths: number;
  basis: Basis;
}

/** Expected tenths for each of the next weeks after a history of whole weeks, oldest first. Empty history: nothing is expected, and null. */
export function expectWeeks(history: readonly number[], weeks: number): ExpectedWeek[] | null {
  if (history.length === 0) return null;
  const recent = history.slice(-RECENT_WEEKS);
  const level = levelOf(history);
  return Array.from({ length: weeks }, (_none, ahead) => {
    const lastYear = smoothed(history, history.length + ahead - YEAR_WEEKS);
    return lastYear === null
      ? { tenths: mean(recent), basis: 'recent' }
      : { tenths: lastYear * level, basis: 'last-year' };
  });
}

/** The recent weeks against the same weeks of last year, within bounds; 1 where they are not known. */
function levelOf(history: readonly number[]): number {
  const from = history.length - RECENT_WEEKS;
  const then = Array.from({ length: RECENT_WEEKS }, (_none, week) =>
    smoothed(history, from + week - YEAR_WEEKS),
  );
  if (from < 0 || then.some((tenths) => tenths === null)) return 1;
  const before = mean(then as number[]);
  if (before === 0) return 1;
  return Math.min(LEVEL.most, Math.max(LEVEL.least, mean(history.slice(from)) / before));
}

/** A week with its two neighbours; null where one of them is not in the history. */
function smoothed(history: readonly number[], index: number): number | null {
  if (index < 1 || index + 1 >= history.length) return null;
  return mean(history.slice(index - 1, index + 2));
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
