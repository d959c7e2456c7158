/**
 * Why a finding came out as it did: the facts it read, the numbers, the text in force, the branch taken among all. Derived
 * by judging the stored facts once more while watching; nothing is stored for it.
 */
import { localDateOf, toSeconds, type Instant } from '../calendar/instants.js';
import { canonicalJson } from '../engine/digest.js';
import type { Finding } from '../engine/finding.js';
import { crewAt, judgeRule, type Ruleset } from '../engine/judge.js';
import type { Rule, Status } from '../engine/rule.js';
import type { FactKey } from '../facts/keys.js';
import type { FactSheet } from '../facts/sheet.js';
import { explainBodies, explainBranches, type BodyExplained, type BranchExplained } from './catalogue.js';
import { factWords } from './fact-words.js';
import { explainFact, type FactRead } from './facts-read.js';
import { explainNumbers, type NumberRead } from './numbers-read.js';
import { explainRequest } from './request-read.js';
import {
  changesFrom,
  mayChangeFrom,
  NEVER_CHANGES,
  RULE_SINCE_CHANGED,
  withheld,
  type Hidden,
} from './sentences.js';
import { explainSun, type SunSeen } from './sun-seen.js';
import { traced, type Trace } from './trace.js';
import { BINDS_WORD, STATUS_WORD, WEIGHT_WORD, weightSays } from './words.js';

/** A branch, and whether the judgement took it. */
export interface BranchTaken extends BranchExplained {
  taken: boolean;
}

/** What the verdict becomes when nothing but time passes. */
export interface Change {
  /** Departure from which it changes; null: time alone never changes it. */
  at: Instant | null;
  says: string;
  /** The verdict from then on; null when it is not known, or stays. */
  then: { status: Status; statusWord: string; says: string; conditions: string[] } | null;
}

/** The whole derivation of a finding. */
export interface Derivation {
  finding: Finding;
  statusWord: string;
  weightWord: string;
  weightSays: string;
  bindsWord: string;
  /** Why the facts are not shown, when they are somebody else's. */
  withheld: string | null;
  /** Judging again gives this very finding. If not, `note` says what that means. */
  reproduced: boolean;
  note: string | null;
  facts: FactRead[];
  /** Facts the rule may read and did not need, or that are withheld, by name. */
  unread: { key: string; words: string }[];
  /** What it took from the flight as asked. */
  request: string[];
  /** The sun's day at each field of the route, where the rule asked about the night. */
  sun: SunSeen[];
  numbers: NumberRead[];
  /** The text that was in force; null where none was, or the rule is no longer known. */
  body: BodyExplained | null;
  branches: BranchTaken[];
  change: Change | null;
}

/** What a derivation is made of: the stored facts, the rules they were judged by, the departure. */
export interface DerivedFrom {
  sheet: FactSheet;
  ruleset: Ruleset;
  asOf: Instant;
}

/** Derives one finding. `hidden`: the reader may not see what is behind it, and `finding` is already the covered one. */
export function derive(finding: Finding, from: DerivedFrom, hidden: Hidden | null): Derivation {
  const rule = from.ruleset.rules.find((one) => one.id === finding.rule);
  const head = {
    finding,
    statusWord: STATUS_WORD[finding.status],
    weightWord: WEIGHT_WORD[finding.weight],
    weightSays: weightSays(finding),
    bindsWord: BINDS_WORD[finding.binds],
    body: rule ? bodyOf(rule, finding, from) : null,
  };
  if (hidden) return { ...head, ...covered(rule, finding, hidden) };
  const again = rule ? judgeAgain(rule, from) : null;
  const reproduced = again !== null && sameFinding(again.finding, finding);
  const trace = reproduced ? again.trace : declared(finding);
  const { crew } = crewAt(from.sheet, from.ruleset, toSeconds(from.asOf));
  const { sheet } = from;
  return {
    ...head,
    withheld: null,
    reproduced,
    note: reproduced ? null : RULE_SINCE_CHANGED,
    facts: [...trace.facts].map(([key, fields]) =>
      explainFact(key, { sheet, crew, counted: finding.counted, fields }),
    ),
    unread: named(finding.reads.filter((key) => !trace.facts.has(key as FactKey))),
    request: explainRequest(sheet, crew, trace),
    sun: trace.sun ? explainSun(sheet, toSeconds(from.asOf)) : [],
    numbers: explainNumbers(finding.parameters, from.ruleset.book),
    branches: branchesOf(rule, finding.branch),
    change: reproduced ? changeOf(rule!, finding, from) : null,
  };
}

/** Of a finding on somebody else's record only what is in the rule book, and that it is met or not. */
function covered(rule: Rule | undefined, finding: Finding, hidden: Hidden) {
  return {
    withheld: withheld(hidden),
    reproduced: true,
    note: null,
    facts: [],
    unread: named(finding.reads),
    request: [],
    sun: [],
    numbers: [],
    branches: branchesOf(rule, null),
    change: null,
  };
}

const named = (keys: readonly string[]) => keys.map((key) => ({ key, words: factWords(key as FactKey) }));

function branchesOf(rule: Rule | undefined, taken: string | null): BranchTaken[] {
  return rule ? explainBranches(rule).map((branch) => ({ ...branch, taken: branch.name === taken })) : [];
}

/** Of a rule that has changed since, what it declares is the best that can be said of what it read. */
const declared = (finding: Finding): Trace => ({
  facts: new Map(finding.reads.map((key) => [key as FactKey, new Set(['registration', 'makeModel'])])),
  flight: new Set(),
  crew: new Set(),
  sun: false,
});

function judgeAgain(rule: Rule, from: DerivedFrom): { finding: Finding; trace: Trace } {
  const departs = toSeconds(from.asOf);
  const { crew } = crewAt(from.sheet, from.ruleset, departs);
  const watched = traced(rule);
  const { finding } = judgeRule(watched.rule, from.sheet, from.ruleset, crew, departs);
  return { finding, trace: watched.trace };
}

const sameFinding = (a: Finding, b: Finding): boolean =>
  canonicalJson({ ...a, until: null }) === canonicalJson({ ...b, until: null });

function bodyOf(rule: Rule, finding: Finding, { sheet, asOf }: DerivedFrom): BodyExplained | null {
  const bodies = explainBodies(rule, localDateOf(toSeconds(asOf), sheet.zone));
  return bodies.find(({ version }) => version === finding.version) ?? null;
}

function changeOf(rule: Rule, finding: Finding, from: DerivedFrom): Change {
  const { until } = finding;
  if (until === null) return { at: null, says: NEVER_CHANGES, then: null };
  const departs = toSeconds(until);
  const { crew } = crewAt(from.sheet, from.ruleset, departs);
  const { status, says, conditions } = judgeRule(rule, from.sheet, from.ruleset, crew, departs).finding;
  if (status === finding.status && conditions.join('\n') === finding.conditions.join('\n'))
    return { at: until, says: mayChangeFrom(until), then: null };
  return {
    at: until,
    says: changesFrom(until),
    then: { status, statusWord: STATUS_WORD[status], says, conditions },
  };
}
