/**
 * The rule book: every rule of a set as people may read it, made from the rules' own headers. Nothing is written twice:
 * a sentence in it is the sentence of the finding.
 */
import type { LocalDate } from '../calendar/dates.js';
import type { Ruleset } from '../engine/judge.js';
import { isOverridable, type Citation, type Rule, type Status, type Weight } from '../engine/rule.js';
import { ACTS_SEEN, type ActSeen } from './acts-seen.js';
import { factWords } from './fact-words.js';
import { explainParameter, type ParameterExplained } from './parameter-words.js';
import { BINDS_WORD, NO_VALUE, SOURCE_WORD, STATUS_WORD, WEIGHT_WORD, weightSays } from './words.js';

/** A way a rule can come out. */
export interface BranchExplained {
  name: string;
  status: Status;
  statusWord: string;
  /** The sentence; what a flight fills in is shown as `…`. */
  says: string;
}

/** One dated text of a rule. */
export interface BodyExplained {
  version: number;
  /** First date it holds; null: since before any flight the engine may judge. */
  from: LocalDate | null;
  /** First date it no longer holds; null: still. */
  to: LocalDate | null;
  inForce: boolean;
  citation: Citation;
  sourceWord: string;
}

/** One rule of the book. */
export interface RuleExplained {
  id: string;
  title: string;
  weight: Weight;
  weightWord: string;
  weightSays: string;
  binds: Rule['binds'];
  bindsWord: string;
  /** The condition told when the facts are not known yet, for rules settled just before departure. */
  whenUnknown: string | null;
  /** Null when no text of the rule is in force on the day. */
  inForce: BodyExplained | null;
  bodies: BodyExplained[];
  branches: BranchExplained[];
  reads: { key: string; words: string }[];
  parameters: ParameterExplained[];
  /** What can cure it, each with an example. */
  cures: readonly ActSeen[];
}

/** A rule in the book's list: enough to find it by. */
export interface RuleListed extends Pick<
  RuleExplained,
  'id' | 'title' | 'weight' | 'weightWord' | 'binds' | 'bindsWord' | 'inForce' | 'branches'
> {
  /** The numbers in force on the day. */
  numbers: { id: string; title: string; says: string; ofClub: boolean }[];
}

/** What a flight fills in, as the rule book shows it. */
export const SLOT = '…';

/** A branch's sentence without a flight to fill it. */
export const readable = (says: string): string =>
  says.replace(/(?:\{[a-zA-Z0-9]+\})+/g, SLOT).replace(/…\.$/, SLOT);

/** The bodies of a rule, and which holds on a day. */
export function explainBodies(rule: Rule, day: LocalDate): BodyExplained[] {
  return rule.bodies.map(({ version, from, to, citation }) => ({
    version,
    from,
    to,
    inForce: (from === null || from <= day) && (to === null || day < to),
    citation,
    sourceWord: SOURCE_WORD[citation.status],
  }));
}

/** The ways a rule can come out, in its own order. */
export function explainBranches(rule: Rule): BranchExplained[] {
  return Object.entries(rule.branches).map(([name, { status, says }]) => ({
    name,
    status,
    statusWord: STATUS_WORD[status],
    says: readable(says),
  }));
}

/** One rule as of a day. */
export function explainRule(rule: Rule, ruleset: Ruleset, day: LocalDate): RuleExplained {
  const bodies = explainBodies(rule, day);
  return {
    id: rule.id,
    title: rule.title,
    weight: rule.weight,
    weightWord: WEIGHT_WORD[rule.weight],
    weightSays: weightSays({ ...rule, overridable: isOverridable(rule) }),
    binds: rule.binds,
    bindsWord: BINDS_WORD[rule.binds],
    whenUnknown: rule.whenUnknown ?? null,
    inForce: bodies.find((body) => body.inForce) ?? null,
    bodies,
    branches: explainBranches(rule),
    reads: rule.reads.map((key) => ({ key, words: factWords(key) })),
    parameters: rule.parameters.map((id) => explainParameter(ruleset.book, id, day)),
    cures: ACTS_SEEN[rule.id] ?? [],
  };
}

/** The whole book of a set, in the set's order. */
export function catalogueOf(ruleset: Ruleset, day: LocalDate): RuleExplained[] {
  return ruleset.rules.map((rule) => explainRule(rule, ruleset, day));
}

/** A rule of the book as it stands in the list. */
export function listedRule(rule: RuleExplained): RuleListed {
  const { id, title, weight, weightWord, binds, bindsWord, inForce, branches, parameters } = rule;
  const numbers = parameters.map((one) => ({
    ...{ id: one.id, title: one.title, ofClub: one.ofClub },
    says: one.inForce?.says ?? NO_VALUE,
  }));
  return { id, title, weight, weightWord, binds, bindsWord, inForce, branches, numbers };
}
