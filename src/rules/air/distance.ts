/** Straight-line distances: geodesics of the WGS 84 ellipsoid, in international nautical miles of 1,852 m. */
import geodesic from 'geographiclib-geodesic';

/** A position in degrees, north and east positive. */
export interface Position {
  latitudeDeg: number;
  longitudeDeg: number;
}

const METRES_PER_NM = 1852;
const earth = geodesic.Geodesic.WGS84;

/** Distance between two positions; throws RangeError when one is not on the earth. */
export function distanceNm(a: Position, b: Position): number {
  for (const { latitudeDeg, longitudeDeg } of [a, b])
    if (!(Math.abs(latitudeDeg) <= 90) || !Number.isFinite(longitudeDeg))
      throw new RangeError(`${latitudeDeg}, ${longitudeDeg} is no position`);
  const line = earth.Inverse(
    a.latitudeDeg,
    a.longitudeDeg,
    b.latitudeDeg,
    b.longitudeDeg,
    geodesic.Geodesic.DISTANCE,
  );
  return line.s12! / METRES_PER_NM;
}

/** The landing point farthest from where the flight began. */
export interface Farthest<P extends Position> {
  nm: number;
  point: P;
}

/**
 * The point of a route that lies farthest from its origin in a straight line: not the leg, nor the track flown (14 CFR
 * 61.1(b), 61.93). "More than 50 NM" is `nm > 50`. Null for a route without points; the origin itself for one of one.
 */
export function farthestFromOrigin<P extends Position>(route: readonly P[]): Farthest<P> | null {
  const origin = route[0];
  if (!origin) return null;
  let farthest: Farthest<P> = { nm: 0, point: origin };
  for (const point of route.slice(1)) {
    const nm = distanceNm(origin, point);
    if (nm > farthest.nm) farthest = { nm, point };
  }
  return farthest;
}
