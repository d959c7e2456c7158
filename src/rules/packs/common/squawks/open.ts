import type { Moment } from '../../../engine/moment.js';
import type { SquawkFact } from '../../../facts/aircraft.js';

/** A squawk still stands unless it was fixed or nothing was found, by the time of the flight. */
export function isOpen(squawk: SquawkFact, moment: Moment): boolean {
  if (squawk.state !== 'fixed' && squawk.state !== 'no-fault-found') return true;
  return squawk.closedAt !== null && !moment.departsAtOrAfter(squawk.closedAt);
}
