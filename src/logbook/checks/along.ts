import geodesic from 'geographiclib-geodesic';
import type { Place } from '../../rules/sky/sun.js';

const earth = geodesic.Geodesic.WGS84;

/** The place a part of the way along the geodesic from one place to another; `done` from 0 to 1. */
export function along(from: Place, to: Place): (done: number) => Place {
  const line = earth.InverseLine(from.latitudeDeg, from.longitudeDeg, to.latitudeDeg, to.longitudeDeg);
  const length = line.s13;
  // Two airfields at one place: the line has no direction.
  if (!(length > 0)) return () => from;
  return (done) => {
    const { lat2, lon2 } = line.Position(done * length);
    return { latitudeDeg: lat2!, longitudeDeg: lon2! };
  };
}
