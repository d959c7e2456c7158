/**
 * Runs the body of one rule that is in force on the day of the flight. What comes out is the bare outcome: `judge.ts`
 * writes it out as a finding for people, `skim` keeps only the verdict, for the many departures nobody reads about.
 */
import type { EpochSeconds } from '../calendar/instants.js';
import type { Fact } from '../facts/fact.js';
import { readFact, type FactKey, type FactValue } from '../facts/keys.js';
import type { FlightFacts } from '../facts/flight.js';
import type { FactSheet } from '../facts/sheet.js';
import type { Crew } from './crew.js';
import { Moment, type FlightTime } from './moment.js';
import { Parameters, type ParameterBook, type ParameterRead } from './parameters.js';
import type { Body, FactView, Judgement, Rule, Status, Take } from './rule.js';
import { slotWithout } from './sentence.js';
import { UnknownFact } from './unknown.js';

/** How one rule came out. `judgement` is null where the rule took no branch; `because` then says why. */
export interface Outcome {
  body: Body<FactKey, string> | undefined;
  status: Status;
  branch: string;
  judgement: Judgement | null;
  because: string;
  /** Conditions of the branch, or the condition of a rule that may be settled before departure. */
  conditions: string[];
  parameters: ParameterRead[];
  /** The next departure at which the rule may come out differently. */
  nextChange: EpochSeconds | null;
}

/** A verdict and when it may change: what the horizon and the timeline follow. */
export type Verdict = Pick<Outcome, 'status' | 'branch' | 'conditions' | 'nextChange'>;

/** A verdict is its status and the conditions that go with it; a sentence that counts days is not a change. */
export function verdictDiffers(
  a: Pick<Verdict, 'status' | 'conditions'>,
  b: Pick<Verdict, 'status' | 'conditions'>,
): boolean {
  if (a === b) return false;
  if (a.status !== b.status || a.conditions.length !== b.conditions.length) return true;
  return a.conditions.some((condition, index) => condition !== b.conditions[index]);
}

const NONE: string[] = [];

/** Runs one rule; `asked` is told of each fact it asks for, remedies apart. An error inside a rule is an outcome of its own, never a pass. */
export function runRule(
  rule: Rule,
  sheet: FactSheet,
  book: ParameterBook,
  crew: Crew,
  time: FlightTime,
  asked?: (key: FactKey) => void,
): Outcome {
  const moment = new Moment(time);
  const parameters = new Parameters(book, moment, rule.parameters);
  const outcome: Outcome = {
    body: undefined,
    status: 'not-applicable',
    branch: 'not-in-force',
    judgement: null,
    because: '',
    conditions: NONE,
    parameters: parameters.reads,
    nextChange: null,
  };
  try {
    const body = bodyInForce(rule, moment);
    if (body) {
      outcome.body = body;
      const judgement = body.judge(new View(rule, sheet, crew, asked), moment, parameters, takeOf(rule));
      const { status, says } = rule.branches[judgement.branch]!;
      const slot = slotWithout(says, judgement.values);
      if (slot !== null) throw new Error(`${rule.id} gives no value for {${slot}}`);
      outcome.status = status;
      outcome.branch = judgement.branch;
      outcome.judgement = judgement;
      outcome.conditions = judgement.conditions;
    }
  } catch (error) {
    noBranch(outcome, rule, error);
  }
  try {
    outcome.nextChange = moment.nextChange;
  } catch (error) {
    // A date that is none, met while comparing: the rule saw it as text, the calendar does not know it.
    noBranch(outcome, rule, error);
  }
  return outcome;
}

function noBranch(outcome: Outcome, rule: Rule, error: unknown): void {
  outcome.judgement = null;
  if (error instanceof UnknownFact) {
    outcome.status = outcome.branch = 'unknown';
    outcome.because = error.because;
    const condition = error.condition ?? (rule.settledAt === 'departure' ? rule.whenUnknown : undefined);
    outcome.conditions = condition ? [condition] : NONE;
    return;
  }
  outcome.status = outcome.branch = 'error';
  outcome.because = error instanceof Error ? error.message : String(error);
  outcome.conditions = NONE;
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

/** What a body may look at: the request, the crew and the facts its rule declares. */
class View implements FactView {
  constructor(
    private readonly rule: Rule,
    private readonly sheet: FactSheet,
    readonly crew: Crew,
    private readonly asked: ((key: FactKey) => void) | undefined,
  ) {}

  get flight(): Omit<FlightFacts, 'departs' | 'arrives'> {
    return this.sheet.flight;
  }

  peek<Q extends FactKey>(key: Q): Fact<FactValue<Q>> {
    if (!this.rule.reads.includes(key)) throw new Error(`reads ${key} without declaring it`);
    this.asked?.(key);
    return readFact(this.sheet, this.crew, key);
  }

  get<Q extends FactKey>(key: Q): FactValue<Q> {
    const fact = this.peek(key);
    if (!fact.known) throw new UnknownFact(key, fact.because);
    return fact.value;
  }
}

const takes = new WeakMap<Rule, Take<string>>();

function takeOf(rule: Rule): Take<string> {
  let take = takes.get(rule);
  if (!take) takes.set(rule, (take = makeTake(rule)));
  return take;
}

function makeTake(rule: Rule): Take<string> {
  return (branch, values, more): Judgement => {
    if (!(branch in rule.branches)) throw new Error(`takes branch ${branch}, which it does not declare`);
    return {
      branch,
      values: values ?? {},
      counted: more?.counted ?? [],
      remedies: more?.remedies ?? [],
      conditions: more?.conditions ?? NONE,
    };
  };
}
