import type { Instant } from '../calendar/instants.js';
import type { AircraftFacts } from './aircraft.js';
import type { ClubRule } from './club-rule.js';
import type { FlightFacts } from './flight.js';
import type { PersonFacts } from './person.js';

/** Whose law binds the club. */
export type Jurisdiction = 'US' | 'EU' | 'CA';

/**
 * The fact sheet: all that a judgement may know, as plain data that survives JSON unchanged.
 * Everything in it was on record at `knownAt`; the flight may lie later.
 */
export interface FactSheet {
  schema: 'bellcrank.facts/1';
  knownAt: Instant;
  jurisdiction: Jurisdiction;
  /** IANA zone in which the club's law counts days. */
  zone: string;
  flight: FlightFacts;
  /** The people of the flight by member id: who asks, instructor, second pilot. */
  people: Record<string, PersonFacts>;
  aircraft: AircraftFacts;
}

/** One dated value of a club policy parameter. */
export interface PolicyValue {
  id: string;
  /** First date it holds. */
  from: string;
  value: number | boolean | string | null;
  /** The club paper that says so. */
  reference: string;
}

/** The club's policy: dated values, read through the parameter accessor only, and the rules the club wrote itself. */
export interface Policy {
  values: PolicyValue[];
  /** By code, then version. Absent where the club has none, and in policies stored before clubs could write rules. */
  rules?: ClubRule[];
}
