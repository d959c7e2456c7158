/**
 * What is measured on a turn, against the physics of coordinated level turns as the Pilot's Handbook of Aeronautical
 * Knowledge (FAA-H-8083-25, chapter 5) and the Airplane Flying Handbook (FAA-H-8083-3) print it. Their figures are from
 * memory.
 */
import fc from 'fast-check';
import { fitCircle, fitPolynomial } from '../../src/practice/track/fit.js';
import { median, quantile, turnDeg } from '../../src/practice/track/motion.js';
import { readTrack } from '../../src/practice/track/reading.js';
import type { SteepTurn } from '../../src/practice/track/turns.js';
import { Flight, type Recorder, type Wind } from './flight.js';

const CALM = { fromDeg: 0, kt: 0 };

function turnOf(
  wind: Wind,
  tasKt: number,
  degrees: number,
  bank: number,
  recorder: Recorder = {},
): SteepTurn {
  const flight = Flight.inTheAir(wind, tasKt, 900, 75);
  const { steepTurns } = readTrack(flight.straight(20).turn(degrees, bank).straight(20).points(recorder), []);
  expect(steepTurns).toHaveLength(1);
  return steepTurns[0]!;
}

test.each([
  [45, 1.41],
  [50, 1.56],
  [60, 2],
])('load factor at %i degrees of bank is %d g (handbook chart)', (bank, load) => {
  const { bankDeg } = turnOf(CALM, 100, 720, bank);
  expect(1 / Math.cos((bankDeg * Math.PI) / 180)).toBeCloseTo(load, 1);
  expect(Math.abs(bankDeg - bank)).toBeLessThan(0.5);
});

test('the flights themselves turn as the handbook says: 1,091 tan(bank) / kt degrees a second, kt^2 / (11.26 tan(bank)) ft', () => {
  const flight = Flight.inTheAir(CALM, 120, 900, 0).turn(720, 45);
  const { states } = flight;
  const middle = states.slice(200, states.length - 200);
  const xs = middle.map(({ x }) => x);
  const ys = middle.map(({ y }) => y);
  const radiusFt = fitCircle(xs, ys)!.radius / 0.3048;
  expect(Math.abs(radiusFt / (120 ** 2 / 11.26) - 1)).toBeLessThan(0.004);
  const around = (2 * Math.PI * radiusFt * 0.3048) / (120 * (1852 / 3600));
  expect(360 / around / (1091 / 120)).toBeCloseTo(1, 2);
});

test('the wind of the turn is its drift, and the airspeed is the true one', () => {
  for (const wind of [CALM, { fromDeg: 75, kt: 15 }, { fromDeg: 210, kt: 35 }]) {
    const turn = turnOf(wind, 100, -360, 45);
    expect(turn.wind.kt).toBeGreaterThan(wind.kt - 0.5);
    expect(turn.wind.kt).toBeLessThan(wind.kt + 0.5);
    if (wind.kt > 0) expect(Math.abs(turnDeg(turn.wind.fromDegTrue, wind.fromDeg))).toBeLessThan(2);
    expect(Math.abs(turn.trueAirspeedKt - 100)).toBeLessThan(0.7);
    expect(turn.direction).toBe('left');
    expect(Math.abs(turn.turnedDeg - 360)).toBeLessThan(6);
    expect(Math.abs(turn.rolloutDevDeg!)).toBeLessThan(2);
  }
});

test('a tight turn is not measured slower for being averaged', () => {
  expect(Math.abs(turnOf(CALM, 90, 720, 60).trueAirspeedKt - 90)).toBeLessThan(0.4);
});

test('without the wind the bank would be wrong: ground speed and track alone give several degrees either way', () => {
  const flight = Flight.inTheAir({ fromDeg: 75, kt: 30 }, 90, 900, 0).straight(20).turn(360, 45).straight(20);
  const points = flight.points();
  const { steepTurns } = readTrack(points, []);
  expect(steepTurns[0]!.bankRangeDeg.least).toBeGreaterThan(43.5);
  expect(steepTurns[0]!.bankRangeDeg.most).toBeLessThan(46.5);
});

test('height, airspeed and roll-out deviations are those flown', () => {
  const flight = Flight.inTheAir({ fromDeg: 300, kt: 12 }, 100, 900, 20).straight(20);
  // 90 feet up over the turn, and 20 degrees too far.
  const seconds = 36;
  flight.turn(380, 45, (90 * 0.3048) / seconds).straight(20);
  const turn = readTrack(flight.points(), []).steepTurns[0]!;
  expect(turn.altitudeDevFt!.most).toBeGreaterThan(80);
  expect(turn.altitudeDevFt!.most).toBeLessThan(110);
  expect(turn.altitudeDevFt!.least).toBeGreaterThan(-10);
  expect(Math.abs(turn.rolloutDevDeg! - 20)).toBeLessThan(2);
});

test('confidence falls with noise and near the limit, and says why', () => {
  const clear = turnOf(CALM, 100, 360, 45);
  const near = turnOf(CALM, 100, 360, 39);
  expect(clear.confidence.value).toBe(1);
  expect(near.confidence.value).toBeLessThan(0.85);
  expect(near.confidence.parts.find(({ because }) => because === 'clear-of-limit')!.factor).toBeLessThan(
    0.85,
  );
  const noisy = turnOf(CALM, 100, 360, 45, { whiteM: 5 });
  expect(noisy.confidence.parts.find(({ because }) => because === 'circle-fit')!.factor).toBeLessThan(1);
  const flat = turnOf(CALM, 100, 360, 45, { withoutElevation: true });
  expect(flat.altitudeDevFt).toBeNull();
  expect(flat.confidence.parts).toContainEqual({ because: 'no-elevation', factor: 0.7 });
  for (const { confidence } of [clear, near, noisy, flat])
    expect(confidence.value).toBeCloseTo(
      confidence.parts.reduce((product, { factor }) => product * factor, 1),
      2,
    );
});

test('points too far apart for a turn are said to be, not passed over', () => {
  const points = Flight.inTheAir(CALM, 100, 900, 0)
    .straight(60)
    .turn(360, 45)
    .straight(60)
    .points({ everySeconds: 5 });
  const reading = readTrack(points, []);
  expect(reading.steepTurns).toEqual([]);
  expect(reading.unseen).toContainEqual({
    what: 'steep-turns',
    because: 'points-too-far-apart',
    medianSeconds: 5,
    coarsestSeconds: 2.5,
  });
});

test('nothing is inferred across a gap, and the gap is told', () => {
  const points = Flight.inTheAir(CALM, 100, 900, 0).straight(20).turn(360, 45).straight(20).points();
  const cut = points.filter((_one, at) => at < 32 || at > 52);
  const reading = readTrack(cut, []);
  expect(reading.steepTurns).toEqual([]);
  expect(reading.unseen.filter(({ because }) => because === 'gap')).toHaveLength(1);
  const split = points.map((one, at) => ({ ...one, segment: at < 40 ? 0 : 1 }));
  expect(readTrack(split, []).steepTurns).toEqual([]);
});

test('any turn of any wind, bank and speed is measured to a degree of bank and a knot', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 40, max: 60 }),
      fc.integer({ min: 0, max: 359 }),
      fc.integer({ min: 0, max: 30 }),
      fc.integer({ min: 80, max: 130 }),
      fc.constantFrom(360, -360, 720),
      (bank, fromDeg, kt, tas, degrees) => {
        const turn = turnOf({ fromDeg, kt }, tas, degrees, bank);
        expect(Math.abs(turn.bankDeg - bank)).toBeLessThan(1);
        expect(Math.abs(turn.trueAirspeedKt - tas)).toBeLessThan(1.5);
        expect(Math.abs(turn.wind.kt - kt)).toBeLessThan(1.5);
      },
    ),
    { numRuns: 40, seed: 20261126 },
  );
});

test('the same flight elsewhere in longitude and at another time reads the same', () => {
  const points = Flight.inTheAir({ fromDeg: 40, kt: 20 }, 100, 900, 0)
    .straight(20)
    .turn(360, 45)
    .straight(20)
    .points({ whiteM: 2, seed: 5 });
  const there = points.map((one) => ({
    ...one,
    longitudeDeg: one.longitudeDeg + 100,
    atSeconds: one.atSeconds + 86_400,
  }));
  const [a, b] = [readTrack(points, []).steepTurns[0]!, readTrack(there, []).steepTurns[0]!];
  expect(b.fromSeconds - a.fromSeconds).toBe(86_400);
  expect(b.bankDeg).toBeCloseTo(a.bankDeg, 5);
  expect(b.wind.kt).toBeCloseTo(a.wind.kt, 5);
});

describe('least squares', () => {
  const number = fc.double({ min: -50, max: 50, noNaN: true });
  test('a polynomial comes back from its own points', () => {
    fc.assert(
      fc.property(fc.array(number, { minLength: 1, maxLength: 4 }), (coefficients) => {
        const ts = [-1, -0.7, -0.2, 0, 0.3, 0.8, 1];
        const ys = ts.map((t) => coefficients.reduce((sum, c, power) => sum + c * t ** power, 0));
        const fitted = fitPolynomial(ts, ys, coefficients.length - 1)!;
        fitted.forEach((one, power) => expect(one).toBeCloseTo(coefficients[power]!, 6));
      }),
      { seed: 20261126 },
    );
  });
  test('a circle comes back from any arc of a third or more', () => {
    fc.assert(
      fc.property(
        number,
        number,
        fc.double({ min: 1, max: 90, noNaN: true }),
        fc.integer({ min: 120, max: 700 }),
        (x, y, radius, arc) => {
          const angles = Array.from({ length: 30 }, (_one, at) => ((arc * at) / 29 / 180) * Math.PI);
          const found = fitCircle(
            angles.map((angle) => x + radius * Math.cos(angle)),
            angles.map((angle) => y + radius * Math.sin(angle)),
          )!;
          expect(found.x).toBeCloseTo(x, 4);
          expect(found.y).toBeCloseTo(y, 4);
          expect(found.radius).toBeCloseTo(radius, 4);
          expect(found.rms).toBeLessThan(1e-4);
        },
      ),
      { seed: 20261126 },
    );
  });
  test('a line is no circle, and too few points settle nothing', () => {
    expect(fitCircle([0, 1, 2, 3], [0, 1, 2, 3])).toBeNull();
    expect(fitCircle([0, 1], [0, 1])).toBeNull();
    expect(fitPolynomial([0], [1], 1)).toBeNull();
    expect(fitPolynomial([2, 2, 2], [1, 2, 3], 1)).toBeNull();
  });
  test('medians and quantiles', () => {
    expect(median([3, 1, 2])).toBe(2);
    expect(median([4, 1, 2, 3])).toBe(2.5);
    expect(quantile([0, 10], 0.05)).toBeCloseTo(0.5, 9);
    expect(median([])).toBeNaN();
  });
});
