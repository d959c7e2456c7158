/**
 * Distances as a handbook works them: tables at two weights, then wind, slope, surface and wet. The tables are invented so that
 * every figure can be worked by hand; how they are read is that of FAA-H-8083-25, chapter 11 (from memory).
 */
import {
  distanceBetweenTables,
  distanceFaults,
  workDistances,
  type FieldConditions,
} from '../../../src/rules/air/field-length.js';
import type { DistanceFact, DistanceFactors, DistanceTableFact } from '../../../src/rules/facts/loading.js';

const AXES = { pressureAltitudesFt: [0, 2000], temperaturesC: [0, 20] };
const LIGHT: DistanceTableFact = {
  weightLb: 2000,
  ...AXES,
  groundRollFt: [
    [400, 500],
    [600, 700],
  ],
  over50Ft: [
    [800, 900],
    [1000, 1100],
  ],
};
const HEAVY: DistanceTableFact = {
  weightLb: 2400,
  ...AXES,
  groundRollFt: [
    [800, 900],
    [1000, 1100],
  ],
  over50Ft: [
    [1600, 1700],
    [1800, 1900],
  ],
};
const FACTORS: DistanceFactors = {
  headwindPercentPerKt: 1,
  tailwindPercentPerKt: 5,
  tailwindMaxKt: 10,
  grassPercent: 15,
  gravelPercent: 8,
  wetPavedPercent: 4,
  wetUnpavedPercent: 20,
  slopePercentPerPercent: 10,
  surfaceIsOf: 'distance',
};
const STILL: FieldConditions = {
  weightLb: 2400,
  pressureAltitudeFt: 0,
  oatC: 0,
  headwindKt: 0,
  surface: 'paved',
  wet: false,
  slopeAgainstPercent: 0,
};
const sheet = (factors: Partial<DistanceFactors> = {}, tables = [LIGHT, HEAVY]): DistanceFact => ({
  tables,
  factors: { ...FACTORS, ...factors },
});
const work = (at: Partial<FieldConditions>, factors: Partial<DistanceFactors> = {}) =>
  workDistances(sheet(factors), { ...STILL, ...at });
/** The steps taken, with both distances after each. */
const steps = (at: Partial<FieldConditions>, factors: Partial<DistanceFactors> = {}) => {
  const found = work(at, factors);
  if (!found.found) return found.because;
  return found.steps.map(({ step, percent, groundRollFt, over50Ft }) => [
    step,
    percent,
    Math.round(groundRollFt * 100) / 100,
    Math.round(over50Ft * 100) / 100,
  ]);
};

describe('tables that can be read', () => {
  const of = (change: Partial<DistanceTableFact>, which = HEAVY): DistanceTableFact => ({
    ...which,
    ...change,
  });
  test.each([
    ['none', [], ['at least one table is needed']],
    ['one', [HEAVY], []],
    ['two', [LIGHT, HEAVY], []],
    ['the heavier first', [HEAVY, LIGHT], ['the weights of the tables must ascend']],
    ['the same weight twice', [HEAVY, HEAVY], ['the weights of the tables must ascend']],
    ['no weight', [of({ weightLb: 0 })], ['the weights of the tables must ascend']],
    ['a pound', [of({ weightLb: 1 })], []],
    [
      'a row too few',
      [of({ over50Ft: [[1600, 1700]] })],
      ['2400 lb: distances: one row is needed for each pressure altitude'],
    ],
    [
      'the same fault in both columns is told once',
      [of({ temperaturesC: [20, 0] })],
      ['2400 lb: temperatures: they must be numbers that ascend'],
    ],
    [
      'a roll longer than the distance over the obstacle',
      [
        of({
          groundRollFt: [
            [800, 900],
            [1000, 1901],
          ],
        }),
      ],
      ['a ground roll is never longer than the distance over 50 ft'],
    ],
    [
      'a roll as long as it',
      [
        of({
          groundRollFt: [
            [1600, 900],
            [1000, 1100],
          ],
        }),
      ],
      [],
    ],
    [
      'one long roll in the first of two tables',
      [
        of(
          {
            groundRollFt: [
              [400, 901],
              [600, 700],
            ],
          },
          LIGHT,
        ),
        HEAVY,
      ],
      ['a ground roll is never longer than the distance over 50 ft'],
    ],
  ])('%s', (_, tables, faults) => {
    expect(distanceFaults(tables)).toEqual(faults);
  });

  test('distances are not worked from tables with faults, however often', () => {
    const faulty = sheet({}, [HEAVY, LIGHT]);
    for (let times = 0; times < 2; times += 1)
      expect(() => workDistances(faulty, STILL)).toThrow(
        'the tables cannot be read: the weights of the tables must ascend',
      );
    const two = sheet({}, [
      { ...HEAVY, weightLb: 0 },
      { ...HEAVY, over50Ft: [] },
    ]);
    expect(() => workDistances(two, STILL)).toThrow(/ascend.*; |; .*ascend/);
  });
});

describe('between the tables', () => {
  const read = (weightLb: number, which: 'groundRollFt' | 'over50Ft' = 'over50Ft', oatC = 0) => {
    const found = distanceBetweenTables([LIGHT, HEAVY], which, { weightLb, pressureAltitudeFt: 0, oatC });
    return found.found ? found.distanceFt : found.because;
  };
  test.each([
    // Lighter than the lightest is read as the lightest.
    [1500, 800],
    [2000, 800],
    [2100, 1000],
    [2200, 1200],
    [2300, 1400],
    [2400, 1600],
    [2401, 'the table is for 2400 lb and the aircraft weighs 2401 lb'],
  ])('at %d lb', (weightLb, distance) => {
    expect(read(weightLb)).toBe(distance);
  });
  test('the ground roll, and between temperatures', () => {
    expect([read(2200, 'groundRollFt'), read(2200, 'over50Ft', 10)]).toEqual([600, 1250]);
  });
  test('a third table between two others is the one that counts', () => {
    const middle = { ...LIGHT, weightLb: 2200 };
    const at = { weightLb: 2100, pressureAltitudeFt: 0, oatC: 0 };
    expect(distanceBetweenTables([LIGHT, middle, HEAVY], 'over50Ft', at)).toEqual({
      found: true,
      distanceFt: 800,
    });
    expect(distanceBetweenTables([LIGHT, middle, HEAVY], 'over50Ft', { ...at, weightLb: 2300 })).toEqual({
      found: true,
      distanceFt: 1200,
    });
  });
  test('each table must answer: one that stops at ten degrees does not at fifteen', () => {
    const short = { ...LIGHT, temperaturesC: [0, 10] };
    const at = { weightLb: 2200, pressureAltitudeFt: 0, oatC: 15 };
    const because = 'temperature 15 C is outside the table, which runs from 0 to 10 C';
    expect(distanceBetweenTables([short, HEAVY], 'over50Ft', at)).toEqual({ found: false, because });
    const heavyShort = { ...HEAVY, temperaturesC: [0, 10] };
    expect(distanceBetweenTables([LIGHT, heavyShort], 'over50Ft', at)).toEqual({ found: false, because });
    // At the heavier weight exactly the lighter table is asked as well; it takes no part in the figure.
    expect(distanceBetweenTables([LIGHT, heavyShort], 'over50Ft', { ...at, weightLb: 2000 })).toEqual({
      found: true,
      distanceFt: 875,
    });
  });
});

describe('wind', () => {
  test.each([
    [0, [['table', null, 800, 1600]]],
    [
      10,
      [
        ['table', null, 800, 1600],
        ['headwind', -10, 720, 1440],
      ],
    ],
    [
      -4,
      [
        ['table', null, 800, 1600],
        ['tailwind', 20, 960, 1920],
      ],
    ],
    [
      -10,
      [
        ['table', null, 800, 1600],
        ['tailwind', 50, 1200, 2400],
      ],
    ],
    [-10.1, 'the handbook says nothing of more than 10 kt from behind'],
    // No more than half is taken off, however it blows.
    [
      50,
      [
        ['table', null, 800, 1600],
        ['headwind', -50, 400, 800],
      ],
    ],
    [
      60,
      [
        ['table', null, 800, 1600],
        ['headwind', -60, 400, 800],
      ],
    ],
  ])('%d kt from ahead', (headwindKt, expected) => {
    expect(steps({ headwindKt })).toEqual(expected);
  });
  test('a limit that comes out of trigonometry is not tipped by its last digit', () => {
    expect(work({ headwindKt: -10 - 1e-12 }).found).toBe(true);
    expect(steps({ headwindKt: -1e-12 })).toEqual([['table', null, 800, 1600]]);
  });
  test('where the handbook is silent nothing is taken off, and wind from behind is not known', () => {
    expect(steps({ headwindKt: 10 }, { headwindPercentPerKt: null })).toEqual([['table', null, 800, 1600]]);
    const silent = 'the handbook says nothing of wind from behind';
    expect(steps({ headwindKt: -1 }, { tailwindPercentPerKt: null })).toBe(silent);
    expect(steps({ headwindKt: -1 }, { tailwindMaxKt: null })).toBe(silent);
    expect(work({ headwindKt: 0 }, { tailwindMaxKt: null }).found).toBe(true);
  });
});

describe('slope, surface and wet', () => {
  const table = ['table', null, 800, 1600];
  test.each<[string, Partial<FieldConditions>, Partial<DistanceFactors>, unknown]>([
    ['two percent against', { slopeAgainstPercent: 2 }, {}, [table, ['slope', 20, 960, 1920]]],
    ['two percent with it', { slopeAgainstPercent: -2 }, {}, [table]],
    ['level, and no word of slopes', {}, { slopePercentPerPercent: null }, [table]],
    [
      'a slope, and no word of slopes',
      { slopeAgainstPercent: 1 },
      { slopePercentPerPercent: null },
      'the handbook says nothing of sloping runways',
    ],
    ['grass', { surface: 'grass' }, {}, [table, ['surface', 15, 920, 1840]]],
    ['gravel', { surface: 'gravel' }, {}, [table, ['surface', 8, 864, 1728]]],
    [
      'grass of which nothing is said',
      { surface: 'grass' },
      { grassPercent: null },
      'the handbook says nothing of grass',
    ],
    [
      'gravel of which nothing is said',
      { surface: 'gravel' },
      { gravelPercent: null },
      'the handbook says nothing of gravel',
    ],
    [
      'gravel, nothing said of grass',
      { surface: 'gravel' },
      { grassPercent: null },
      [table, ['surface', 8, 864, 1728]],
    ],
    ['water', { surface: 'water' }, {}, 'the handbook says nothing of water'],
    ['wet and paved', { wet: true }, {}, [table, ['wet', 4, 832, 1664]]],
    [
      'wet grass',
      { surface: 'grass', wet: true },
      {},
      [table, ['surface', 15, 920, 1840], ['wet', 20, 1104, 2208]],
    ],
    [
      'wet and paved, nothing said',
      { wet: true },
      { wetPavedPercent: null },
      'the handbook says nothing of wet runways',
    ],
    [
      'wet grass, nothing said',
      { surface: 'grass', wet: true },
      { wetUnpavedPercent: null },
      'the handbook says nothing of wet runways',
    ],
    ['dry, nothing said of wet', {}, { wetPavedPercent: null, wetUnpavedPercent: null }, [table]],
    [
      'percent of the ground roll: what is added to it is added to the whole',
      { surface: 'grass', wet: true },
      { surfaceIsOf: 'ground-roll' },
      [table, ['surface', 15, 920, 1720], ['wet', 20, 1104, 1904]],
    ],
    [
      'slope of the ground roll',
      { slopeAgainstPercent: 2 },
      { surfaceIsOf: 'ground-roll' },
      [table, ['slope', 20, 960, 1760]],
    ],
    [
      'wind counts for the whole even so',
      { headwindKt: 10 },
      { surfaceIsOf: 'ground-roll' },
      [table, ['headwind', -10, 720, 1440]],
    ],
    [
      'from behind, too',
      { headwindKt: -4 },
      { surfaceIsOf: 'ground-roll' },
      [table, ['tailwind', 20, 960, 1920]],
    ],
  ])('%s', (_, at, factors, expected) => {
    expect(steps(at, factors)).toEqual(expected);
  });

  test('all of it, in the order of the handbook', () => {
    expect(steps({ headwindKt: 10, slopeAgainstPercent: 1, surface: 'grass', wet: true })).toEqual([
      table,
      ['headwind', -10, 720, 1440],
      ['slope', 10, 792, 1584],
      ['surface', 15, 910.8, 1821.6],
      ['wet', 20, 1092.96, 2185.92],
    ]);
  });

  test('the answer is what the last step comes to', () => {
    const found = work({ headwindKt: 10, surface: 'grass' });
    expect(found).toMatchObject({
      groundRollFt: expect.closeTo(828, 6),
      over50Ft: expect.closeTo(1656, 6),
      found: true,
    });
  });
});

describe('where a table does not reach', () => {
  test('too heavy, too high, too hot', () => {
    expect([steps({ weightLb: 2500 }), steps({ pressureAltitudeFt: 2001 }), steps({ oatC: -1 })]).toEqual([
      'the table is for 2400 lb and the aircraft weighs 2500 lb',
      'pressure altitude 2001 ft is outside the table, which runs from 0 to 2000 ft',
      'temperature -1 C is outside the table, which runs from 0 to 20 C',
    ]);
  });
});

test('a knot from ahead counts, by as much as the handbook says', () => {
  const percent = (headwindKt: number): (number | null)[] => {
    const answer = workDistances(sheet({ headwindPercentPerKt: 1.5 }), { ...STILL, headwindKt });
    return answer.found ? answer.steps.map((step) => step.percent) : [];
  };
  expect([0, 1, 9].map(percent)).toEqual([[null], [null, -1.5], [null, -13.5]]);
});

test('heavier than the heaviest of three tables is what that one cannot answer', () => {
  const tables = [LIGHT, HEAVY, { ...HEAVY, weightLb: 2800 }];
  const at = (weightLb: number) =>
    distanceBetweenTables(tables, 'groundRollFt', { weightLb, pressureAltitudeFt: 0, oatC: 0 });
  expect(at(2800)).toEqual({ found: true, distanceFt: 800 });
  expect(at(2801)).toMatchObject({ found: false, because: expect.stringContaining('2800') });
});
