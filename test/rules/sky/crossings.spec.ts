/** Roots of functions whose roots are known beforehand. */
import { crossingsOf } from '../../../src/rules/sky/crossings.js';

const HOUR = 3600;
const wave = (period: number, phase = 0) => ({
  f: (at: number) => Math.sin((2 * Math.PI * (at - phase)) / period),
  steepest: (2 * Math.PI) / period,
});
const close = (found: number[], wanted: number[]) => {
  expect(found.map(Math.round)).toEqual(wanted);
  found.forEach((at, index) => expect(Math.abs(at - wanted[index]!)).toBeLessThan(0.05));
};

test('every crossing of a day, in order, up and down', () => {
  const { f, steepest } = wave(24 * HOUR, 5 * HOUR);
  close(crossingsOf(f, 0, 24 * HOUR, steepest), [5 * HOUR, 17 * HOUR]);
  close(crossingsOf(f, -24 * HOUR, 0, steepest), [-19 * HOUR, -7 * HOUR]);
});

test('three crossings in half a day are not taken for one', () => {
  const { f, steepest } = wave(8 * HOUR);
  close(crossingsOf(f, HOUR, 13 * HOUR, steepest), [4 * HOUR, 8 * HOUR, 12 * HOUR]);
});

test('two that lie seconds apart, where the wave only just reaches over zero', () => {
  const period = 24 * HOUR;
  const middle = 9 * HOUR + 1234;
  for (const half of [10, 3]) {
    const top = Math.cos((2 * Math.PI * half) / period);
    const f = (at: number) => Math.cos((2 * Math.PI * (at - middle)) / period) - top;
    for (const sign of [1, -1])
      close(
        crossingsOf((at) => sign * f(at), 0, period, (2 * Math.PI) / period),
        [middle - half, middle + half],
      );
  }
});

test('a crossing on the seam of two stretches is found in one of them', () => {
  for (const f of [(at: number) => at - HOUR, (at: number) => HOUR - at]) {
    const found = [...crossingsOf(f, 0, HOUR, 1), ...crossingsOf(f, HOUR, 2 * HOUR, 1)];
    close(found, [HOUR]);
  }
});

test('what cannot reach zero is not looked at any further', () => {
  for (const level of [0.6, -0.6]) {
    let looks = 0;
    const found = crossingsOf(() => ((looks += 1), level), 0, HOUR, 1 / HOUR);
    expect([found, looks]).toEqual([[], 2]);
  }
});

// Straight lines from end to end hardly come nearer to such a root: one end must be let go of.
test.each([
  ['rising late', (u: number) => u ** 8 - 1e-3, 1e-3 ** (1 / 8)],
  ['falling late', (u: number) => 1e-3 - u ** 8, 1e-3 ** (1 / 8)],
  ['falling early', (u: number) => (1 - u) ** 8 - 1e-3, 1 - 1e-3 ** (1 / 8)],
  ['rising early', (u: number) => 1e-3 - (1 - u) ** 8, 1 - 1e-3 ** (1 / 8)],
])('a bent function, %s', (_, bent, root) => {
  const [at] = crossingsOf((t) => bent(t / (6 * HOUR)), 0, 6 * HOUR, 8 / (6 * HOUR));
  expect(Math.abs(at! - root * 6 * HOUR)).toBeLessThan(0.06);
});
