import type { Crew } from '../engine/crew.js';
import type { FactSheet } from '../facts/sheet.js';
import { crewWords, FLIGHT_MISSING, flightWords } from './shown/flight-fields.js';
import { fieldSays } from './shown/type-fields.js';
import type { Trace } from './trace.js';

/** What was taken from the flight as asked and from its crew, a few words each; what says nothing to people is left out. */
export function explainRequest(
  { flight, people, zone }: FactSheet,
  crew: Crew,
  trace: Pick<Trace, 'flight' | 'crew'>,
): string[] {
  const nameOf = (id: string): string => people[id]?.name ?? 'somebody';
  const ofCrew = crewWords(nameOf);
  const ofFlight = flightWords(nameOf, zone);
  return [
    ...(Object.keys(ofCrew) as (keyof Crew)[])
      .filter((field) => trace.crew.has(field))
      .map((field) => fieldSays(ofCrew, { picId: 'no pilot in command named' }, field, crew[field])),
    ...(Object.keys(ofFlight) as (keyof typeof ofFlight)[])
      .filter((field) => trace.flight.has(field))
      .map((field) => fieldSays(ofFlight, FLIGHT_MISSING, field, flight[field])),
  ].filter((said): said is string => said !== null);
}
