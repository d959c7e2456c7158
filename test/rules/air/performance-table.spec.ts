import {
  distanceFromTable,
  tableFaults,
  type PerformanceTable,
} from '../../../src/rules/air/performance-table.js';

/** An invented table of an invented aircraft; interpolation is checked against hand arithmetic. */
const TABLE: PerformanceTable = {
  weightLb: 2400,
  pressureAltitudesFt: [0, 2000, 4000],
  temperaturesC: [0, 20, 40],
  distancesFt: [
    [800, 900, 1000],
    [1000, 1140, 1280],
    [1240, 1420, 1600],
  ],
};
const at = (pressureAltitudeFt: number, oatC: number, weightLb = 2400) =>
  distanceFromTable(TABLE, { pressureAltitudeFt, oatC, weightLb });

test.each([
  [0, 0, 800],
  [4000, 40, 1600],
  [2000, 20, 1140],
  [1000, 0, 900],
  [0, 10, 850],
  // Between four printed values: (900 + 1000 + 1140 + 1280) / 4.
  [1000, 30, 1080],
  // A quarter up, three quarters across: 875 and 1105, then a quarter of the way.
  [500, 15, 875 + 0.25 * (1105 - 875)],
])('%i ft and %i C', (pa, oat, distanceFt) => {
  const answer = at(pa, oat);
  expect(answer.found && answer.distanceFt).toBeCloseTo(distanceFt, 9);
});

test.each([
  [-1, 20, 2400, 'pressure altitude'],
  [4001, 20, 2400, 'pressure altitude'],
  [0, -0.1, 2400, 'temperature'],
  [0, 40.1, 2400, 'temperature'],
  [0, 20, 2401, 'the aircraft weighs 2401 lb'],
  [Number.NaN, 20, 2400, 'pressure altitude'],
  [0, 20, Number.NaN, 'weighs'],
])('refuses %d ft, %d C, %d lb', (pa, oat, weight, because) => {
  const answer = at(pa, oat, weight);
  expect(answer.found).toBe(false);
  expect(answer).toHaveProperty('because', expect.stringContaining(because));
});

test('a lighter aircraft may use it', () => {
  expect(at(0, 0, 2000)).toEqual({ found: true, distanceFt: 800 });
});

test('a table that cannot be read is named, not guessed', () => {
  expect(tableFaults(TABLE)).toEqual([]);
  expect(tableFaults({ ...TABLE, temperaturesC: [0, 40, 20] })).toEqual([
    'temperatures: they must be numbers that ascend',
  ]);
  expect(tableFaults({ ...TABLE, pressureAltitudesFt: [0], distancesFt: [[1, 2, 3]] })).toHaveLength(1);
  const ragged = { ...TABLE, distancesFt: [[800, 900], ...TABLE.distancesFt.slice(1)] };
  expect(() => distanceFromTable(ragged, { pressureAltitudeFt: 0, oatC: 0, weightLb: 1 })).toThrow('row 1');
});

test.each([
  [
    {
      pressureAltitudesFt: [0, 4000],
      distancesFt: [
        [800, 900, 1000],
        [1240, 1420, 1600],
      ],
    },
    [],
  ],
  [
    {
      temperaturesC: [0, 20],
      distancesFt: [
        [800, 900],
        [1000, 1140],
        [1240, 1420],
      ],
    },
    [],
  ],
  [{ temperaturesC: [0, 20, 20] }, ['temperatures: they must be numbers that ascend']],
  [{ temperaturesC: [0, 20, Number.NaN] }, ['temperatures: they must be numbers that ascend']],
  [{ pressureAltitudesFt: [0, 2000] }, ['distances: one row is needed for each pressure altitude']],
  [
    { distancesFt: [[800, 0, 1000], ...TABLE.distancesFt.slice(1)] },
    ['distances: row 1 needs a positive number for each temperature'],
  ],
  [
    { distancesFt: [[800, -1, 1000], ...TABLE.distancesFt.slice(1)] },
    ['distances: row 1 needs a positive number for each temperature'],
  ],
  [
    { distancesFt: [[800, Number.POSITIVE_INFINITY, 1000], ...TABLE.distancesFt.slice(1)] },
    ['distances: row 1 needs a positive number for each temperature'],
  ],
])('%j: what is wrong with it', (change, faults) => {
  expect(tableFaults({ ...TABLE, ...change })).toEqual(faults);
});

test('what is outside is told with its unit and where the table ends', () => {
  expect(at(4001, 20)).toEqual({
    found: false,
    because: 'pressure altitude 4001 ft is outside the table, which runs from 0 to 4000 ft',
  });
  expect(at(0, 41)).toEqual({
    found: false,
    because: 'temperature 41 C is outside the table, which runs from 0 to 40 C',
  });
});
