/** Turns findings into an answer. Nothing is judged here; judging and combining never mix. */
import { ANSWER_SAYS } from '../explain/words.js';
import type { Crew } from './crew.js';
import type { Answer, Finding } from './finding.js';
import { isOverridable, type Rule } from './rule.js';

/** As much of a finding as its weight in the answer hangs on. */
export type Weighable = Pick<Finding, 'weight' | 'overridable' | 'binds' | 'status' | 'conditions'>;

/** A rule's verdict as it is weighed. */
export const weighable = (rule: Rule, { status, conditions }: Held): Weighable => ({
  weight: rule.weight,
  overridable: isOverridable(rule),
  binds: rule.binds,
  status,
  conditions,
});

type Held = Pick<Finding, 'status' | 'conditions'>;

/** Does this finding stand in the way? Unknown and error do, under law and club alike: the engine fails closed. */
export function blocks(finding: Weighable): boolean {
  if (finding.weight === 'advice' || finding.status === 'met' || finding.status === 'not-applicable')
    return false;
  // An unknown that the law lets be settled before departure comes with its condition instead.
  return !(finding.status === 'unknown' && finding.conditions.length > 0);
}

/** On a flight whose instructor is not named yet, what binds the pilot in command waits for the name. */
function waitsForInstructor(finding: Weighable, crew: Crew): boolean {
  return (
    crew.instruction && crew.picId === null && (finding.binds === 'pilot' || finding.binds === 'instructor')
  );
}

/** Which way a finding pulls the answer: not at all, towards an officer's leave, or to a no whoever might be asked. */
export type Pull = 'none' | 'asks' | 'refuses';

export function pullOf(finding: Weighable, crew: Crew): Pull {
  if (!blocks(finding) || waitsForInstructor(finding, crew)) return 'none';
  return finding.overridable ? 'asks' : 'refuses';
}

/** Does this finding alone make the answer a no, whoever might be asked? */
export function refuses(finding: Weighable, crew: Crew): boolean {
  return pullOf(finding, crew) === 'refuses';
}

/** Does the finding put a condition on the flight? */
export const setsCondition = (finding: Pick<Finding, 'status' | 'conditions'>): boolean =>
  finding.conditions.length > 0 && (finding.status === 'met' || finding.status === 'unknown');

/** How many findings pull which way: all that the answer on the flight as asked hangs on. */
export interface Tally {
  refuses: number;
  asks: number;
  conditions: number;
}

/** The answer on the flight as asked, from the count of what pulls which way. */
export function answerFrom(tally: Tally, crew: Crew): Answer {
  if (tally.refuses > 0) return 'no';
  if (tally.asks > 0) return 'ask-officer';
  if (crew.instruction && crew.picId === null) return 'dual-only';
  return tally.conditions > 0 ? 'yes-with-conditions' : 'yes';
}

/** The answer on the flight as asked, before other ways of flying it are tried. */
export function answerAsAsked(findings: readonly Weighable[], crew: Crew): Answer {
  const tally: Tally = { refuses: 0, asks: 0, conditions: 0 };
  for (const finding of findings) {
    const pull = pullOf(finding, crew);
    if (pull !== 'none') tally[pull] += 1;
    if (setsCondition(finding)) tally.conditions += 1;
  }
  return answerFrom(tally, crew);
}

/** The answer where an instructor is a way: what is refused as asked is dual-only if nothing else stands in the way. */
export function answerWithDual(asAsked: Answer, dual: Answer | null): Answer {
  const refused = asAsked === 'no' || asAsked === 'ask-officer';
  return refused && dual === 'dual-only' ? 'dual-only' : asAsked;
}

/** All conditions, each once, in order of the findings. */
export function conditionsOf(findings: readonly Finding[]): string[] {
  return [...new Set(findings.flatMap((finding) => (setsCondition(finding) ? finding.conditions : [])))];
}

export const answerSays = (answer: Answer): string => ANSWER_SAYS[answer];
