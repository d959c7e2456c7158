/**
 * Who is who on the flight, decided before any rule runs: recency, medical and ratings bind the pilot in command,
 * and a student under instruction is not a passenger.
 */
import type { FlightFacts } from '../facts/flight.js';

/** The flight's crew. `passengers` counts the persons on board who are neither flying, teaching nor required crew. */
export interface Crew {
  /** Pilot in command by member id; null when the flight needs an instructor who is not named yet. */
  picId: string | null;
  picBecause: string;
  /** Instruction is given on the flight. */
  instruction: boolean;
  /** The person taught, when instruction is given. */
  learnerId: string | null;
  /** The member flies alone. */
  alone: boolean;
  passengers: number;
}

/**
 * Decides the crew from the request.
 *
 * - `dual` and `checkout`: the instructor is pilot in command (strict reading: a rated learner could act, but the
 *   club's answer must not rest on it); the learner is not a passenger.
 * - two pilots: the named acting pilot, else the member; the other pilot is a passenger unless required crew
 *   (14 CFR 91.109(c) safety pilot) or the club's policy says that a second rated pilot is none. Official letters treat
 *   required crew as no passengers (from memory); the strict reading is the default.
 */
export function decideCrew(flight: FlightFacts, options: { secondPilotIsPassenger: boolean }): Crew {
  const aboard = flight.personsOnBoard;
  if (flight.purpose === 'dual' || flight.purpose === 'checkout') {
    return {
      picId: flight.instructorId,
      picBecause: flight.instructorId
        ? 'the instructor acts as pilot in command while instruction is given'
        : 'instruction needs an instructor, who is not named yet',
      instruction: true,
      learnerId: flight.memberId,
      alone: false,
      passengers: Math.max(0, aboard - 2),
    };
  }
  const twoPilots = flight.secondPilotId !== null;
  const secondIsCrew = twoPilots && (flight.secondPilotRequired || !options.secondPilotIsPassenger);
  const acting = twoPilots && flight.actingPilotId ? flight.actingPilotId : flight.memberId;
  return {
    picId: acting,
    picBecause: twoPilots
      ? 'two pilots fly; the one named as acting pilot is pilot in command'
      : 'the member flies without an instructor',
    instruction: false,
    learnerId: null,
    alone: aboard === 1,
    passengers: Math.max(0, aboard - (secondIsCrew ? 2 : 1)),
  };
}

/** How the club's policy was read when `crew` was decided for `flight`: for deciding anew after a change of it. */
export const optionsOf = (
  flight: Pick<FlightFacts, 'personsOnBoard'>,
  crew: Crew,
): { secondPilotIsPassenger: boolean } => ({
  secondPilotIsPassenger: flight.personsOnBoard - crew.passengers < 2,
});
