/** What is asked of the search for ways to yes, and what it answers. */
import type { Instant } from '../calendar/instants.js';
import type { Crew } from '../engine/crew.js';
import type { Answer, Finding } from '../engine/finding.js';
import type { Actor } from '../engine/remedy.js';
import type { Ruleset } from '../engine/judge.js';
import type { AircraftFacts } from '../facts/aircraft.js';
import type { AirfieldFact } from '../facts/flight.js';
import type { PersonFacts } from '../facts/person.js';
import type { FactSheet, Policy } from '../facts/sheet.js';
import type { ActKind, Catalogue } from './acts.js';
import type { Cost } from './cost.js';

/** Another aircraft of the club, and the route from where it lives (null: the route asked for). */
export interface Alternative {
  aircraft: AircraftFacts;
  route: AirfieldFact[] | null;
}

/** How far the search goes. The rules have no clock: whoever calls says when to stop. */
export interface WaysLimits {
  /** States looked at. */
  nodes: number;
  /** Asked before each; true ends the search. */
  shouldStop?: () => boolean;
}

export interface WaysQuestion {
  sheet: FactSheet;
  policy: Policy;
  /** The club's, unless given. */
  ruleset?: Ruleset;
  /** Other aircraft that could be taken. */
  alternatives?: readonly Alternative[];
  /** Instructors who could be named. */
  instructors?: readonly PersonFacts[];
  /** People as they would be if an officer verified the papers that wait, by member id. */
  verified?: Readonly<Record<string, PersonFacts>>;
  /** People whose records whoever asks may not read: no way may touch them. */
  closedRecords?: readonly string[];
  /** From when on something can be done: the instant of the facts unless given, never before it. */
  from?: Instant;
  limits?: WaysLimits;
  /** Acts and what they ask for; the catalogue of this club unless given. */
  catalogue?: Catalogue;
}

/** One act of a plan. */
export interface WayStep {
  act: string;
  title: string;
  kind: ActKind;
  by: Actor;
  /** Whose record it changes: a member id; null where it is no person's. */
  person: string | null;
  cost: Cost;
  startsOn: Instant;
  doneBy: Instant;
  /** Rules in the way of the flight that it puts right. */
  cures: string[];
  /** Acts of the plan that could not be done without it. */
  opens: string[];
  /** The practice flight it is flown on; acts with the same one are flown together. */
  sortie: number | null;
}

/** A practice flight of a plan. */
export interface WaySortie {
  number: number;
  says: string;
  dual: boolean;
  night: boolean;
  departs: Instant;
  arrives: Instant;
}

/** A proven way to yes. */
export interface Way {
  steps: WayStep[];
  sorties: WaySortie[];
  cost: Cost;
  /** What the engine answers on the facts as they would be. */
  answer: Answer;
  /** Whom the answer still hangs on, in words; empty when it is a plain yes. */
  rests: ('officer' | 'instructor')[];
  restSays: string[];
  /** Rules an officer would have to set aside. */
  overrides: string[];
  /** The flight as it would then be flown. */
  flight: { departs: Instant; arrives: Instant; aircraftId: string; personsOnBoard: number };
  conditions: string[];
  /** SHA-256 of the hypothetical facts, as the engine would decide on them. */
  provenBy: string;
}

/** Why there is no way. */
export interface NoWay {
  says: string;
  /** What stays in the way: what the rule finds, and why nothing puts it right. */
  because: { rule: string; title: string; says: string; why: string }[];
}

/** A way for the same flight on a later day. */
export interface LaterWay {
  departs: Instant;
  arrives: Instant;
  says: string;
  way: Way;
}

export interface WaysToYes {
  schema: 'bellcrank.ways/1';
  /** The answer without any of it. */
  answer: Answer;
  currency: string;
  /** Cheapest first, at most three, really different. */
  plans: Way[];
  none: NoWay | null;
  /** The same flight on a later day, where no plain way was found for the day asked for and one is known for that. */
  later: LaterWay | null;
  /** The limit at which the search stopped short; null when it looked at all there was to look at. */
  bound: 'nodes' | 'time' | null;
  /** States looked at. */
  looked: number;
  caution: string;
}

/** A way with the facts it was judged on, for whoever wants to judge them again. */
export interface Proof {
  way: Way;
  sheet: FactSheet;
  crew: Crew;
  findings: Finding[];
}
