/**
 * The standard atmosphere against the table of ICAO Doc 7488 (and the US Standard Atmosphere, the same below 36,089 ft):
 * height in feet, pressure in inches of mercury, temperature in Celsius, density ratio. From memory.
 */
import {
  densityAltitudeFt,
  pressureAltitudeFt,
  standardPressureInHg,
  standardTemperatureC,
} from '../../src/rules/air/atmosphere.js';

const TABLE = [
  [0, 29.921, 15, 1],
  [1000, 28.856, 13.0, 0.9711],
  [2000, 27.821, 11.0, 0.9428],
  [5000, 24.896, 5.1, 0.8617],
  [10_000, 20.577, -4.8, 0.7385],
  [15_000, 16.886, -14.7, 0.6292],
  [20_000, 13.75, -24.6, 0.5328],
] as const;

test.each(TABLE)('%i ft', (heightFt, inHg, celsius, sigma) => {
  expect(Math.abs(standardPressureInHg(heightFt) - inHg)).toBeLessThan(0.002);
  expect(Math.abs(standardTemperatureC(heightFt) - celsius)).toBeLessThan(0.06);
  const ratio =
    standardPressureInHg(heightFt) / 29.92126 / ((standardTemperatureC(heightFt) + 273.15) / 288.15);
  expect(Math.abs(ratio - sigma)).toBeLessThan(0.0002);
});

test.each(TABLE)('in the standard atmosphere every altitude at %i ft is the height', (heightFt, inHg) => {
  expect(Math.abs(pressureAltitudeFt(0, inHg) - heightFt)).toBeLessThan(3);
  expect(Math.abs(densityAltitudeFt(heightFt, standardTemperatureC(heightFt)) - heightFt)).toBeLessThan(0.5);
});

test('hotter or lower pressure is always thinner air', () => {
  for (let oat = -30; oat < 45; oat += 5)
    expect(densityAltitudeFt(5000, oat + 5)).toBeGreaterThan(densityAltitudeFt(5000, oat));
  for (let inHg = 28; inHg < 31; inHg += 0.25)
    expect(pressureAltitudeFt(1000, inHg)).toBeGreaterThan(pressureAltitudeFt(1000, inHg + 0.25));
});

test('no air is left at 145,442 ft of the formula (288.15 K over 6.5 K a kilometre, 44,330.77 m)', () => {
  expect(pressureAltitudeFt(0, 0)).toBeCloseTo(288.15 / 0.0065 / 0.3048, 1);
});
