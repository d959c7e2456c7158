import { distanceNm } from '../../rules/air/distance.js';
import type { AircraftCategory, AircraftClass } from '../../rules/facts/person.js';
import type { Placed } from './check.js';

/**
 * Ground speed that no aircraft of the kind exceeds, tail wind included, in knots (common practice, no source). Set high
 * on purpose: what is flagged by it is out of the question, not only unusual.
 */
const FASTEST_KT: Record<Exclude<AircraftCategory, 'airplane' | 'rotorcraft'>, number> = {
  glider: 220,
  'lighter-than-air': 150,
  'powered-lift': 400,
};
const FASTEST_OF_CLASS_KT: Partial<Record<AircraftClass, number>> = {
  'single-engine-land': 400,
  'single-engine-sea': 400,
  'multi-engine-land': 650,
  'multi-engine-sea': 650,
  helicopter: 220,
  gyroplane: 150,
};
const FASTEST_OF_ALL_KT = 650;

/** Ground speed that no aircraft of the kind exceeds, knots. */
export const fastestKt = (of: { category: AircraftCategory; class: AircraftClass }): number =>
  of.category === 'airplane' || of.category === 'rotorcraft'
    ? (FASTEST_OF_CLASS_KT[of.class] ?? FASTEST_OF_ALL_KT)
    : FASTEST_KT[of.category];

const HOUR = 3600;
const NM_PER_DEGREE = 60;

/** How far an aircraft can be from where it would be on the straight way at an even speed. */
export interface Reach {
  /** From end to end along the straight way. */
  distanceNm: number;
  /** Seconds that the straight way takes at the very least. */
  leastSeconds: number;
  /** Part of the way done, 0 to 1, and how far off it the aircraft can be, in degrees of a great circle. */
  at(seconds: number): { done: number; strayDeg: number };
}

/**
 * The aircraft is nowhere that it cannot have come to from the first airfield, nor from where it cannot come to the last.
 * A sun's altitude differs between two places by no more degrees than lie between them, so this bounds the night, too.
 */
export function reachOf(flown: Placed): Reach {
  const nm = distanceNm(flown.from.at, flown.to.at);
  const kt = fastestKt(flown);
  const seconds = flown.arrives - flown.departs;
  return {
    distanceNm: nm,
    leastSeconds: (nm / kt) * HOUR,
    at(since) {
      const done = seconds > 0 ? since / seconds : 0;
      const out = (kt * since) / HOUR + done * nm;
      const home = (kt * (seconds - since)) / HOUR + (1 - done) * nm;
      return { done, strayDeg: Math.min(out, home) / NM_PER_DEGREE };
    },
  };
}
