import {
  alternateRequired,
  enduranceMinutes,
  fuelForUsGal,
  fuelMinutes,
  hasFuelFor,
} from '../../../src/rules/air/fuel.js';
import { vfrMinima } from '../../../src/rules/air/vfr-minima.js';
import type { AirspaceClass } from '../../../src/rules/facts/flight.js';
import { VFR_FIGURES, vfrFigures } from '../../../src/rules/parameters/us/weather.js';

const all = Object.values(VFR_FIGURES);
const figures = vfrFigures((id) => all.find((parameter) => parameter.id === id)!.values[0]!.value!);
const at = (airspace: AirspaceClass, msl: number | null, agl: number | null, night = false) =>
  vfrMinima({ airspace, altitudeFtMsl: msl, altitudeFtAgl: agl, night }, figures);

const CLEAR = { clearOfClouds: true, belowFt: null, aboveFt: null, horizontalFt: null, horizontalSm: null };
const STANDARD = {
  clearOfClouds: false,
  belowFt: 500,
  aboveFt: 1000,
  horizontalFt: 2000,
  horizontalSm: null,
};
const HIGH = {
  visibilitySm: 5,
  clearOfClouds: false,
  belowFt: 1000,
  aboveFt: 1000,
  horizontalFt: null,
  horizontalSm: 1,
};

// 14 CFR 91.155(a), row by row.
test.each([
  ['B', 4000, 2000, false, { visibilitySm: 3, ...CLEAR }],
  ['B', 12_000, 9000, false, { visibilitySm: 3, ...CLEAR }],
  ['C', 4000, 2000, false, { visibilitySm: 3, ...STANDARD }],
  ['D', 2000, 1000, true, { visibilitySm: 3, ...STANDARD }],
  ['D', 12_000, 1000, false, { visibilitySm: 3, ...STANDARD }],
  ['E', 9999, 5000, false, { visibilitySm: 3, ...STANDARD }],
  ['E', 10_000, 5000, false, HIGH],
  ['G', 1000, 1200, false, { visibilitySm: 1, ...CLEAR }],
  ['G', 12_000, 1200, false, { visibilitySm: 1, ...CLEAR }],
  ['G', 12_000, 1200, true, { visibilitySm: 3, ...STANDARD }],
  ['G', 6000, 1201, false, { visibilitySm: 1, ...STANDARD }],
  ['G', 6000, 1201, true, { visibilitySm: 3, ...STANDARD }],
  ['G', 10_000, 1201, false, HIGH],
  ['G', 10_000, 1201, true, HIGH],
] as const)('class %s at %i ft, %i above the surface, night %s', (airspace, msl, agl, night, wanted) => {
  expect(at(airspace, msl, agl, night)).toEqual(wanted);
});

test('an unknown height gets the strictest minima it may have', () => {
  expect(at('E', null, null)).toEqual(HIGH);
  expect(at('G', null, null)).toEqual(HIGH);
  expect(at('G', 6000, null)).toEqual({ visibilitySm: 1, ...STANDARD });
});

test('there is no VFR in class A (14 CFR 91.135)', () => {
  expect(at('A', 19_000, 15_000)).toBeNull();
});

describe('fuel', () => {
  // 14 CFR 91.151, 91.167; check values fu-01, fu-02, fu-03.
  test.each([
    [90, 0, 30, 120, 20],
    [90, 0, 45, 135, 22.5],
    [90, 25, 45, 160, 26.67],
  ])(
    '%i minutes, %i to the alternate, %i in reserve at 10 gal/h',
    (enroute, alternate, reserve, minutes, gallons) => {
      const need = fuelMinutes({
        enrouteMinutes: enroute,
        toAlternateMinutes: alternate,
        reserveMinutes: reserve,
      });
      expect(need).toBe(minutes);
      expect(fuelForUsGal(need, 10)).toBeCloseTo(gallons, 2);
    },
  );

  test('exactly enough is enough, whatever the decimals', () => {
    expect(hasFuelFor(120, 19.9, 10)).toBe(false);
    expect(hasFuelFor(120, 20, 10)).toBe(true);
    expect(hasFuelFor(66, 8.8, 8)).toBe(true);
    expect(hasFuelFor(66, 8.79, 8)).toBe(false);
    expect(enduranceMinutes(8.8, 8)).toBe(66);
  });
});

describe('the alternate (14 CFR 91.167(b)(2)(i), check value fu-05)', () => {
  const FIGURES = { ceilingFt: 2000, visibilitySm: 3, windowHours: 1 };
  const good = {
    approachPublished: true,
    ceilingFtAgl: 2000,
    visibilitySm: 3,
    coversHoursBefore: 1,
    coversHoursAfter: 1,
  };
  test('2,000 ft and 3 SM for an hour around arrival need none', () => {
    expect(alternateRequired(good, FIGURES)).toBe(false);
  });
  test.each([
    ['a lower ceiling', { ceilingFtAgl: 1900 }],
    ['less visibility', { visibilitySm: 2.5 }],
    ['no published approach', { approachPublished: false }],
    ['an approach not known', { approachPublished: null }],
    ['a ceiling not known', { ceilingFtAgl: null }],
    ['a visibility not known', { visibilitySm: null }],
    ['a forecast that begins late', { coversHoursBefore: 0.5 }],
    ['a forecast that ends early', { coversHoursAfter: 0.5 }],
  ])('%s needs one', (_, change) => {
    expect(alternateRequired({ ...good, ...change }, FIGURES)).toBe(true);
  });
  test('what is not known needs one, even where the figures ask for nothing', () => {
    const nothing = { ceilingFt: 0, visibilitySm: 0, windowHours: 1 };
    const fog = { ...good, ceilingFtAgl: 0, visibilitySm: 0 };
    expect(alternateRequired(fog, nothing)).toBe(false);
    expect(alternateRequired({ ...fog, ceilingFtAgl: null }, nothing)).toBe(true);
    expect(alternateRequired({ ...fog, visibilitySm: null }, nothing)).toBe(true);
  });
});
