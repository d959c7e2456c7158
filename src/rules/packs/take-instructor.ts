import type { Remedy } from '../engine/remedy.js';
import type { FlightFacts } from '../facts/flight.js';

/** Takes an instructor, still to be named, along on a flight that was to be flown without one. */
export function takeInstructor(flight: Pick<FlightFacts, 'purpose' | 'personsOnBoard'>): Remedy[] {
  if (flight.purpose !== 'solo' && flight.purpose !== 'passengers') return [];
  return [
    {
      act: 'fly-with-instructor',
      title: 'Take an instructor along on this flight.',
      by: 'instructor',
      effects: [
        {
          op: 'flight',
          fields: {
            purpose: 'dual',
            instructorId: null,
            secondPilotId: null,
            actingPilotId: null,
            secondPilotRequired: false,
            personsOnBoard: flight.personsOnBoard + 1,
          },
        },
      ],
    },
  ];
}
