import type { Instant } from '../calendar/instants.js';

/**
 * One fact as the club knows it. Absent is absent, never a default: a rule that needs an unknown fact cannot say yes.
 */
export type Fact<T> = Known<T> | Unknown;

/** A fact on record. `lastKnownAt` is when the newest record behind it was written. */
export interface Known<T> {
  known: true;
  value: T;
  lastKnownAt: Instant;
  /** How firm it is: on record, told by the member, planned (a booking), or projected (a forecast). */
  status?: 'recorded' | 'declared' | 'planned' | 'projected';
}

/** A fact that is not on record; `because` says, for people, what is missing. */
export interface Unknown {
  known: false;
  because: string;
}

export const known = <T>(
  value: T,
  lastKnownAt: Instant,
  status: Known<T>['status'] = 'recorded',
): Known<T> => ({
  known: true,
  value,
  lastKnownAt,
  status,
});

export const unknownFact = (because: string): Unknown => ({ known: false, because });

/** A record that can be pointed at as evidence: `id` is the database id of the row behind it. */
export interface Evidence {
  id: string;
}
