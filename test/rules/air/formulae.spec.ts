/** Formulae against worked examples. FAA-H-8083-25 values are recalled from its charts: from memory. */
import {
  densityAltitudeByRuleFt,
  densityAltitudeFt,
  pressureAltitudeByRuleFt,
  pressureAltitudeFt,
} from '../../../src/rules/air/atmosphere.js';
import { mustAbort, takeoffCheck } from '../../../src/rules/air/takeoff-check.js';
import {
  bankForRateDeg,
  loadFactor,
  stallSpeedFactor,
  standardRateBankByRuleDeg,
  turnRadiusFt,
} from '../../../src/rules/air/turn.js';
import { bestRunway, windComponents } from '../../../src/rules/air/wind.js';
import type { RunwayFact } from '../../../src/rules/facts/flight.js';

const runway = (designator: string, trueHeadingDeg: number): RunwayFact => ({
  designator,
  trueHeadingDeg,
  lengthFt: 4000,
  surface: 'paved',
  lit: true,
});

describe('wind components', () => {
  // Trigonometry; check values wi-01, wi-02, wi-04.
  test.each([
    [270, 310, 20, 15.32, 12.86],
    [20, 350, 20, 17.32, -10],
    [360, 90, 15, 0, 15],
    [90, 270, 12, -12, 0],
    [10, 360, 10, 9.85, -1.74],
  ])('runway %i, wind %i at %i kt', (runwayDeg, from, kt, headwindKt, crosswindKt) => {
    const found = windComponents(runwayDeg, from, kt);
    expect(found.headwindKt).toBeCloseTo(headwindKt, 2);
    expect(found.crosswindKt).toBeCloseTo(crosswindKt, 2);
  });

  test('the handbook chart: 40 degrees off at 30 kt gives 23 along and 19 across (from memory)', () => {
    const found = windComponents(0, 40, 30);
    expect(Math.round(found.headwindKt)).toBe(23);
    expect(Math.round(found.crosswindKt)).toBe(19);
  });
});

describe('the best runway', () => {
  const four = [runway('09', 90), runway('27', 270), runway('18', 180), runway('36', 360)];
  test('the one most into the wind, whatever their order', () => {
    for (const runways of [four, [...four].reverse()])
      expect(bestRunway(runways, { fromDegTrue: 280, kt: 10, gustKt: null })?.runway.designator).toBe('27');
  });
  test('straight across, the first by name, with no tailwind', () => {
    const best = bestRunway([four[1]!, four[0]!], { fromDegTrue: 360, kt: 10, gustKt: null });
    expect(best?.runway.designator).toBe('09');
    expect(Math.abs(best!.crosswindKt)).toBeCloseTo(10, 9);
  });
  test('a little wind from behind loses to more wind across', () => {
    const best = bestRunway([runway('27', 270), runway('36', 360)], {
      fromDegTrue: 80,
      kt: 10,
      gustKt: null,
    });
    expect(best?.runway.designator).toBe('36');
  });
  test('straight down two parallel runways, the first by name', () => {
    const parallel = [runway('27R', 270), runway('27L', 270)];
    for (const runways of [parallel, [...parallel].reverse()])
      expect(bestRunway(runways, { fromDegTrue: 270, kt: 10, gustKt: null })?.runway.designator).toBe('27L');
  });
  test('half across, the one into the wind before the one with less of it', () => {
    const crossing = [runway('36', 360), runway('09', 90)];
    for (const runways of [crossing, [...crossing].reverse()])
      expect(bestRunway(runways, { fromDegTrue: 50, kt: 20, gustKt: null })?.runway.designator).toBe('09');
  });
  test('a knot less across decides', () => {
    // 20 kt from 40 degrees: 12.9 across runway 36, 12.2 across runway 01 (0.7 less).
    const near = [runway('36', 360), runway('36A', 2.5)];
    for (const runways of [near, [...near].reverse()])
      expect(bestRunway(runways, { fromDegTrue: 40, kt: 20, gustKt: null })?.runway.designator).toBe('36A');
  });
  test('straight across comes before anything from behind, be it half a knot', () => {
    const north = { fromDegTrue: 360, kt: 10, gustKt: null };
    for (const other of [runway('18', 180), runway('09B', 93)])
      for (const runways of [
        [runway('09', 90), other],
        [other, runway('09', 90)],
      ])
        expect(bestRunway(runways, north)?.runway.designator).toBe('09');
  });
  test('where the wind is from behind on each, the one with the least across', () => {
    const oneWay = [runway('12', 120), runway('09', 90)];
    for (const runways of [oneWay, [...oneWay].reverse()])
      expect(bestRunway(runways, { fromDegTrue: 270, kt: 10, gustKt: null })?.runway.designator).toBe('09');
  });
  test('headings of 0 and 360 degrees are the same, from wherever the wind comes', () => {
    for (let from = 0; from < 360; from += 1)
      for (const [left, right] of [
        [0, 360],
        [360, 0],
      ] as const) {
        const parallel = [runway('36R', right), runway('36L', left)];
        expect(bestRunway(parallel, { fromDegTrue: from, kt: 17, gustKt: null })?.runway.designator).toBe(
          '36L',
        );
      }
  });
  test('in a calm nothing blows across', () => {
    expect(bestRunway([four[3]!], { fromDegTrue: 90, kt: 0, gustKt: null })?.crosswindKt).toBe(0);
    expect(bestRunway(four, { fromDegTrue: null, kt: 0, gustKt: null })?.crosswindKt).toBe(0);
  });
  test('gusts count, lulls do not', () => {
    expect(bestRunway([four[3]!], { fromDegTrue: 90, kt: 8, gustKt: 17 })?.crosswindKt).toBeCloseTo(17, 9);
    expect(bestRunway([four[3]!], { fromDegTrue: 90, kt: 8, gustKt: 5 })?.crosswindKt).toBeCloseTo(8, 9);
  });
  test('without a direction all of it is across; without a runway there is none', () => {
    expect(bestRunway(four, { fromDegTrue: null, kt: 9, gustKt: null })).toMatchObject({
      headwindKt: 0,
      crosswindKt: 9,
    });
    expect(bestRunway([], { fromDegTrue: 10, kt: 9, gustKt: null })).toBeNull();
  });
});

describe('pressure and density altitude', () => {
  // Check values da-01, da-02, da-03 (ICAO constants), and rules of thumb.
  test.each([
    [0, 29.92126, 15, 0, 0, -1, -2],
    [5000, 29.92, 30, 5001, 7802, 5000, 7988],
    [5330, 30.3, 35, 4982, 8306, 4950, 8526],
  ])('%i ft, %d inHg, %i C', (elevation, altimeter, oat, pa, da, rulePa, ruleDa) => {
    const exact = pressureAltitudeFt(elevation, altimeter);
    expect(Math.abs(exact - pa)).toBeLessThan(2);
    expect(Math.abs(densityAltitudeFt(exact, oat) - da)).toBeLessThan(2);
    const byRule = pressureAltitudeByRuleFt(elevation, altimeter);
    expect(Math.abs(byRule - rulePa)).toBeLessThan(1);
    expect(Math.abs(densityAltitudeByRuleFt(byRule, oat) - ruleDa)).toBeLessThan(2);
  });

  test('an inch of pressure is worth about a thousand feet near sea level, more higher up', () => {
    expect(pressureAltitudeFt(0, 28.92126)).toBeGreaterThan(920);
    expect(pressureAltitudeFt(0, 28.92126)).toBeLessThan(1000);
  });

  test('the rules of thumb exactly: 1,000 ft an inch, 120 ft a degree, 1.98 degrees a thousand feet', () => {
    expect(pressureAltitudeByRuleFt(1000, 28.92)).toBeCloseTo(2000, 6);
    expect(densityAltitudeByRuleFt(5000, 15)).toBeCloseTo(5000 + 120 * 9.9, 6);
  });

  test('the rule of thumb reads high when hot', () => {
    expect(densityAltitudeByRuleFt(5000, 30) - densityAltitudeFt(5000, 30)).toBeGreaterThan(150);
  });
});

describe('turns', () => {
  // FAA-H-8083-25 load factor chart: 30, 45, 60, 80 degrees (from memory).
  test.each([
    [0, 1, 1],
    [30, 1.155, 1.075],
    [45, 1.414, 1.189],
    [60, 2, 1.414],
    [80, 5.76, 2.4],
  ])('at %i degrees of bank', (bank, factor, stall) => {
    expect(loadFactor(bank)).toBeCloseTo(factor, 2);
    expect(loadFactor(-bank)).toBeCloseTo(factor, 2);
    expect(stallSpeedFactor(bank)).toBeCloseTo(stall, 2);
  });

  test.each([
    [90, 13.89, 14],
    [120, 18.24, 17],
  ])('standard rate at %i kt', (ktas, bank, rule) => {
    expect(bankForRateDeg(ktas)).toBeCloseTo(bank, 1);
    expect(standardRateBankByRuleDeg(ktas)).toBe(rule);
  });

  test('radius of turn at 120 kt and 30 degrees is 2,208 ft', () => {
    expect(Math.abs(turnRadiusFt(120, 30) - 2208)).toBeLessThan(2);
    // A knot is 1,852 m an hour exactly: v^2 / (g tan 30) with g = 9.80665 m/s^2, in feet of 0.3048 m.
    expect(turnRadiusFt(120, 30)).toBeCloseTo(
      61.7333333 ** 2 / (9.80665 * Math.tan(Math.PI / 6)) / 0.3048,
      3,
    );
  });

  test('the handbook, which divides by 11.26 tan(bank), is three in a thousand above physics (from memory)', () => {
    const handbookFt = 120 ** 2 / (11.26 * Math.tan(Math.PI / 6));
    expect(handbookFt).toBeCloseTo(2215, 0);
    expect(Math.abs(turnRadiusFt(120, 30) / handbookFt - 1)).toBeLessThan(0.004);
  });

  test('no level turn on the wing tip, no radius with wings level', () => {
    expect(() => loadFactor(90)).toThrow(RangeError);
    expect(loadFactor(89.5)).toBeCloseTo(114.6, 1);
    expect(() => turnRadiusFt(100, 0)).toThrow(RangeError);
  });
});

describe('the half-way check (common practice, no source)', () => {
  test('70% by half the runway', () => {
    expect(takeoffCheck(3000, 55)).toEqual({ checkDistanceFt: 1500, minimumKt: 38.5 });
    const check = takeoffCheck(2500, 60);
    expect(check.minimumKt).toBe(42);
    expect([41, 41.9, 42, 43].map((speed) => mustAbort(check, speed))).toEqual([true, true, false, false]);
  });
});
