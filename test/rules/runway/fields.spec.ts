/**
 * Which take-offs and landings a flight has, on which runway, and which of them is the tightest. Distances are those of the invented
 * tables of the example aircraft; the standard atmosphere loses 1.9812 C in 1,000 ft (ICAO Doc 7488); a wind is taken apart as on
 * the crosswind chart of FAA-H-8083-25. The choice among runways is common practice, no source.
 */
import type { AirfieldFact, RunwayFact } from '../../../src/rules/index.js';
import { headwindOn, runwayAt } from '../../../src/rules/packs/common/runway/choose.js';
import { workFields, type FieldWork, type ToFly } from '../../../src/rules/packs/common/runway/field-work.js';
import { conditionsOf, tightest, tooLong } from '../../../src/rules/packs/common/runway/held-against.js';
import { HOME_FIELD } from '../../../src/rules/workshop/base-sheet.js';
import { AIRCRAFT_TYPE, PERFORMANCE, WEATHER } from '../../../src/rules/workshop/records.js';

const RUNWAY: RunwayFact = { ...HOME_FIELD.runways[0]!, surface: 'paved', slopePercent: 0 };
const runway = (designator: string, lengthFt: number, of: Partial<RunwayFact> = {}): RunwayFact => ({
  ...RUNWAY,
  ...{ designator, lengthFt },
  ...of,
});
const field = (code: string, of: Partial<AirfieldFact> = {}): AirfieldFact => ({
  ...HOME_FIELD,
  ...{ id: code, code, elevationFt: 6000, runways: [runway('09', 9000)] },
  ...of,
});
const HOME = field('XQHB');
const AWAY = field('XQFR');
const STILL = {
  ...WEATHER,
  ...{ windFromDeg: null, windKt: 0, gustKt: null, temperatureC: 10, altimeterInHg: 29.92126, wet: false },
};

/** 2,000 lb at take-off, an hour at 9 US gal of 6 lb: 1,946 lb at the last landing. */
function work(
  route: AirfieldFact[],
  weather: Partial<ToFly['weather']> = {},
  fuelBurnUsGalPerHour: number | null = 9,
): FieldWork {
  return workFields({
    type: { ...AIRCRAFT_TYPE, fuelBurnUsGalPerHour },
    performance: PERFORMANCE,
    emptyLb: 1450,
    lbPerUsGal: 6,
    loading: { occupantsLb: 310, baggageLb: 0, fuelUsGal: 40, rowsLb: null, compartmentsLb: null },
    flight: { route, plannedTenths: 10, runways: null },
    weather: { ...STILL, ...weather },
  } as ToFly);
}
const told = ({ worked }: FieldWork) => worked.map((one) => [one.does, one.airfield.code, one.weightLb]);

describe('the runway of an airfield', () => {
  const two = { ...HOME, runways: [runway('09', 2000), runway('18', 3000, { trueHeadingDeg: 180 })] };
  const alike = [runway('18', 2000, { trueHeadingDeg: 180 }), runway('09', 2000)];
  const wind = (windFromDeg: number | null, windKt: number, gustKt: number | null = null) => ({
    ...{ windFromDeg, windKt, gustKt },
  });

  test.each([
    ['none told', null, '18'],
    ['a wind without a direction', wind(null, 8), '18'],
    ['calm, as a report writes it', wind(0, 0), '18'],
    ['calm, whatever direction goes with it', wind(90, 0), '18'],
    ['one knot along the shorter one', wind(90, 1), '09'],
    ['calm, with gusts along the shorter one', wind(90, 0, 1), '09'],
    ['calm, and no gusts told as nought', wind(90, 0, 0), '18'],
    ['gusts without a direction', wind(null, 0, 9), '18'],
  ] as const)('%s', (_, blows, designator) => {
    expect(runwayAt(two, null, blows)!.runway.designator).toBe(designator);
  });

  test.each([[alike], [[...alike].reverse()]])('of two as long the first by its number', (runways) => {
    expect(runwayAt({ ...HOME, runways }, null, null)!.runway.designator).toBe('09');
  });

  test('none on record, whatever blows', () => {
    for (const blows of [null, wind(90, 10)])
      expect(runwayAt({ ...HOME, runways: [] }, null, blows)).toBeNull();
  });

  // A wind from 98 blows along runway 09 of the example field, one from 278 from behind.
  test.each([
    [wind(98, 10), 10],
    [wind(98, 10, 20), 10],
    [wind(98, 0, 20), 0],
    [wind(278, 10), -10],
    [wind(278, 10, 20), -20],
    [wind(278, 0, 20), -20],
    [wind(null, 10, 20), -20],
    [wind(null, 10), -10],
    [wind(null, 0), 0],
    [null, 0],
  ])('%j along a runway: %d kt', (blows, alongKt) => {
    expect(headwindOn(runway('09', 2000, { trueHeadingDeg: 98 }), blows)).toBeCloseTo(alongKt, 9);
  });

  test('from ahead the steady wind counts, be it less than a knot', () => {
    // 5 kt from 84 degrees to the side: 0.52 kt from ahead.
    const along = headwindOn(runway('09', 2000, { trueHeadingDeg: 90 }), {
      ...{ windFromDeg: 174, windKt: 5, gustKt: 20 },
    });
    expect(along).toBeCloseTo(5 * Math.cos((84 * Math.PI) / 180), 9);
  });
});

describe('the take-offs and landings', () => {
  test('there and back: all but the last landing as heavy as the first take-off', () => {
    expect(told(work([HOME, AWAY, HOME]))).toEqual([
      ['takeoff', 'XQHB', 2000],
      ['takeoff', 'XQFR', 2000],
      ['landing', 'XQFR', 2000],
      ['landing', 'XQHB', 1946],
    ]);
  });

  test('where it is not on record what it burns, the last landing is as heavy too', () => {
    expect(told(work([HOME, AWAY], {}, null))).toEqual([
      ['takeoff', 'XQHB', 2000],
      ['landing', 'XQFR', 2000],
    ]);
  });

  test('three fields: the last landing is at the last', () => {
    const third = field('XQZZ');
    expect(told(work([HOME, AWAY, third])).slice(2)).toEqual([
      ['landing', 'XQFR', 2000],
      ['landing', 'XQZZ', 1946],
    ]);
  });

  test('each kind once at a field: the heaviest', () => {
    expect(told(work([HOME, HOME, HOME]))).toEqual([
      ['takeoff', 'XQHB', 2000],
      ['landing', 'XQHB', 2000],
    ]);
  });

  test('a route of one field has none', () => {
    expect(work([HOME])).toEqual({ worked: [], unknown: [] });
  });

  test('what is not known of a field is told once', () => {
    const bare = field('XQFR', { runways: [] });
    expect(work([HOME, bare, HOME]).unknown).toEqual(['no runway of XQFR is on record']);
  });

  // 2,600 ft lower: 5.151 C warmer. 2,548 ft: 5.048 C.
  test.each([
    [2600, 15.2],
    [2548, 15],
    [0, 10],
    [-1000, 10],
  ])('a field %i ft lower is taken to have %d C', (below, oatC) => {
    const home = field('XQHB', { elevationFt: 7000 });
    const { worked } = work([home, field('XQFR', { elevationFt: 7000 - below })]);
    expect(worked.map(({ at }) => at.oatC)).toEqual([10, oatC]);
  });

  test('a slope that is not on record is reckoned as none, and told', () => {
    const slope = field('XQHB', { runways: [runway('09', 9000, { slopePercent: null })] });
    const { worked } = work([slope, slope]);
    expect(worked.map(({ at, slopeKnown }) => [Math.abs(at.slopeAgainstPercent), slopeKnown])).toEqual([
      [0, false],
      [0, false],
    ]);
    expect(worked[0]!.at.slopeAgainstPercent).toBe(0);
    expect(conditionsOf({ worked, unknown: [] }, 1)).toEqual([
      'Find the slope of runway 09 at XQHB, and allow for it.',
    ]);
  });

  test.each([[null], [undefined]])(
    'whether it is wet is %p: the wet distance is worked out beside',
    (wet) => {
      for (const one of work([HOME, HOME], { wet }).worked) expect(one.ifWet).not.toBeNull();
      for (const one of work([HOME, HOME], { wet: true }).worked) expect(one.ifWet).toBeNull();
    },
  );
});

describe('of several', () => {
  const at = (code: string, lengthFt: number) => field(code, { runways: [runway('09', lengthFt)] });
  // 1,400 ft to take off and 1,200 ft to land on either.
  test.each([
    [1300, 1000, 'XQFR'],
    [1000, 1300, 'XQHB'],
  ])('runways of %i and %i ft: %s is too short by most', (here, there, code) => {
    const found = tooLong(work([at('XQHB', here), at('XQFR', there)]), 1)!;
    expect(found.airfield.code).toBe(code);
  });
  test('a landing may be too long by more than a take-off', () => {
    expect(tooLong(work([at('XQHB', 1399), at('XQFR', 1000)]), 1)).toMatchObject({ does: 'landing' });
  });

  test.each([
    [4000, 1500, 'landing'],
    [1500, 4000, 'takeoff'],
  ])('runways of %i and %i ft: the %s is the tightest', (here, there, does) => {
    expect(tightest(work([at('XQHB', here), at('XQFR', there)])).does).toBe(does);
  });
});
