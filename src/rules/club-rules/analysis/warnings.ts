/** What a rule's text alone gives to think about. A warning refuses nothing: the club decides. */
import type { ClubRule } from '../../facts/club-rule.js';
import type { CheckedRule } from '../check.js';
import { all, casesOf, possible, type Cases } from './cases.js';

export const WARNINGS = [
  /** No flight can be asked anything. */
  'never-applies',
  /** No flight can be short of it. */
  'never-fails',
  /** Every flight that is asked is short of it. */
  'never-kept',
  /** It hangs on nothing. */
  'constant',
  /** No flight that both ask of can keep both. */
  'contradicts',
  /** Whatever is short of it is short of the other rule as well. */
  'says-the-same',
  /** It hangs on what is seldom told when a flight is booked, and refuses meanwhile. */
  'refuses-while-not-told',
  /** It has a condition that can never be told. */
  'condition-not-used',
  /** As `unknown` on most flights of the club. From the dry run. */
  'mostly-unknown',
  /** As `never-applies`, `never-fails`, `never-kept` and `contradicts`, by the club's decisions. From the dry run. */
  'never-applied',
  'never-failed',
  'never-held',
  'never-both-held',
] as const;
export type WarningCode = (typeof WARNINGS)[number];

/** Something to think about before a rule is put in force. */
export interface Warning {
  code: WarningCode;
  /** One sentence. */
  says: string;
  /** The other rule it is about. */
  otherRule: string | null;
}

/** A rule with its checked expressions. */
export interface ReadRule {
  rule: Pick<ClubRule, 'code' | 'title' | 'condition'>;
  checked: CheckedRule;
}

/** Warnings about one rule, and about it beside others that are in force. */
export function warningsOf(one: ReadRule, others: readonly ReadRule[] = []): Warning[] {
  return [...alone(one), ...others.flatMap((other) => beside(one, other))];
}

const warn = (code: WarningCode, says: string, otherRule: string | null = null): Warning => ({
  code,
  says,
  otherRule,
});

/** When the rule asks, and what; each as cases. */
function parts({ checked }: ReadRule): { asks: Cases; asksNot: Cases; held: Cases; heldNot: Cases } {
  const { appliesWhen, requirement } = checked;
  return {
    asks: casesOf(appliesWhen.ast),
    asksNot: casesOf(appliesWhen.ast, false),
    held: casesOf(requirement.ast),
    heldNot: casesOf(requirement.ast, false),
  };
}

const impossible = (...of: Cases[]): boolean => possible(all(...of)) === false;

function alone(one: ReadRule): Warning[] {
  const { asks, held, heldNot } = parts(one);
  const { checked, rule } = one;
  const found: Warning[] = [];
  if (checked.requirement.uses.length === 0 && checked.appliesWhen.uses.length === 0)
    found.push(
      warn('constant', 'The rule looks at nothing of the flight, so it comes out the same for all of them.'),
    );
  if (impossible(asks)) found.push(warn('never-applies', 'The rule can apply to no flight.'));
  else if (impossible(asks, heldNot))
    found.push(warn('never-fails', 'No flight the rule applies to can be short of it.'));
  else if (impossible(asks, held))
    found.push(warn('never-kept', 'Every flight the rule applies to is short of it.'));
  return [...found, ...waiting(checked, rule.condition)];
}

function waiting(checked: CheckedRule, condition: string | null): Warning[] {
  const late = checked.uses
    .filter(({ entry }) => entry.toldLate)
    .map(({ owner, entry }) => `${owner}.${entry.name}`);
  if (condition === null) {
    if (late.length === 0) return [];
    const says = `Members seldom tell ${late.join(', ')} when they book; the rule refuses until they do. Give it a condition if it may wait.`;
    return [warn('refuses-while-not-told', says)];
  }
  if (late.length === 0)
    return [
      warn(
        'condition-not-used',
        'The condition is never told: the rule reads nothing that is told shortly before departure.',
      ),
    ];
  if (checked.mayFail)
    return [
      warn(
        'condition-not-used',
        'The condition is never told: the arithmetic of the rule may fail, so it does not wait.',
      ),
    ];
  return [];
}

function beside(one: ReadRule, other: ReadRule): Warning[] {
  if (one.rule.code === other.rule.code) return [];
  const [a, b] = [parts(one), parts(other)];
  const { code, title } = other.rule;
  const eachCanBeKept = !impossible(a.asks, a.held) && !impossible(b.asks, b.held);
  if (eachCanBeKept && possible(all(a.asks, b.asks)) === true && impossible(a.asks, b.asks, a.held, b.held))
    return [
      warn('contradicts', `No flight that both apply to can keep this rule and '${title}' (${code}).`, code),
    ];
  // Short of this one: asked and not held. Then the other must be asked as well, and not held.
  const shortOf = all(a.asks, a.heldNot);
  if (possible(shortOf) === true && impossible(shortOf, b.asksNot) && impossible(shortOf, b.held))
    return [
      warn(
        'says-the-same',
        `Every flight short of this rule is short of '${title}' (${code}) as well.`,
        code,
      ),
    ];
  return [];
}
