/** Runs each rule alone on one flight at one departure. Combining comes after, in combine.ts. */
import { toSeconds, type EpochSeconds } from '../calendar/instants.js';
import { cannotTell, NOT_IN_FORCE, notJudged } from '../explain/sentences.js';
import type { FactSheet } from '../facts/sheet.js';
import type { Crew } from './crew.js';
import { decideCrew } from './crew.js';
import type { Finding } from './finding.js';
import { FlightTime, Moment } from './moment.js';
import { ParameterBook, Parameters } from './parameters.js';
import type { Remedy } from './remedy.js';
import { isOverridable, type Offered, type Rule, type Status } from './rule.js';
import { runRule, type Outcome, type Verdict } from './run.js';
import { fill } from './sentence.js';
import { UnknownFact } from './unknown.js';

/** What is judged against: the rules of the club's pack and the parameters they read. */
export interface Ruleset {
  rules: readonly Rule[];
  book: ParameterBook;
}

/** A finding and the next departure at which it may come out differently. */
export interface Judged {
  finding: Finding;
  nextChange: EpochSeconds | null;
}

/** The parameter behind crew.ts's doubtful point (rules reference, doubtful 3). */
export const SECOND_PILOT_IS_PASSENGER = 'club.crew.second-pilot-is-passenger';

/** Seconds between departure and arrival of the request. */
export function durationOf(sheet: FactSheet): number {
  return Math.max(0, toSeconds(sheet.flight.arrives) - toSeconds(sheet.flight.departs));
}

/** The flight of the sheet moved to a departure, for the rules judged there. */
export function timeAt(sheet: FactSheet, departs: EpochSeconds): FlightTime {
  return new FlightTime({
    departs,
    durationSeconds: durationOf(sheet),
    knownAt: toSeconds(sheet.knownAt),
    zone: sheet.zone,
  });
}

export function momentAt(sheet: FactSheet, departs: EpochSeconds): Moment {
  return new Moment(timeAt(sheet, departs));
}

/** The crew at a departure; a club that never set the policy gets the strict reading. */
export function crewAt(
  sheet: FactSheet,
  ruleset: Ruleset,
  departs: EpochSeconds,
  time: FlightTime = timeAt(sheet, departs),
): { crew: Crew; nextChange: EpochSeconds | null } {
  const moment = new Moment(time);
  let secondPilotIsPassenger = true;
  try {
    secondPilotIsPassenger = new Parameters(ruleset.book, moment, [SECOND_PILOT_IS_PASSENGER]).flag(
      SECOND_PILOT_IS_PASSENGER,
    );
  } catch (error) {
    if (!(error instanceof UnknownFact)) throw error;
  }
  return { crew: decideCrew(sheet.flight, { secondPilotIsPassenger }), nextChange: moment.nextChange };
}

/** Judges every rule of the set, in the set's order. */
export function judgeAll(
  sheet: FactSheet,
  ruleset: Ruleset,
  departs: EpochSeconds,
): { crew: Crew; judged: Judged[] } {
  const time = timeAt(sheet, departs);
  const { crew, nextChange } = crewAt(sheet, ruleset, departs, time);
  const judged = ruleset.rules.map((rule) => {
    const one = judgeRule(rule, sheet, ruleset, crew, departs, time);
    one.nextChange = earlier(one.nextChange, nextChange);
    return one;
  });
  return { crew, judged };
}

/** Judges one rule and writes its finding. */
export function judgeRule(
  rule: Rule,
  sheet: FactSheet,
  ruleset: Ruleset,
  crew: Crew,
  departs: EpochSeconds,
  time: FlightTime = timeAt(sheet, departs),
): Judged {
  const outcome = runRule(rule, sheet, ruleset.book, crew, time);
  return { finding: findingOf(rule, outcome), nextChange: outcome.nextChange };
}

/** Judges one rule for its verdict alone: the same status and conditions as `judgeRule`, and no finding is written. */
export function skimRule(
  rule: Rule,
  sheet: FactSheet,
  ruleset: Ruleset,
  crew: Crew,
  time: FlightTime,
): Verdict {
  return runRule(rule, sheet, ruleset.book, crew, time);
}

/** Writes an outcome for people. The remedies are made now; if that fails, the rule is in error. */
function findingOf(rule: Rule, outcome: Outcome): Finding {
  const { body, judgement, conditions } = outcome;
  let { status, branch, because } = outcome;
  let remedies: Remedy[] = [];
  if (judgement) {
    try {
      remedies = made(judgement.remedies);
    } catch (error) {
      if (!(error instanceof UnknownFact)) {
        status = branch = 'error';
        because = error instanceof Error ? error.message : String(error);
      }
    }
  }
  return {
    rule: rule.id,
    version: body?.version ?? 0,
    title: rule.title,
    weight: rule.weight,
    overridable: isOverridable(rule),
    binds: rule.binds,
    status,
    branch,
    says: sentenceOf(rule, outcome, status, because),
    citation: (body ?? rule.bodies[0]!).citation,
    counted: judgement?.counted ?? [],
    conditions,
    remedies,
    reads: rule.reads,
    // By id, not as read: which record a rule meets first must not show in the finding.
    parameters:
      outcome.parameters.length > 1
        ? outcome.parameters.sort((a, b) => (a.id < b.id ? -1 : 1))
        : outcome.parameters,
    until: null,
  };
}

const made = (offered: Offered): Remedy[] => (typeof offered === 'function' ? offered() : offered);

function sentenceOf(rule: Rule, outcome: Outcome, status: Status, because: string): string {
  if (status === 'unknown') return cannotTell(because);
  if (status === 'error') return notJudged(because);
  if (!outcome.judgement) return NOT_IN_FORCE;
  return fill(rule.branches[outcome.branch]!.says, outcome.judgement.values);
}

export function earlier(a: EpochSeconds | null, b: EpochSeconds | null): EpochSeconds | null {
  if (a === null) return b;
  return b === null || a < b ? a : b;
}
