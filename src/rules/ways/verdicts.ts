/** Judges the flight of a hypothetical sheet for its verdicts alone, again only where a fact changed. */
import type { EpochSeconds } from '../calendar/instants.js';
import { pullOf, weighable } from '../engine/combine.js';
import type { Crew } from '../engine/crew.js';
import { crewAt, timeAt, type Ruleset } from '../engine/judge.js';
import type { Remedy } from '../engine/remedy.js';
import { runRule, type Outcome } from '../engine/run.js';
import { personInRole, type FactKey, type Role } from '../facts/keys.js';
import type { FactSheet } from '../facts/sheet.js';

/** How each rule of the set came out, in its order, and which of them stand in the way. */
export interface Verdicts {
  crew: Crew;
  outcomes: readonly Outcome[];
  /** Places in the set. */
  blocking: readonly number[];
}

/** Facts that changed: 'aircraft.squawks', '<member id>.log'; 'all' after a change of the request. */
export type Changed = ReadonlySet<string> | 'all';

export function judgeVerdicts(sheet: FactSheet, ruleset: Ruleset, departs: EpochSeconds): Verdicts {
  const time = timeAt(sheet, departs);
  const { crew } = crewAt(sheet, ruleset, departs, time);
  const outcomes = ruleset.rules.map((rule) => runRule(rule, sheet, ruleset.book, crew, time));
  return { crew, outcomes, blocking: blockingOf(ruleset, outcomes, crew) };
}

/** The verdicts after a change: only the rules that read it run again. */
export function judgeAgain(
  before: Verdicts,
  sheet: FactSheet,
  ruleset: Ruleset,
  departs: EpochSeconds,
  changed: Changed,
): Verdicts {
  if (changed === 'all') return judgeVerdicts(sheet, ruleset, departs);
  const { crew } = before;
  const time = timeAt(sheet, departs);
  const touched = new Map<FactKey, boolean>();
  const isTouched = (key: FactKey): boolean => {
    let known = touched.get(key);
    if (known === undefined) touched.set(key, (known = changed.has(nameOf(sheet, crew, key))));
    return known;
  };
  const outcomes = ruleset.rules.map((rule, index) =>
    rule.reads.some(isTouched) ? runRule(rule, sheet, ruleset.book, crew, time) : before.outcomes[index]!,
  );
  return { crew, outcomes, blocking: blockingOf(ruleset, outcomes, crew) };
}

/** A fact by whose it is rather than by role: '<member id>.log'. */
export function nameOf(sheet: FactSheet, crew: Crew, key: FactKey): string {
  const [role, subject] = key.split('.') as [string, string];
  return role === 'aircraft' ? key : `${personInRole(sheet, crew, role as Role) ?? role}.${subject}`;
}

function blockingOf(ruleset: Ruleset, outcomes: readonly Outcome[], crew: Crew): number[] {
  const blocking: number[] = [];
  outcomes.forEach((outcome, index) => {
    if (outcome.status === 'met' || outcome.status === 'not-applicable') return;
    if (pullOf(weighable(ruleset.rules[index]!, outcome), crew) !== 'none') blocking.push(index);
  });
  return blocking;
}

/** What the outcome offers; a rule that cannot say for want of a fact, or fails at it, offers nothing. */
export function remediesOf({ judgement }: Outcome): Remedy[] {
  if (!judgement) return [];
  try {
    return typeof judgement.remedies === 'function' ? judgement.remedies() : judgement.remedies;
  } catch {
    return [];
  }
}
