/** The flight as it is asked for. */
import { distanceNm, farthestFromOrigin } from '../../air/distance.js';
import { UnknownFact } from '../../engine/unknown.js';
import type { AirfieldFact, RunwayFact } from '../../facts/flight.js';
import { isPlace } from '../../sky/sun.js';
import { tell } from '../unknowns.js';
import type { Entry, Reading } from './entry.js';

const PURPOSES = ['solo', 'passengers', 'dual', 'checkout', 'maintenance', 'ferry-to-inspection'] as const;

export const FLIGHT: readonly Entry[] = [
  {
    name: 'purpose',
    type: 'string',
    words: PURPOSES,
    says: 'What the flight is for.',
    get: ({ flight }) => flight.purpose,
  },
  {
    name: 'rules',
    type: 'string',
    words: ['VFR', 'IFR'],
    says: 'Flight rules.',
    get: ({ flight }) => flight.flightRules,
  },
  {
    name: 'personsOnBoard',
    type: 'int',
    range: [0, 1000],
    says: 'Everybody aboard, pilots included.',
    get: ({ flight }) => flight.personsOnBoard,
  },
  {
    name: 'passengers',
    type: 'int',
    range: [0, 1000],
    says: 'Those aboard who neither fly, teach nor are required crew.',
    get: ({ crew }) => crew.passengers,
  },
  {
    name: 'instruction',
    type: 'bool',
    says: 'Instruction is given, so the instructor is pilot in command.',
    get: ({ crew }) => crew.instruction,
  },
  {
    name: 'instructorNamed',
    type: 'bool',
    says: 'An instructor is named.',
    get: ({ flight }) => flight.instructorId !== null,
  },
  {
    name: 'alone',
    type: 'bool',
    says: 'The pilot is alone aboard.',
    get: ({ crew }) => crew.alone,
  },
  {
    name: 'twoPilots',
    type: 'bool',
    says: 'A second rated pilot is named.',
    get: ({ flight }) => flight.secondPilotId !== null,
  },
  {
    name: 'forHire',
    type: 'bool',
    says: 'Somebody or something is carried for payment.',
    get: ({ flight }) => flight.forHire,
  },
  {
    name: 'hours',
    type: 'double',
    unit: 'h',
    range: [0, 100_000],
    says: 'Planned hours on the meter that inspections count by.',
    get: ({ flight }) => flight.plannedTenths / 10,
  },
  {
    name: 'durationHours',
    type: 'double',
    unit: 'h',
    range: [0, 100_000],
    says: 'From departure to arrival, stops included.',
    get: ({ moment }) => moment.durationSeconds / 3600,
  },
  {
    name: 'from',
    type: 'string',
    says: 'Code of the airfield of departure.',
    get: (r) => field(r, 0).code,
  },
  {
    name: 'to',
    type: 'string',
    says: 'Code of the airfield of destination.',
    get: (r) => field(r, -1).code,
  },
  {
    name: 'airfields',
    type: 'list<string>',
    says: 'Codes of all airfields of the route, each once.',
    get: ({ flight }) => [...new Set(flight.route.map((one) => one.code))],
  },
  {
    name: 'landings',
    type: 'int',
    range: [0, 100],
    says: 'Landings planned, the last one included.',
    get: ({ flight }) => Math.max(0, flight.route.length - 1),
  },
  {
    name: 'distanceNm',
    type: 'double',
    unit: 'NM',
    range: [0, 1_000_000],
    says: 'Length of the route, straight from airfield to airfield.',
    get: (r) =>
      places(r).reduce((sum, place, at, all) => sum + (at ? distanceNm(all[at - 1]!, place) : 0), 0),
  },
  {
    name: 'farthestNm',
    type: 'double',
    unit: 'NM',
    range: [0, 11_000],
    says: 'Straight distance from the airfield of departure to the farthest airfield of the route.',
    get: (r) => farthestFromOrigin(places(r))!.nm,
  },
  {
    name: 'shortestRunwayFt',
    type: 'int',
    unit: 'ft',
    range: [0, 30_000],
    says: 'The longest runway of each airfield of the route; the shortest of those.',
    get: (r) => Math.min(...runways(r).map((of) => Math.max(...of.map((one) => one.lengthFt)))),
  },
  {
    name: 'unpavedOnly',
    type: 'bool',
    says: 'Some airfield of the route has no paved runway.',
    get: (r) => runways(r).some((of) => of.every((one) => one.surface !== 'paved')),
  },
  {
    name: 'unlitOnly',
    type: 'bool',
    says: 'Some airfield of the route has no lit runway.',
    get: (r) => runways(r).some((of) => of.every((one) => !one.lit)),
  },
  {
    name: 'highestAirfieldFt',
    type: 'double',
    unit: 'ft',
    range: [-2000, 30_000],
    says: 'Elevation of the highest airfield of the route.',
    get: (r) => Math.max(...route(r).map((one) => one.elevationFt)),
  },
  {
    name: 'altitudeFt',
    type: 'int',
    unit: 'ft above mean sea level',
    range: [-2000, 100_000],
    toldLate: true,
    says: 'Highest altitude planned.',
    get: ({ flight }) =>
      tell(flight.maxAltitudeFtMsl, 'flight.altitudeFt', 'the highest altitude is not told'),
  },
  {
    name: 'airspace',
    type: 'list<string>',
    words: ['A', 'B', 'C', 'D', 'E', 'G'],
    toldLate: true,
    says: 'Classes of airspace on the way.',
    get: ({ flight }) => tell(flight.airspace, 'flight.airspace', 'the airspace on the way is not told'),
  },
];

function route({ flight }: Reading): readonly AirfieldFact[] {
  if (flight.route.length === 0) throw new UnknownFact('flight.route', 'the flight names no airfield');
  return flight.route;
}

const field = (r: Reading, at: number): AirfieldFact => route(r).at(at)!;

function places(r: Reading): readonly AirfieldFact[] {
  const lost = route(r).find((one) => !isPlace(one));
  if (lost) throw new UnknownFact('flight.route', `where ${lost.name} lies is not on record`);
  return r.flight.route;
}

function runways(r: Reading): readonly (readonly RunwayFact[])[] {
  return route(r).map((one) => {
    if (one.runways.length === 0)
      throw new UnknownFact('flight.route', `no runway of ${one.name} is on record`);
    return one.runways;
  });
}
