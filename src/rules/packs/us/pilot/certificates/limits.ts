/** Limits that recreational and sport pilots share, each as a shortfall with its cures (14 CFR 61.101(e), 61.315(c)). */
import { grouped } from '../../../../explain/words.js';
import type { Moment } from '../../../../engine/moment.js';
import type { Parameters } from '../../../../engine/parameters.js';
import type { FactView } from '../../../../engine/rule.js';
import type { AirspaceClass } from '../../../../facts/flight.js';
import type { EndorsementFact, EndorsementKind } from '../../../../facts/person.js';
import { declaredVisibilitySm, VISIBILITY_PARAMETERS } from '../../flight/declared-weather.js';
import { endorsementFor, getEndorsement } from '../../../common/people/endorsements.js';
import {
  CHANGE_TO_VFR,
  FLY_WITHOUT_HIRE,
  keepOutOf,
  stayAtOrBelow,
  takeFewerPassengers,
} from '../../../common/shared/flight-changes.js';
import { NO_CURE, type Shortfall } from '../../../common/people/shortfalls.js';

type Request = Pick<FactView, 'flight' | 'crew'>;

/** What is found wrong, and what must hold before departure. */
export interface Found {
  shortfalls: Shortfall[];
  conditions: string[];
}

export function tooManyPassengers({ flight, crew }: Request, most: number): Shortfall[] {
  const tooMany = crew.passengers - most;
  if (tooMany <= 0) return [];
  const what = `${crew.passengers} passengers are planned, more than ${most}`;
  return [{ what, cures: () => [takeFewerPassengers(flight, tooMany)] }];
}

export function hireOrInstruments({ flight }: Request): Shortfall[] {
  const found: Shortfall[] = [];
  if (flight.forHire) found.push({ what: 'the flight is for hire', cures: () => [FLY_WITHOUT_HIRE] });
  if (flight.flightRules === 'IFR')
    found.push({ what: 'the flight is not in sight of the surface', cures: () => [CHANGE_TO_VFR] });
  return found;
}

/** The higher of an altitude and a height: over the highest airfield of the route the height is known, elsewhere not. */
export function altitude({ flight }: Request, mslFt: number, aglFt: number): Found {
  const limit = `${grouped(mslFt)} ft above mean sea level, or ${grouped(aglFt)} ft above the surface where that is higher`;
  const { maxAltitudeFtMsl: planned } = flight;
  if (planned === null) return { shortfalls: [], conditions: [`Stay at or below ${limit}.`] };
  if (planned <= mslFt) return { shortfalls: [], conditions: [] };
  const highest = Math.max(...flight.route.map(({ elevationFt }) => elevationFt)) + aglFt;
  if (planned <= highest) return { shortfalls: [], conditions: [`Stay at or below ${limit}.`] };
  return {
    shortfalls: [
      { what: `${grouped(planned)} ft is planned, above ${limit}`, cures: () => [stayAtOrBelow(mslFt)] },
    ],
    conditions: [],
  };
}

export { VISIBILITY_PARAMETERS };

/** Visibility as declared lately enough; that the surface stays in sight nobody can declare, so it is a condition. */
export function visibility({ flight }: Request, leastSm: number, moment: Moment, p: Parameters): Found {
  const declared = declaredVisibilitySm(flight.weather, moment, p);
  if (declared === null) {
    const condition = `Make sure of ${leastSm} statute miles visibility, and keep the surface in sight all the way.`;
    return { shortfalls: [], conditions: [condition] };
  }
  if (declared >= leastSm) return { shortfalls: [], conditions: ['Keep the surface in sight all the way.'] };
  const what = `the visibility is ${declared} statute miles, less than ${leastSm}; wait for better weather`;
  return { shortfalls: [{ what, cures: NO_CURE }], conditions: [] };
}

/** Class A is closed; B, C and D, and airfields with a tower, need training and an endorsement. */
export function airspace(
  { flight }: Request,
  endorsements: readonly EndorsementFact[],
  kind: EndorsementKind,
  moment: Moment,
): Found {
  const trained = endorsementFor(endorsements, moment, { kind });
  const closed: AirspaceClass[] = trained ? ['A'] : ['A', 'B', 'C', 'D'];
  if (flight.airspace === null) {
    const rest = trained ? '' : ' and of airfields with a control tower';
    return { shortfalls: [], conditions: [`Stay clear of class ${closed.join(', ')} airspace${rest}.`] };
  }
  const entered = closed.filter((one) => flight.airspace!.includes(one));
  if (entered.length === 0) return { shortfalls: [], conditions: [] };
  const what = `class ${entered.join(', ')} airspace is planned without the training for it`;
  const planned = flight.airspace;
  const title = 'Train with an instructor in controlled airspace and be endorsed.';
  const cures = () => [
    keepOutOf(planned, entered),
    ...(entered.includes('A') ? [] : getEndorsement(moment, { kind }, title)),
  ];
  return { shortfalls: [{ what, cures }], conditions: [] };
}

/** Several findings as one. */
export function together(...parts: Found[]): Found {
  return {
    shortfalls: parts.flatMap((part) => part.shortfalls),
    conditions: parts.flatMap((part) => part.conditions),
  };
}
