/**
 * The loading and the runways of a flight worked out for people to read, held against sums made by hand from the example aircraft:
 * weight times arm is moment (FAA-H-8083-1, from memory), tables read between their figures.
 */
import {
  rulesetFor,
  startingPolicy,
  workLoading,
  type FactSheet,
  type LoadingWork,
} from '../../../src/rules/index.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';
import { WEATHER } from '../../../src/rules/workshop/records.js';

const STILL = { ...WEATHER, windKt: 0, windFromDeg: null, gustKt: null };
const ruleset = rulesetFor('US', startingPolicy());
type Flight = FactSheet['flight'];

/** The example flight at 11:00 in still air, changed. */
function work(change: Partial<Flight> = {}, alter: (sheet: FactSheet) => void = () => {}): LoadingWork {
  const sheet = baseSheet();
  Object.assign(sheet.flight, { weather: STILL, ...change });
  alter(sheet);
  return workLoading(sheet, ruleset);
}
/** The value of a fact that is known, to be changed. */
const valueOf = <T>(fact: { known: true; value: T } | { known: false }): T => {
  if (!fact.known) throw new Error('not known');
  return fact.value;
};
const unknown = (because: string) => ({ known: false as const, because, value: undefined });

test('each line with its moment', () => {
  expect(work().lines).toEqual([
    { what: 'Empty aircraft', weightLb: 1450, armIn: 84, momentLbIn: 121_800 },
    { what: 'Front seats', weightLb: 170, armIn: 81, momentLbIn: 13_770 },
    { what: 'Rear seats', weightLb: 0, armIn: 117, momentLbIn: 0 },
    { what: 'Baggage', weightLb: 10, armIn: 142, momentLbIn: 1420 },
    // 40 US gal at 6 lb (AC 120-27F gives 6 lb for avgas; from memory).
    { what: 'Wing tanks', weightLb: 240, armIn: 95, momentLbIn: 22_800 },
  ]);
});

test('the three points in the order of the flight, an hour at 9 US gal between the first two', () => {
  const { points, maxTakeoffLb, envelopes, unknown: rest } = work();
  expect(points.map(({ when, weightLb, momentLbIn }) => [when, weightLb, momentLbIn])).toEqual([
    ['takeoff', 1870, 159_790],
    ['landing', 1816, 154_660],
    ['zero-fuel', 1630, 136_990],
  ]);
  for (const { armIn, momentLbIn, weightLb, categories } of points) {
    expect(armIn).toBeCloseTo(momentLbIn / weightLb, 9);
    expect(categories).toEqual(['normal', 'utility']);
  }
  expect([maxTakeoffLb, envelopes.length, rest]).toEqual([2400, 2, []]);
});

test('categories of each point by itself', () => {
  const rear = { occupantsLb: 500, baggageLb: 0, fuelUsGal: 6, rowsLb: [170, 330], compartmentsLb: [0] };
  const { points } = work({ personsOnBoard: 3, purpose: 'passengers', loading: rear });
  // 1,986 lb with 330 lb in the rear row: aft of the 88 inches of the utility category.
  expect(points.map(({ when, categories }) => [when, categories])).toEqual([
    ['takeoff', ['normal']],
    ['landing', ['normal']],
    ['zero-fuel', ['normal']],
  ]);
});

test('no more is burned than is aboard', () => {
  const { points } = work({ plannedTenths: 60 });
  expect(points.map(({ weightLb }) => weightLb)).toEqual([1870, 1630, 1630]);
});

test('a take-off and a landing at the field of departure, tables read at 5,101 ft and 10 degrees', () => {
  const { runways, marginFactor } = work();
  expect(marginFactor).toBe(1.33);
  expect(runways).toHaveLength(2);
  // 1,101 of the 2,000 ft between the printed altitudes; the lightest take-off table counts for a lighter aircraft.
  const part = 1101 / 2000;
  const [takeoff, landing] = runways;
  expect(takeoff).toMatchObject({
    does: 'takeoff',
    airfield: 'XQHB',
    runway: '09',
    lengthFt: 4200,
    weightLb: 1870,
    pressureAltitudeFt: 5101,
    oatC: 10,
    headwindKt: 0,
    ifWetFt: null,
    groundRollFt: expect.closeTo(700 + 100 * part, 6),
    over50Ft: expect.closeTo(1200 + 200 * part, 6),
    // Times 1.33, whole feet upward: 1,742.4.
    neededFt: 1743,
  });
  expect(landing).toMatchObject({
    does: 'landing',
    weightLb: 1816,
    groundRollFt: expect.closeTo(550 + 50 * part, 6),
    over50Ft: expect.closeTo(1100 + 100 * part, 6),
    neededFt: Math.ceil((1100 + 100 * part) * 1.33),
    halfWay: null,
  });
  expect(takeoff!.steps.map(({ step, percent }) => [step, percent])).toEqual([['table', null]]);
  // Half of 4,200 ft lies beyond a roll of 755 ft, so it flies by then: 50 kt. Seven tenths of that let it go on.
  expect(takeoff!.halfWay).toEqual({ atFt: 2100, leastKt: 35, expectedKt: 50 });
});

test('density altitude: 5,101 ft at 10 degrees are 600 ft more than at the standard 4.9', () => {
  const [takeoff] = work().runways;
  // The rule of thumb of 120 ft for each degree gives 5,714.
  expect(Math.abs(takeoff!.densityAltitudeFt - 5714)).toBeLessThan(25);
});

test('half the runway within the roll: the speed there goes with the root of the distance', () => {
  const { runways } = work({}, (sheet) => {
    for (const runway of sheet.flight.route[0]!.runways) runway.lengthFt = 1000;
  });
  const roll = 700 + (100 * 1101) / 2000;
  expect(runways[0]!.halfWay!.expectedKt).toBeCloseTo(50 * Math.sqrt(500 / roll), 9);
});

test('the wet distance stands beside the dry one where it is not told which', () => {
  const { runways } = work({ weather: { ...STILL, wet: null } });
  // Ten percent of the ground roll on a wet paved runway, added to the whole.
  const part = 1101 / 2000;
  expect(runways[0]!.ifWetFt).toBeCloseTo(1200 + 200 * part + 0.1 * (700 + 100 * part), 6);
  expect(runways[1]!.ifWetFt).toBeCloseTo(1100 + 100 * part + 0.1 * (550 + 50 * part), 6);
  const silent = work({ weather: { ...STILL, wet: null } }, ({ aircraft }) => {
    const { takeoff } = valueOf(aircraft.performance!);
    takeoff.factors = { ...takeoff.factors, wetPavedPercent: null };
  });
  expect(silent.runways.map(({ ifWetFt }) => ifWetFt === null)).toEqual([true, false]);
});

test('without a lift-off speed there is no half-way check', () => {
  const { runways } = work({}, ({ aircraft }) => {
    valueOf(aircraft.performance!).liftOffKias = null;
  });
  expect(runways.map(({ halfWay }) => halfWay)).toEqual([null, null]);
});

describe('what is missing is told, and the rest worked out', () => {
  test('no weather: the loading alone', () => {
    const done = work({ weather: null });
    expect([done.points.length, done.runways, done.marginFactor, done.unknown]).toEqual([
      3,
      [],
      null,
      ['no recent weather is declared for the flight'],
    ]);
  });
  test.each([
    ['2027-03-01T16:00:00Z', 2],
    ['2027-03-01T15:59:59Z', 0],
  ])('weather observed at %s for a departure at 18:00, two hours counting', (observedAt, runways) => {
    expect(work({ weather: { ...STILL, observedAt } }).runways).toHaveLength(runways);
  });
  test('no loading sheet: the runways alone', () => {
    const done = work({}, ({ aircraft }) => {
      aircraft.loading = unknown('no loading sheet is on record');
    });
    expect([done.lines, done.points, done.envelopes, done.runways.length, done.unknown]).toEqual([
      [],
      [],
      [],
      2,
      ['no loading sheet is on record'],
    ]);
  });
  test('the sheet says jet fuel: it is weighed as such, for the runways too', () => {
    const done = work({}, ({ aircraft }) => {
      valueOf(aircraft.loading!).fuelKind = 'jet';
    });
    const fuel = done.lines.at(-1)!.weightLb;
    expect(fuel).toBeCloseTo(40 * 6.8, 6);
    expect(done.runways[0]!.weightLb).toBe(1630 + 40 * 6.8);
  });
  test('nothing told of the loading: said once', () => {
    expect(work({ loading: null }).unknown).toEqual(['the loading is not declared yet']);
  });
  test('no weighing: limits and runways', () => {
    const done = work({}, ({ aircraft }) => {
      aircraft.weighing = unknown('no weighing is on record');
    });
    expect([done.lines, done.envelopes.length, done.runways.length, done.unknown]).toEqual([
      [],
      2,
      2,
      ['no weighing is on record'],
    ]);
  });
  test('no fuel burn: the points at take-off and without fuel', () => {
    const done = work({}, ({ aircraft }) => {
      valueOf(aircraft.type).fuelBurnUsGalPerHour = null;
    });
    expect(done.points.map(({ when }) => when)).toEqual(['takeoff', 'zero-fuel']);
    expect(done.unknown).toEqual(['the fuel burn at cruise is not on record']);
    // The landing is then reckoned at the weight of the take-off.
    expect(done.runways.map(({ weightLb }) => weightLb)).toEqual([1870, 1870]);
  });
  test('no empty weight of the type', () => {
    const done = work({}, ({ aircraft }) => {
      valueOf(aircraft.type).emptyWeightLb = null;
    });
    expect([done.points.length, done.runways, done.unknown]).toEqual([
      3,
      [],
      ['the empty weight is not on record'],
    ]);
  });
  test('the type is not known: its greatest weight neither', () => {
    const done = work({}, ({ aircraft }) => {
      aircraft.type = unknown('the type is not on record');
    });
    expect([done.maxTakeoffLb, done.lines, done.runways, done.unknown]).toEqual([
      null,
      [],
      [],
      ['the type is not on record'],
    ]);
  });
  test('a table that does not reach: told with its field', () => {
    const done = work({ weather: { ...STILL, temperatureC: 41 } });
    expect(done.runways).toEqual([]);
    expect(done.unknown).toEqual([
      'take-off at XQHB: temperature 41 C is outside the table, which runs from -20 to 40 C',
      'landing at XQHB: temperature 41 C is outside the table, which runs from -20 to 40 C',
    ]);
  });
  test('what is broken is no fact that is missing', () => {
    expect(() =>
      work({}, ({ aircraft }) => {
        valueOf(aircraft.performance!).takeoff.tables.reverse();
      }),
    ).toThrow(RangeError);
  });
});
