/** Which rating of Part-FCL an aircraft asks for. */
import type { Moment } from '../../../engine/moment.js';
import type { AircraftType } from '../../../facts/aircraft.js';
import type { RatingFact, RatingKind } from '../../../facts/person.js';
import { isMotorGlider } from '../licence/standing.js';

/** The kind of rating, and for a type rating the type. */
export interface RatingWanted {
  kind: RatingKind;
  designator: string | null;
}

/**
 * Types that need a type rating, helicopters, and turbine aeroplanes (whose class ratings are by manufacturer) ask for the
 * rating of the type; the others for a class rating. Null where no rating is known for the aircraft.
 */
export function ratingFor(type: AircraftType): RatingWanted | null {
  if (isMotorGlider(type)) return { kind: 'touring-motor-glider', designator: null };
  if (type.typeRating !== null) return { kind: 'type', designator: type.typeRating };
  if (type.category === 'rotorcraft' || type.turbine)
    return { kind: 'type', designator: type.typeDesignator };
  switch (type.class) {
    case 'single-engine-land':
      return { kind: 'single-engine-piston-land', designator: null };
    case 'single-engine-sea':
      return { kind: 'single-engine-piston-sea', designator: null };
    case 'multi-engine-land':
      return { kind: 'multi-engine-piston-land', designator: null };
    case 'multi-engine-sea':
      return { kind: 'multi-engine-piston-sea', designator: null };
    default:
      return null;
  }
}

/** 'single engine piston land', 'type WREN'. */
export const ratingWords = ({ kind, designator }: RatingWanted): string =>
  designator === null ? kind.replaceAll('-', ' ') : `${kind} ${designator}`;

/** Ratings of the kind wanted that were issued by the flight, the one that ends last first; of two the first by id. */
export function ratingsOf(
  ratings: readonly RatingFact[],
  wanted: RatingWanted,
  moment: Moment,
): RatingFact[] {
  const end = ({ validThrough }: RatingFact): string => validThrough ?? '9999-12-31';
  return ratings
    .filter(
      (one) =>
        one.kind === wanted.kind && (wanted.designator === null || one.designator === wanted.designator),
    )
    .filter(({ on }) => moment.startsOnOrAfter(on))
    .sort((a, b) => (end(a) !== end(b) ? (end(a) < end(b) ? 1 : -1) : a.id < b.id ? -1 : 1));
}

/** Class ratings of single-pilot single-engine piston aeroplanes and touring motor gliders. */
export const isSingleEngine = ({ kind }: RatingWanted): boolean =>
  kind === 'single-engine-piston-land' ||
  kind === 'single-engine-piston-sea' ||
  kind === 'touring-motor-glider';
