/**
 * The answer over a span as a step function of the departure. Every rule gives its verdict as steps, found from its own
 * change points; the answer's steps are their combination. Nothing is sampled: the cost grows with the change points,
 * not with the days.
 */
import type { EpochSeconds } from '../calendar/instants.js';
import type { FactSheet } from '../facts/sheet.js';
import {
  answerFrom,
  answerWithDual,
  pullOf,
  setsCondition,
  weighable,
  type Pull,
  type Tally,
} from './combine.js';
import type { Crew } from './crew.js';
import type { Answer } from './finding.js';
import { Instances, stepsOf, type Held, type VerdictSteps } from './follow.js';
import { earlier, type Ruleset } from './judge.js';
import type { Rule, Status } from './rule.js';
import { instructionIsAWay, withUnnamedInstructor } from './weigh.js';

/** The departures looked at: from `from` up to, but not including, `to`. */
export interface Span {
  from: EpochSeconds;
  to: EpochSeconds;
}

/** A run of departures with one answer and the same rules in the way. */
export interface AnswerStep {
  from: EpochSeconds;
  to: EpochSeconds;
  answer: Answer;
  /** Ids of the rules in the way of the flight as asked, in the set's order. */
  inTheWay: string[];
  /** What changed at `from`: the verdicts that moved there. Empty at the beginning of the span. */
  changed: VerdictChange[];
}

/** A rule whose verdict moved at an edge, on the flight as asked or (`withInstructor`) on the one with an instructor. */
export interface VerdictChange {
  rule: string;
  was: Status;
  is: Status;
  withInstructor: boolean;
}

/** The answer over a span. `cutAt`: from there some rule was not followed further, and counts as unknown. */
export interface Timeline {
  steps: AnswerStep[];
  cutAt: EpochSeconds | null;
}

/** How a rule's steps are come by; a whole club's timelines share those that hang on the same facts. */
export type StepsFor = (rule: Rule, sheet: FactSheet) => VerdictSteps;

/** How often one rule may be judged on one timeline: a year of a rule that turns eight times a day. */
export const MOST_STEPS = 4000;

/** The answer for every departure of the span; the flight keeps its length. */
export function timelineOf(
  sheet: FactSheet,
  ruleset: Ruleset,
  span: Span,
  stepsFor: StepsFor = ownSteps(ruleset, span),
): Timeline {
  const asked = new Part(sheet, ruleset, span, stepsFor, false);
  // The flight with an instructor matters only where the flight as asked is refused, somewhere in the span.
  const mayNeedDual = instructionIsAWay(sheet, 'no') && asked.everInTheWay;
  const dual = mayNeedDual ? new Part(withUnnamedInstructor(sheet), ruleset, span, stepsFor, true) : null;
  const moves = dual ? [...asked.moves, ...dual.moves] : asked.moves;
  moves.sort((a, b) => a.at - b.at);

  const answerNow = (): Answer => answerWithDual(asked.answer(), dual ? dual.answer() : null);
  let open: AnswerStep = {
    from: span.from,
    to: span.to,
    answer: answerNow(),
    inTheWay: asked.inTheWay(),
    changed: [],
  };
  const steps = [open];
  for (let next = 0; next < moves.length;) {
    const at = moves[next]!.at;
    const changed: VerdictChange[] = [];
    let pulled = false;
    for (; next < moves.length && moves[next]!.at === at; next += 1) {
      const move = moves[next]!;
      pulled = move.part.take(move, changed) || pulled;
    }
    const answer = answerNow();
    if (answer === open.answer && !pulled) continue;
    open.to = at;
    open = { from: at, to: span.to, answer, inTheWay: asked.inTheWay(), changed };
    steps.push(open);
  }
  return { steps, cutAt: dual ? earlier(asked.cutAt, dual.cutAt) : asked.cutAt };
}

/** The same timeline with runs of one answer joined, whatever stands in the way along them. */
export function byAnswer(steps: readonly AnswerStep[]): AnswerStep[] {
  const joined: AnswerStep[] = [];
  for (const step of steps) {
    const last = joined[joined.length - 1];
    if (last && last.answer === step.answer) last.to = step.to;
    else joined.push({ ...step });
  }
  return joined;
}

/** The first departure of the timeline, not before `notBefore`, whose answer is one of `good`; null when none is. */
export function firstSlot(
  steps: readonly AnswerStep[],
  good: readonly Answer[],
  notBefore: EpochSeconds,
): EpochSeconds | null {
  const step = steps.find(({ to, answer }) => to > notBefore && good.includes(answer));
  return step ? Math.max(step.from, notBefore) : null;
}

/** Each rule followed for this one timeline. */
function ownSteps(ruleset: Ruleset, span: Span): StepsFor {
  const instances = new Map<FactSheet, Instances>();
  return (rule, sheet) => {
    let of = instances.get(sheet);
    if (!of) instances.set(sheet, (of = new Instances(sheet, ruleset)));
    return stepsOf(rule, sheet, ruleset, span, MOST_STEPS, of);
  };
}

interface Move {
  at: EpochSeconds;
  part: Part;
  index: number;
  verdict: Held;
}

/** One way of flying (as asked, or with an instructor): where each rule stands now, and the moves to come. */
class Part {
  readonly moves: Move[] = [];
  cutAt: EpochSeconds | null = null;
  /** Does any rule pull the answer down somewhere in the span? */
  everInTheWay = false;
  private readonly now: Held[];
  private readonly pulls: Pull[];
  private readonly tally: Tally = { refuses: 0, asks: 0, conditions: 0 };
  private readonly crew: Crew;

  constructor(
    sheet: FactSheet,
    private readonly ruleset: Ruleset,
    span: Span,
    stepsFor: StepsFor,
    private readonly withInstructor: boolean,
  ) {
    // Who is in command does not move with the departure, and of the crew only that weighs a finding.
    this.crew = new Instances(sheet, ruleset).at(span.from).crew;
    this.pulls = [];
    this.now = ruleset.rules.map((rule, index) => {
      const { steps, cutAt } = stepsFor(rule, sheet);
      const verdicts = cutAt === null ? steps : [...steps, { from: cutAt, verdict: NOT_FOLLOWED }];
      for (const { from, verdict } of verdicts) {
        if (from > span.from) this.moves.push({ at: from, part: this, index, verdict });
        this.everInTheWay ||= this.pull(rule, verdict) !== 'none';
      }
      this.cutAt = earlier(this.cutAt, cutAt);
      const first = verdicts[0]!.verdict;
      this.pulls.push(this.count(rule, first, 1));
      return first;
    });
  }

  /** Takes a move; says whether it put something in the way or took it away. */
  take({ index, verdict }: Move, changed: VerdictChange[]): boolean {
    const rule = this.ruleset.rules[index]!;
    const was = this.now[index]!;
    const pulledBefore = this.pulls[index]!;
    this.count(rule, was, -1);
    this.now[index] = verdict;
    this.pulls[index] = this.count(rule, verdict, 1);
    const { withInstructor } = this;
    changed.push({ rule: rule.id, was: was.status, is: verdict.status, withInstructor });
    return this.pulls[index] !== pulledBefore && !withInstructor;
  }

  answer(): Answer {
    return answerFrom(this.tally, this.crew);
  }

  inTheWay(): string[] {
    return this.ruleset.rules.filter((_, index) => this.pulls[index] !== 'none').map((rule) => rule.id);
  }

  private pull(rule: Rule, verdict: Held): Pull {
    return pullOf(weighable(rule, verdict), this.crew);
  }

  private count(rule: Rule, verdict: Held, by: 1 | -1): Pull {
    const pull = this.pull(rule, verdict);
    if (pull !== 'none') this.tally[pull] += by;
    if (setsCondition(verdict)) this.tally.conditions += by;
    return pull;
  }
}

/** What is said of a rule from where it was not followed: nothing can be told, so the answer is never a yes by it. */
const NOT_FOLLOWED: Held = { status: 'unknown', branch: 'unknown', conditions: [] };
