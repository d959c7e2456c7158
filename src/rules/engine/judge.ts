/** Runs each rule alone on one flight at one departure. Combining comes after, in combine.ts. */
import { toSeconds, type EpochSeconds } from '../calendar/instants.js';
import { readFact, type FactKey } from '../facts/keys.js';
import type { FactSheet } from '../facts/sheet.js';
import type { Crew } from './crew.js';
import { decideCrew } from './crew.js';
import type { Finding } from './finding.js';
import { Moment } from './moment.js';
import { ParameterBook, Parameters } from './parameters.js';
import type { Body, FactView, Judgement, Rule, Status, Take } from './rule.js';
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

export function momentAt(sheet: FactSheet, departs: EpochSeconds): Moment {
  return new Moment({
    departs,
    durationSeconds: durationOf(sheet),
    knownAt: toSeconds(sheet.knownAt),
    zone: sheet.zone,
  });
}

/** The crew at a departure; a club that never set the policy gets the strict reading. */
export function crewAt(
  sheet: FactSheet,
  ruleset: Ruleset,
  departs: EpochSeconds,
): { crew: Crew; nextChange: EpochSeconds | null } {
  const moment = momentAt(sheet, departs);
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
  const { crew, nextChange } = crewAt(sheet, ruleset, departs);
  const judged = ruleset.rules.map((rule) => {
    const one = judgeRule(rule, sheet, ruleset, crew, departs);
    return { ...one, nextChange: earlier(one.nextChange, nextChange) };
  });
  return { crew, judged };
}

/** Judges one rule. An error inside a rule is a finding of its own, never a pass. */
export function judgeRule(
  rule: Rule,
  sheet: FactSheet,
  ruleset: Ruleset,
  crew: Crew,
  departs: EpochSeconds,
): Judged {
  const moment = momentAt(sheet, departs);
  const parameters = new Parameters(ruleset.book, moment, rule.parameters);
  const body = bodyInForce(rule, moment);
  // Written out field by field: spreading twenty fields twice a rule took half of a judgement's time.
  const finish = (
    status: Status,
    branch: string,
    says: string,
    made: Pick<Judgement, 'counted' | 'conditions' | 'remedies'>,
  ): Judged => ({
    // Before the remedies are made: what they ask of the moment is no part of the verdict.
    nextChange: moment.nextChange,
    finding: {
      rule: rule.id,
      version: body?.version ?? 0,
      title: rule.title,
      weight: rule.weight,
      overridable: rule.weight === 'club' && !rule.neverOverridden,
      binds: rule.binds,
      status,
      branch,
      says,
      citation: (body ?? rule.bodies[0]!).citation,
      counted: made.counted,
      conditions: made.conditions,
      remedies: typeof made.remedies === 'function' ? made.remedies() : made.remedies,
      reads: rule.reads,
      // By id, not as read: which record a rule meets first must not show in the finding.
      parameters: parameters.reads.sort((a, b) => (a.id < b.id ? -1 : 1)),
      until: null,
    },
  });
  const bare = (conditions: string[] = []) => ({ counted: [], conditions, remedies: [] });
  if (!body) {
    const says = 'This rule is not in force on the day of the flight.';
    return finish('not-applicable', 'not-in-force', says, bare());
  }
  try {
    const judgement = body.judge(viewOf(rule, sheet, crew), moment, parameters, takeFor(rule));
    const { status, says } = rule.branches[judgement.branch]!;
    return finish(status, judgement.branch, fill(says, judgement.values, rule.id), judgement);
  } catch (error) {
    if (error instanceof UnknownFact) {
      const settledLater = rule.settledAt === 'departure' && rule.whenUnknown ? [rule.whenUnknown] : [];
      return finish('unknown', 'unknown', `Cannot tell: ${error.because}.`, bare(settledLater));
    }
    const reason = error instanceof Error ? error.message : String(error);
    return finish('error', 'error', `This rule could not be judged (${reason}).`, bare());
  }
}

function bodyInForce(rule: Rule, moment: Moment): Body<FactKey, string> | undefined {
  let inForce: Body<FactKey, string> | undefined;
  for (const body of rule.bodies) {
    const begun = body.from === null || moment.startsOnOrAfter(body.from);
    const ended = body.to !== null && moment.startsOnOrAfter(body.to);
    if (begun && !ended) inForce = body;
  }
  return inForce;
}

function viewOf(rule: Rule, sheet: FactSheet, crew: Crew): FactView {
  const peek: FactView['peek'] = (key) => {
    if (!rule.reads.includes(key)) throw new Error(`reads ${key} without declaring it`);
    return readFact(sheet, crew, key);
  };
  return {
    flight: sheet.flight,
    crew,
    peek,
    get: (key) => {
      const fact = peek(key);
      if (!fact.known) throw new UnknownFact(key, fact.because);
      return fact.value;
    },
  };
}

function takeFor(rule: Rule): Take<string> {
  return (branch, values = {}, more = {}): Judgement => {
    if (!(branch in rule.branches)) throw new Error(`takes branch ${branch}, which it does not declare`);
    return {
      branch,
      values,
      counted: more.counted ?? [],
      remedies: more.remedies ?? [],
      conditions: more.conditions ?? [],
    };
  };
}

/** Fills `{name}` in a sentence; a name without a value is a defect of the rule, not of the facts. */
function fill(template: string, values: Record<string, string | number>, ruleId: string): string {
  return template.replace(/\{([a-zA-Z0-9]+)\}/g, (_, name: string) => {
    const value = values[name];
    if (value === undefined) throw new Error(`${ruleId} gives no value for {${name}}`);
    return String(value);
  });
}

export function earlier(a: EpochSeconds | null, b: EpochSeconds | null): EpochSeconds | null {
  if (a === null) return b;
  return b === null || a < b ? a : b;
}
