/** Straight-line distance between airfields, where 14 CFR part 61 speaks of nautical miles from the airport of departure. */
import { distanceNm } from '../../../air/distance.js';
import type { AirfieldFact } from '../../../facts/flight.js';
import { need } from '../../../engine/unknown.js';

/** The airfield of departure, and the other airfields of the route with their distance from it. */
export function fromOrigin(route: readonly AirfieldFact[]): {
  origin: AirfieldFact;
  elsewhere: { field: AirfieldFact; nm: number }[];
  farthestNm: number;
} {
  const origin = need(route[0], 'flight.route', 'the flight names no airfield of departure');
  const elsewhere = route
    .filter((field) => field.id !== origin.id)
    .map((field) => ({ field, nm: distanceNm(origin, field) }));
  return { origin, elsewhere, farthestNm: Math.max(0, ...elsewhere.map(({ nm }) => nm)) };
}

/** Distance for a sentence: '38.2'. */
export const roundNm = (nm: number): string => nm.toFixed(1);
