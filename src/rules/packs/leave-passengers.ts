import type { Crew } from '../engine/crew.js';
import type { Remedy } from '../engine/remedy.js';
import type { FlightFacts } from '../facts/flight.js';

/** The request and who is who on it, as every rule has them at hand. */
interface Request {
  flight: Pick<FlightFacts, 'purpose' | 'memberId'>;
  crew: Pick<Crew, 'picId' | 'instruction'>;
}

/**
 * Leaves the passengers at home and keeps the crew: a lesson stays a lesson. None is offered where another pilot acts as
 * pilot in command, because the member who asks would be the passenger.
 */
export function leavePassengers(of: {
  flight: Pick<FlightFacts, 'purpose' | 'memberId' | 'personsOnBoard'>;
  crew: Pick<Crew, 'picId' | 'instruction' | 'passengers'>;
}): Remedy[] {
  const { flight, crew } = of;
  if (!crew.instruction && crew.picId !== flight.memberId) return [];
  const staying = Math.max(1, flight.personsOnBoard - crew.passengers);
  return staying === 1 ? flyAlone(of) : [withoutPassengers({ personsOnBoard: staying })];
}

/** The member flies alone; a flight that has an errand of its own (a ferry, a test) keeps it. */
export function flyAlone({ flight, crew }: Request): Remedy[] {
  if (crew.instruction || crew.picId !== flight.memberId) return [];
  return [
    withoutPassengers({
      personsOnBoard: 1,
      secondPilotId: null,
      secondPilotRequired: false,
      actingPilotId: null,
      ...(flight.purpose === 'passengers' && { purpose: 'solo' as const }),
    }),
  ];
}

const withoutPassengers = (fields: Partial<FlightFacts>): Remedy => ({
  act: 'leave-passengers',
  title: 'Fly without passengers.',
  by: 'member',
  effects: [{ op: 'flight', fields }],
});
