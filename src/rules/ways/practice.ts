/** Practice flights: what they would be like, and what stands in their way. */
import { toInstant, type EpochSeconds } from '../calendar/instants.js';
import { pullOf, weighable } from '../engine/combine.js';
import { crewAt, timeAt, type Ruleset } from '../engine/judge.js';
import { runRule, type Outcome } from '../engine/run.js';
import type { Rule } from '../engine/rule.js';
import type { FlightFacts } from '../facts/flight.js';
import type { FactSheet } from '../facts/sheet.js';

/** A practice flight without its time. */
export interface Practice {
  person: string;
  dual: boolean;
  night: boolean;
  tenths: number;
  /** The transponder is used as on the flight wanted. */
  transponder: boolean | null;
  /** Rules, by how their ids begin, that bind the person as if alone, although somebody else is in command. */
  alsoMet: readonly string[];
}

/** A rule in the way of a practice flight, and the flight it was judged on. */
export interface InTheWay {
  rule: number;
  practice: Practice;
}

/**
 * The request of a practice flight: from home and back, in sight of the ground, nobody else aboard but an instructor
 * still to be named.
 */
export function practiceFlight(sheet: FactSheet, practice: Practice, at: EpochSeconds): FlightFacts {
  const home = sheet.flight.route[0];
  return {
    departs: toInstant(at),
    arrives: toInstant(at + secondsOf(practice)),
    purpose: practice.dual ? 'dual' : 'solo',
    flightRules: 'VFR',
    personsOnBoard: practice.dual ? 2 : 1,
    memberId: practice.person,
    instructorId: null,
    secondPilotId: null,
    actingPilotId: null,
    secondPilotRequired: false,
    forHire: false,
    route: home ? [home, home] : [],
    plannedTenths: practice.tenths,
    airspace: null,
    maxAltitudeFtMsl: null,
    maxSpeedKias: null,
    usesVor: false,
    usesTransponder: practice.transponder,
    overWaterBeyondGlide: false,
    weather: null,
    loading: null,
  };
}

export const secondsOf = (practice: Pick<Practice, 'tenths'>): number => practice.tenths * 360;

/** The sheet with a practice flight for its request. */
export const practising = (sheet: FactSheet, practice: Practice, at: EpochSeconds): FactSheet => ({
  ...sheet,
  flight: practiceFlight(sheet, practice, at),
});

/** Everything of law and club that stands in the way of the practice flight at that time. */
export function inTheWay(
  sheet: FactSheet,
  ruleset: Ruleset,
  practice: Practice,
  at: EpochSeconds,
): InTheWay[] {
  const found = blockersOf(practising(sheet, practice, at), ruleset, at, counts).map((rule) => ({
    rule,
    practice,
  }));
  if (practice.alsoMet.length === 0) return found;
  const asIfAlone = { ...practice, dual: false, alsoMet: [] };
  const also = (rule: Rule): boolean => practice.alsoMet.some((begins) => rule.id.startsWith(begins));
  return [
    ...found,
    ...blockersOf(practising(sheet, asIfAlone, at), ruleset, at, also).map((rule) => ({
      rule,
      practice: asIfAlone,
    })),
  ];
}

/** How the club takes bookings says nothing of a practice flight. */
const counts = (rule: Rule): boolean =>
  rule.weight === 'law' || (rule.weight === 'club' && rule.binds !== 'flight');

function blockersOf(
  sheet: FactSheet,
  ruleset: Ruleset,
  at: EpochSeconds,
  wanted: (rule: Rule) => boolean,
): number[] {
  const time = timeAt(sheet, at);
  const { crew } = crewAt(sheet, ruleset, at, time);
  const blocks = (rule: Rule, outcome: Outcome): boolean => pullOf(weighable(rule, outcome), crew) !== 'none';
  return ruleset.rules.flatMap((rule, index) =>
    wanted(rule) && blocks(rule, runRule(rule, sheet, ruleset.book, crew, time)) ? [index] : [],
  );
}
