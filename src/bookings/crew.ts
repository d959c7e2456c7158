/** Who is taken up by a flight. */
import type { FactSheet } from '../rules/index.js';
import type { BookingCrew } from './bookings.sql.js';

/** The people a request names. */
export interface Named {
  memberId?: string;
  instructorId?: string;
  secondPilotId?: string;
}

/** Everybody the flight takes up. */
export function crewOf({ memberId, instructorId, secondPilotId }: Named): string[] {
  return [memberId, instructorId, secondPilotId].filter((id): id is string => id !== undefined);
}

/** The same with their parts, as the flight was judged. */
export function crewJudged({ flight }: FactSheet): BookingCrew {
  const people: BookingCrew = [{ memberId: flight.memberId, role: 'pilot' }];
  if (flight.instructorId) people.push({ memberId: flight.instructorId, role: 'instructor' });
  if (flight.secondPilotId) people.push({ memberId: flight.secondPilotId, role: 'second-pilot' });
  return people;
}
