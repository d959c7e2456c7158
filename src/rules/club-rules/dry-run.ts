/**
 * What one rule of the club would have changed in a stored decision. The rule alone is judged, and put to the findings that
 * are stored; the whole set is judged again only where the stored answer does not tell enough.
 */
import { toSeconds, type Instant } from '../calendar/instants.js';
import { answerAsAsked, answerWithDual, pullOf, setsCondition } from '../engine/combine.js';
import { decideCrew, type Crew } from '../engine/crew.js';
import type { Answer, Decision, Finding } from '../engine/finding.js';
import { crewAt, judgeRule, type Ruleset } from '../engine/judge.js';
import { ParameterBook } from '../engine/parameters.js';
import type { Rule } from '../engine/rule.js';
import { instructionIsAWay, weigh, withUnnamedInstructor } from '../engine/weigh.js';
import type { FactSheet, Policy } from '../facts/sheet.js';

/** A stored decision's facts, with the instant it was decided for. */
export interface TriedCase {
  sheet: FactSheet;
  policy: Policy;
  asOf: Instant;
  /** The answer that was given. */
  answer: Answer;
  /** Versions of the rules it was made with, by id. */
  rules: Readonly<Record<string, readonly number[]>>;
}

/** A rule judged alone on a stored decision's facts. */
export interface Tried {
  finding: Finding;
  /** The rule on the same flight with an instructor, where that was the way; null where it was not. */
  dual: { finding: Finding; crew: Crew } | null;
  /**
   * The answer may be another with it: the stored findings are needed to tell. Without it, the answer stays: the rule stands
   * in nobody's way (nor an instructor's, where one was the way), sets no condition, and takes no earlier version's place.
   */
  matters: boolean;
}

const books = new WeakMap<Policy, ParameterBook>();
const NO_BOOK = new ParameterBook([], { values: [] });

/** Parameters of the club alone: who is in command hangs on no other. */
function bookOf(policy: Policy): ParameterBook {
  let book = books.get(policy);
  if (!book) books.set(policy, (book = new ParameterBook([], policy)));
  return book;
}

/** Judges the rule alone. */
export function tryRule(rule: Rule, of: TriedCase): Tried {
  const departs = toSeconds(of.asOf);
  const alone: Ruleset = { rules: [rule], book: bookOf(of.policy) };
  const { crew } = crewAt(of.sheet, alone, departs);
  const { finding } = judgeRule(rule, of.sheet, alone, crew, departs);
  const dual =
    of.answer === 'dual-only' && instructionIsAWay(of.sheet, 'no') ? withInstructor(rule, of) : null;
  const matters =
    rule.id in of.rules || pullOf(finding, crew) !== 'none' || setsCondition(finding) || standsInTheWay(dual);
  return { finding, dual, matters };
}

/**
 * The answer with the rule: in place of its stored version, if there is one.
 *
 * @param asThen the set of rules the decision was made with; asked for only where the whole must be judged again.
 */
export function answerWith(
  rule: Rule,
  { finding, dual }: Tried,
  of: TriedCase & { decision: Decision; asThen: () => Ruleset },
): Answer {
  const { sheet, decision } = of;
  const { crew } = decision;
  const replaces = rule.id in of.rules;
  const others = decision.findings.filter((one) => one.rule !== rule.id);
  const asked = answerAsAsked([...others, finding], crew);
  if (!instructionIsAWay(sheet, asked)) return asked;
  const before = answerAsAsked(decision.findings, crew);
  // The stored answer tells how the flight with an instructor came out only if that was looked at, with the same others.
  if (replaces || !instructionIsAWay(sheet, before)) return wholeAnswer(rule, of);
  return answerWithDual(asked, dual !== null && !standsInTheWay(dual) ? 'dual-only' : null);
}

const standsInTheWay = (dual: Tried['dual']): boolean =>
  dual !== null && pullOf(dual.finding, dual.crew) !== 'none';

function withInstructor(rule: Rule, { sheet, asOf }: TriedCase): NonNullable<Tried['dual']> {
  const dual = withUnnamedInstructor(sheet);
  const crew = decideCrew(dual.flight, { secondPilotIsPassenger: true });
  const { finding } = judgeRule(rule, dual, { rules: [rule], book: NO_BOOK }, crew, toSeconds(asOf));
  return { finding, crew };
}

function wholeAnswer(rule: Rule, { sheet, asOf, asThen }: TriedCase & { asThen: () => Ruleset }): Answer {
  const { rules, book } = asThen();
  const set = [...rules.filter((one) => one.id !== rule.id), rule];
  return weigh(sheet, { rules: set, book }, toSeconds(asOf)).answer;
}
