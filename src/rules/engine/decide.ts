/** The decision: findings, answer, horizon, digest. */
import { toInstant, toSeconds, type EpochSeconds, type Instant } from '../calendar/instants.js';
import type { FactSheet, Policy } from '../facts/sheet.js';
import { answerAsAsked, answerSays, conditionsOf } from './combine.js';
import { digestOf } from './digest.js';
import { CAUTION, type Answer, type Decision, type Finding } from './finding.js';
import { searchHorizon } from './horizon.js';
import { judgeAll, type Judged, type Ruleset } from './judge.js';
import type { Crew } from './crew.js';

/** Findings on the flight as asked and, where that is refused, on the same flight with an instructor aboard. */
export interface Weighed {
  crew: Crew;
  judged: Judged[];
  withInstructor: { sheet: FactSheet; crew: Crew; judged: Judged[] } | null;
  answer: Answer;
}

/** Judges the flight at a departure, and with an instructor when it is refused as asked. */
export function weigh(sheet: FactSheet, ruleset: Ruleset, departs: EpochSeconds): Weighed {
  const { crew, judged } = judgeAll(sheet, ruleset, departs);
  const asked = answerAsAsked(
    judged.map((one) => one.finding),
    crew,
  );
  if ((asked !== 'no' && asked !== 'ask-officer') || crew.instruction || !instructionIsAWay(sheet)) {
    return { crew, judged, withInstructor: null, answer: asked };
  }
  const dualSheet = withUnnamedInstructor(sheet);
  const dual = judgeAll(dualSheet, ruleset, departs);
  const withInstructor = { sheet: dualSheet, ...dual };
  return { crew, judged, withInstructor, answer: answerOf(judged, crew, withInstructor) };
}

/** The answer from the findings on both ways of flying. */
export function answerOf(
  judged: readonly Judged[],
  crew: Crew,
  withInstructor: Weighed['withInstructor'],
): Answer {
  const asked = answerAsAsked(
    judged.map((one) => one.finding),
    crew,
  );
  if (!withInstructor || (asked !== 'no' && asked !== 'ask-officer')) return asked;
  const dual = answerAsAsked(
    withInstructor.judged.map((one) => one.finding),
    withInstructor.crew,
  );
  return dual === 'dual-only' ? 'dual-only' : asked;
}

const instructionIsAWay = (sheet: FactSheet): boolean =>
  sheet.flight.purpose === 'solo' || sheet.flight.purpose === 'passengers';

/** The same flight with one more seat taken, by an instructor still to be named, who acts as pilot in command. */
function withUnnamedInstructor(sheet: FactSheet): FactSheet {
  const { flight } = sheet;
  return {
    ...sheet,
    flight: {
      ...flight,
      purpose: 'dual',
      instructorId: null,
      secondPilotId: null,
      actingPilotId: null,
      personsOnBoard: flight.personsOnBoard + 1,
    },
  };
}

/** How far `decide` looks for the horizon. */
export interface HorizonLimits {
  days: number;
  stepsPerRule: number;
}

export const DEFAULT_HORIZON: HorizonLimits = { days: 400, stepsPerRule: 400 };

/**
 * Decides the flight of the sheet as of `asOf` (its departure unless given). Same sheet, policy and rules give the same
 * bytes, whenever and wherever it runs.
 */
export function decide(
  sheet: FactSheet,
  policy: Policy,
  ruleset: Ruleset,
  asOf: Instant = sheet.flight.departs,
  limits: HorizonLimits = DEFAULT_HORIZON,
): Decision {
  const departs = toSeconds(asOf);
  const weighed = weigh(sheet, ruleset, departs);
  const { horizon, untils } = searchHorizon(sheet, ruleset, departs, weighed, limits);
  const findings: Finding[] = weighed.judged.map(({ finding }, index) => {
    const until = untils[index];
    return { ...finding, until: until === null || until === undefined ? null : toInstant(until) };
  });
  const conditions = conditionsOf(findings);
  return {
    schema: 'bellcrank.decision/1',
    answer: weighed.answer,
    says: answerSays(weighed.answer),
    asOf: toInstant(departs),
    knownAt: sheet.knownAt,
    crew: weighed.crew,
    findings,
    conditions,
    horizon,
    caution: CAUTION,
    digest: digestOf({ sheet, policy, asOf: toInstant(departs), rules: versionsOf(ruleset) }),
  };
}

/** Rule ids with the versions of their bodies: what a replay must match. */
export function versionsOf(ruleset: Ruleset): Record<string, number[]> {
  return Object.fromEntries(ruleset.rules.map((rule) => [rule.id, rule.bodies.map((body) => body.version)]));
}
