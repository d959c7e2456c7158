/** Remedies that change the request itself, by the names all rules share. */
import type { Remedy } from '../../../engine/remedy.js';
import { grouped } from '../../../explain/words.js';
import type { AirspaceClass, FlightFacts } from '../../../facts/flight.js';

/** Fly the same flight under visual flight rules. */
export const CHANGE_TO_VFR: Remedy = {
  act: 'change-to-vfr',
  title: 'Fly under visual flight rules.',
  by: 'member',
  effects: [{ op: 'flight', fields: { flightRules: 'VFR' } }],
};

/** Carry nobody and nothing for payment. */
export const FLY_WITHOUT_HIRE: Remedy = {
  act: 'fly-without-hire',
  title: 'Carry nobody and nothing for payment.',
  by: 'member',
  effects: [{ op: 'flight', fields: { forHire: false } }],
};

/** Carry fewer people. */
export function takeFewerPassengers(flight: Pick<FlightFacts, 'personsOnBoard'>, tooMany: number): Remedy {
  return {
    act: 'take-fewer-passengers',
    title: `Leave ${tooMany === 1 ? 'one person' : `${tooMany} persons`} behind.`,
    by: 'member',
    effects: [{ op: 'flight', fields: { personsOnBoard: flight.personsOnBoard - tooMany } }],
  };
}

/** Plan the flight no higher than a limit. */
export function stayAtOrBelow(limitFt: number): Remedy {
  return {
    act: 'stay-low',
    title: `Plan the flight at or below ${grouped(limitFt)} ft above mean sea level.`,
    by: 'member',
    effects: [{ op: 'flight', fields: { maxAltitudeFtMsl: limitFt } }],
  };
}

/** Plan the flight no faster than a limit. */
export function stayAtOrUnder(limitKias: number): Remedy {
  return {
    act: 'stay-slow',
    title: `Plan the flight at ${limitKias} knots indicated or less.`,
    by: 'member',
    effects: [{ op: 'flight', fields: { maxSpeedKias: limitKias } }],
  };
}

/** Plan the flight around some classes of airspace. */
export function keepOutOf(planned: readonly AirspaceClass[], closed: readonly AirspaceClass[]): Remedy {
  return {
    act: 'keep-out-of-airspace',
    title: `Plan the flight clear of class ${closed.join(', ')} airspace.`,
    by: 'member',
    effects: [{ op: 'flight', fields: { airspace: planned.filter((one) => !closed.includes(one)) } }],
  };
}

/** Stay around the airfield of departure. */
export function stayLocal(route: FlightFacts['route']): Remedy {
  const origin = route[0]!;
  return {
    act: 'stay-local',
    title: `Stay around ${origin.code} and land nowhere else.`,
    by: 'member',
    effects: [{ op: 'flight', fields: { route: [origin, origin] } }],
  };
}
