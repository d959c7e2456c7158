/** Whom 14 CFR 61.57(a) and (b) speak of: passengers, and since 2024-12-02 anybody the pilot in command carries. */
import type { LocalDate } from '../../../../calendar/dates.js';
import type { Remedy } from '../../../../engine/remedy.js';
import type { FactView } from '../../../../engine/rule.js';
import { leavePassengers } from '../../../leave-passengers.js';

/** First day of 89 FR 80310, which says "persons" where "passengers" stood. */
export const PERSONS_SINCE: LocalDate = '2024-12-02';

type Aboard = Pick<FactView, 'flight' | 'crew'>;

/** Is anybody carried of whom the law speaks? `anybody`: learners, instructors and second pilots count too. */
export function carries({ flight, crew }: Aboard, anybody: boolean): boolean {
  return crew.passengers > 0 || (anybody && (crew.instruction || flight.personsOnBoard > 1));
}

/** Leaving the passengers behind, where nobody else of whom the law speaks stays aboard. */
export function leaveWhomItSpeaksOf(f: Aboard, anybody: boolean): Remedy[] {
  const crew = { ...f.crew, passengers: 0 };
  const flight = { ...f.flight, personsOnBoard: f.flight.personsOnBoard - f.crew.passengers };
  return carries({ flight, crew }, anybody) ? [] : leavePassengers(f);
}
