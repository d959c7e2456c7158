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

/** Long enough that a contender has been compiled, and that its turn is not mostly the next one's cold caches. */
const WARM_MS = 1_500;
const TURN_MS = 20;

/**
 * Runs each contender until it is warm, uncounted; then `rounds` turns each, one after the other, every turn as many passes as
 * take 20 ms and at least one. `run` may be asynchronous and does `times` pieces of work; gives microseconds for one piece, turn
 * by turn.
 */
export async function takeTurns(contenders, rounds) {
  const perPiece = new Map(contenders.map(({ name }) => [name, []]));
  for (const { run } of contenders) await passes(run, WARM_MS);
  for (let round = 0; round < rounds; round += 1) {
    for (const { name, run, times } of contenders) {
      const { ms, ran } = await passes(run, TURN_MS);
      perPiece.get(name).push((ms * 1000) / (ran * times));
    }
  }
  return perPiece;
}

/** Passes until so many milliseconds are over; at least one. */
async function passes(run, leastMs) {
  const began = performance.now();
  let ran = 0;
  let ms;
  do {
    const pending = run();
    if (pending instanceof Promise) await pending;
    ran += 1;
    ms = performance.now() - began;
  } while (ms < leastMs);
  return { ms, ran };
}

/** Median of the ratios taken round by round: what the machine did in a round cancels out. */
export const pairedRatio = (values, base) => median(values.map((value, round) => value / base[round]));

/** '412 (390 to 455)'. */
export const spread = (values, digits = 0) =>
  `${median(values).toFixed(digits)} (${Math.min(...values).toFixed(digits)} to ${Math.max(...values).toFixed(digits)})`;

/** '67 times', '5.66 times', '0.018 times'. */
export const times = (ratio) =>
  `${ratio >= 10 ? ratio.toFixed(0) : ratio >= 1 ? ratio.toFixed(2) : ratio.toPrecision(2)} times`;
