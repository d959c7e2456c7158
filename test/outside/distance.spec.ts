/** Distances against published geodesics of the WGS 84 ellipsoid. */
import { distanceNm, farthestFromOrigin } from '../../src/rules/air/distance.js';

const at = (latitudeDeg: number, longitudeDeg: number) => ({ latitudeDeg, longitudeDeg });

// C. Karney's published geodesic test lines (GeographicLib, geodesic test cases): latitude, longitude, twice, and metres.
test.each([
  [35.60777, -139.44815, -11.17491, -69.95921, 8_935_244.5604],
  [55.52454, 106.05087, 77.03196, 197.18234, 4_105_086.1713],
  [-21.97856, 142.59065, 41.84138, 98.56635, 8_394_328.8946],
  [-17.42761, 173.34268, -15.84784, 5.93557, 16_076_603.1631],
  [-68.82867, -74.28391, -50.63005, -8.36685, 3_956_936.926],
  [-19.79938, -174.47484, -11.99349, -154.35109, 2_319_004.8601],
])('%d %d to %d %d', (latitude1, longitude1, latitude2, longitude2, metres) => {
  expect(distanceNm(at(latitude1, longitude1), at(latitude2, longitude2)) * 1852).toBeCloseTo(metres, 3);
});

// Lengths on WGS 84 that any geodesy text prints (from memory).
test.each([
  ['one degree of latitude at the equator', at(-0.5, 0), at(0.5, 0), 110_574.3],
  ['one degree of latitude at the pole', at(89, 0), at(90, 0), 111_694],
  ['one degree of longitude on the equator', at(0, 10), at(0, 11), 111_319.5],
  ['equator to pole', at(0, 0), at(90, 0), 10_001_965.7],
])('%s', (_, a, b, metres) => {
  expect(Math.abs(distanceNm(a, b) * 1852 - metres)).toBeLessThan(1);
});

test('the rules reference, whose figures stand on a sphere, to its tolerance (xc-01, xc-02)', () => {
  const far = farthestFromOrigin([at(40, -100), at(40.85, -100)]);
  expect(Math.abs(far!.nm - 51.03)).toBeLessThan(0.2);
  const near = farthestFromOrigin([at(40, -100), at(40.82, -100)]);
  expect(Math.abs(near!.nm - 49.23)).toBeLessThan(0.2);
  expect([far!.nm > 50, near!.nm > 50]).toEqual([true, false]);
});

test('from the origin, not leg by leg: out and back in short legs, and a return home', () => {
  const route = [at(40, -100), at(40.5, -100), at(40.9, -100), at(40.4, -100), at(40, -100)];
  expect(farthestFromOrigin(route)?.point).toBe(route[2]);
  expect(farthestFromOrigin([route[0]!])).toEqual({ nm: 0, point: route[0] });
  expect(farthestFromOrigin([])).toBeNull();
  // Of places equally far the first named: there and there again, and a flight that goes nowhere.
  expect(farthestFromOrigin([at(40, -100), route[2]!, at(40.9, -100)])?.point).toBe(route[2]);
  expect(farthestFromOrigin([route[0]!, at(40, -100)])?.point).toBe(route[0]);
});

test('across the date line it is near', () => {
  expect(distanceNm(at(0, 179.5), at(0, -179.5)) * 1852).toBeCloseTo(111_319.491, 1);
});

test('a place that is none is refused', () => {
  expect(() => distanceNm(at(91, 0), at(0, 0))).toThrow(RangeError);
  expect(() => distanceNm(at(0, Number.NaN), at(0, 0))).toThrow(RangeError);
});
