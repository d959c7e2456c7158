/**
 * Timing without judgement: contenders take turns, so that a slow moment of the machine hits all of them, and each is told
 * as the median with its spread. Nothing here passes or fails.
 */
import { performance } from 'node:perf_hooks';

/** The value below which the share `q` of the values lies. */
export function quantile(values, q) {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(q * sorted.length))];
}

export const median = (values) => quantile(values, 0.5);

/**
 * Runs each contender `rounds` times in turn after one round that is not counted. `run` may be asynchronous and does
 * `times` pieces of work; gives microseconds for one piece, round by round.
 */
export async function takeTurns(contenders, rounds) {
  const perPiece = new Map(contenders.map(({ name }) => [name, []]));
  for (let round = -1; round < rounds; round += 1) {
    for (const { name, run, times } of contenders) {
      const began = performance.now();
      const pending = run();
      if (pending instanceof Promise) await pending;
      if (round >= 0) perPiece.get(name).push(((performance.now() - began) * 1000) / times);
    }
  }
  return perPiece;
}

/** Median of the ratios taken round by round: what the machine did in a round cancels out. */
export const pairedRatio = (values, base) => median(values.map((value, round) => value / base[round]));

/** '412 (390 to 455)'. */
export const spread = (values, digits = 0) =>
  `${median(values).toFixed(digits)} (${Math.min(...values).toFixed(digits)} to ${Math.max(...values).toFixed(digits)})`;

/** '67 times', '5.66 times', '0.018 times'. */
export const times = (ratio) =>
  `${ratio >= 10 ? ratio.toFixed(0) : ratio >= 1 ? ratio.toFixed(2) : ratio.toPrecision(2)} times`;
