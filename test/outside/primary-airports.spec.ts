/**
 * The airports around which a transponder is needed (14 CFR part 91, appendix D, section 1) lie where an open table of airports
 * has them: airportsjs 0.3.1 (MIT), whose data are OpenFlights' and OurAirports'.
 */
import { readFileSync } from 'node:fs';
import { distanceNm } from '../../src/rules/air/distance.js';
import { PRIMARY_AIRPORTS } from '../../src/rules/packs/us/aircraft/equipment/primary-airports.js';

const airports = JSON.parse(readFileSync(require.resolve('airportsjs/airports.json'), 'utf8')) as {
  iata: string;
  latitude: number;
  longitude: number;
}[];
const table = new Map(airports.map((one) => [one.iata, one]));

/** A reference point is told to the second, 0.02 NM; tables differ in which point of the field they take. */
const NEAR_NM = 0.1;

test.each(PRIMARY_AIRPORTS.map((one) => [one.code, one] as const))('%s', (code, airport) => {
  const { latitude, longitude } = table.get(code)!;
  const nm = distanceNm(airport, { latitudeDeg: latitude, longitudeDeg: longitude });
  expect(nm).toBeLessThan(NEAR_NM);
});

test('each airport is listed once, with a name', () => {
  expect(new Set(PRIMARY_AIRPORTS.map(({ code }) => code)).size).toBe(PRIMARY_AIRPORTS.length);
  // Appendix D, section 1: as many as are named there (from memory: 36 outside the closed ones).
  expect(PRIMARY_AIRPORTS).toHaveLength(36);
  expect(PRIMARY_AIRPORTS.filter(({ city }) => !/^[A-Z]/.test(city))).toEqual([]);
});
