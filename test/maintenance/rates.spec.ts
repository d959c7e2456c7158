/**
 * Meters against the log. That a tachometer runs slower than the clock in ordinary flying, and a meter on the master or oil pressure
 * about with it, is common practice, no source; so are the bounds. The arithmetic is worked out by hand beside each case.
 */
import fc from 'fast-check';
import { meterRates, type RateReading } from '../../src/maintenance/meter-rates/rates.js';

const HOUR = 3600;
const reading = (
  id: string,
  at: number,
  totalTenths: number,
  kind: RateReading['kind'] = 'tachometer',
): RateReading => ({
  ...{ id, kind, at: at * HOUR, totalTenths },
});
const flight = (from: number, hours: number) => ({ from: from * HOUR, to: (from + hours) * HOUR });
const looks = (readings: RateReading[], flown: ReturnType<typeof flight>[]) =>
  meterRates(readings, flown).stretches.map(({ look }) => look);

it.each([
  // 2 h flown at the usual 0.85: 1.7 h expected; up to 1.7 × 1.35 + 0.5 = 2.795 h and down to 1.7 × 0.65 − 0.5 = 0.605 h pass.
  ['as expected', 17, [flight(2, 2)], 'as-usual'],
  ['the fastest that passes', 27, [flight(2, 2)], 'as-usual'],
  ['faster', 28, [flight(2, 2)], 'more-than-flown'],
  ['the slowest that passes', 7, [flight(2, 2)], 'as-usual'],
  ['slower', 6, [flight(2, 2)], 'less-than-flown'],
  ['standing still', 0, [flight(2, 2)], 'less-than-flown'],
  ['no flight, run up on the ground', 5, [], 'as-usual'],
  ['no flight, more than that', 6, [], 'nothing-logged'],
  // Pilot and instructor log the same two hours.
  ['one flight logged by two', 17, [flight(2, 2), flight(2, 2)], 'as-usual'],
  ['a flight after the reading', 10, [flight(9.5, 2)], 'nothing-logged'],
] as const)('%s', (_name, tenths, flown, look) => {
  expect(looks([reading('a', 0, 1000), reading('b', 10, 1000 + tenths)], [...flown])).toEqual([look]);
});

it('learns what is usual of a meter from its own record, five stretches on', () => {
  // Two hours flown each day, 2.6 h on the meter: 1.3 for each hour.
  const readings = Array.from({ length: 6 }, (_none, day) => reading(`r${day}`, day * 24, 1000 + day * 26));
  const flown = Array.from({ length: 5 }, (_none, day) => flight(day * 24 + 2, 2));
  const { usual, stretches } = meterRates(readings, flown);
  expect(usual).toEqual([{ kind: 'tachometer', ratio: 1.3, stretches: 5 }]);
  expect(stretches.map(({ look }) => look)).toEqual(Array(5).fill('as-usual'));
  // With four it is not known yet, and 2.6 h for 2 h at the fallback of 0.85 still passes; 2.9 h does not.
  expect(meterRates(readings.slice(0, 5), flown.slice(0, 4)).usual).toEqual([
    { kind: 'tachometer', ratio: 0.85, stretches: 0 },
  ]);
});

it('keeps meters apart', () => {
  const both = [
    reading('a', 0, 100),
    reading('b', 10, 117),
    reading('c', 0, 50, 'hobbs'),
    reading('d', 10, 50, 'hobbs'),
  ];
  expect(meterRates(both, [flight(2, 2)]).stretches.map(({ kind, look }) => [kind, look])).toEqual([
    ['tachometer', 'as-usual'],
    ['hobbs', 'less-than-flown'],
  ]);
});

it('counts each flight once, in the stretch it ended in', () => {
  const spans = fc.uniqueArray(fc.integer({ min: 0, max: 90 }), { minLength: 1, maxLength: 12 });
  fc.assert(
    fc.property(
      spans,
      fc.uniqueArray(fc.integer({ min: 0, max: 100 }), { minLength: 2, maxLength: 8 }),
      (starts, times) => {
        const flown = starts.map((from) => flight(from, 0.5));
        const at = times.sort((a, b) => a - b);
        const { stretches } = meterRates(
          at.map((hour, index) => reading(`r${index}`, hour, 1000)),
          flown,
        );
        const inside = starts.filter((from) => from + 0.5 > at[0]! && from + 0.5 <= at.at(-1)!).length;
        expect(stretches.reduce((sum, { flownTenths }) => sum + flownTenths, 0)).toBeCloseTo(inside * 5, 6);
      },
    ),
  );
});
