/** Part 91, appendix D: which listed airport is near. */
import {
  nearestPrimary,
  type PrimaryAirport,
} from '../../../src/rules/packs/us/aircraft/equipment/primary-airports.js';
import { HOME_FIELD } from '../../../src/rules/workshop/base-sheet.js';

const airport = (code: string, latitudeDeg: number, longitudeDeg: number): PrimaryAirport => ({
  code,
  latitudeDeg,
  longitudeDeg,
  city: code,
});
const field = (code: string, latitudeDeg: number, longitudeDeg: number) => ({
  ...HOME_FIELD,
  code,
  latitudeDeg,
  longitudeDeg,
});

test('a field farther on does not take the place of the nearer one', () => {
  const nearest = nearestPrimary(
    [field('XQNR', 40, -105), field('XQFR', 43, -107)],
    [airport('AAA', 40.2, -105)],
  );
  expect(nearest?.field.code).toBe('XQNR');
});

test('of two alike the first is named, field and airport', () => {
  const nearest = nearestPrimary(
    [field('XQA1', 40, -105), field('XQA2', 40, -105)],
    [airport('AAA', 40, -104), airport('BBB', 40, -106)],
  );
  expect([nearest?.field.code, nearest?.airport.code]).toEqual(['XQA1', 'AAA']);
});

// On the equator a degree of longitude is 60.1 NM and one of latitude 59.7 NM, the least there is.
test('an airport due north is not passed over', () => {
  const nearest = nearestPrimary([field('XQEQ', 0, 0)], [airport('EST', 0, 1), airport('NTH', 1, 0)]);
  expect(nearest?.airport.code).toBe('NTH');
  expect(nearest?.nm).toBeCloseTo(59.705, 3);
});
