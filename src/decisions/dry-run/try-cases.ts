/** Tries a rule on one batch of stored decisions. */
import type { EntityManager } from 'typeorm';
import {
  answerWith,
  rulesetAsThen,
  tryRule,
  type Answer,
  type Decision,
  type Finding,
  type LawBook,
  type Rule,
  type Ruleset,
  type Tried,
} from '../../rules/index.js';
import {
  readCases,
  readDecisionsOf,
  readLaws,
  type CaseRef,
  type StoredCase,
  type UnreadCase,
} from './stored-cases.js';
import type { Tally } from './tally.js';

/** A decision that was left out. */
export interface LeftOut {
  id: string;
  because: string;
}

/** Reads a batch, judges the rule and the club's other rules on it, and counts. Gives what could not be judged. */
export async function tryCases(
  em: EntityManager,
  refs: readonly CaseRef[],
  of: { rule: Rule; others: readonly Rule[]; tally: Tally },
): Promise<LeftOut[]> {
  const read = await readCases(em, refs);
  const leftOut: LeftOut[] = read.filter(isUnread).map(({ id, because }) => ({ id, because }));
  const tried: { stored: StoredCase; tried: Tried }[] = [];
  for (const stored of read) {
    if (isUnread(stored)) continue;
    try {
      const one = tryRule(of.rule, stored);
      of.tally.see(
        one.finding,
        of.others.map((other) => tryRule(other, stored).finding),
      );
      if (one.matters) tried.push({ stored, tried: one });
    } catch (error) {
      leftOut.push({ id: stored.id, because: (error as Error).message });
    }
  }
  const decisions = await readDecisionsOf(
    em,
    tried.map(({ stored }) => stored.id),
  );
  const laws = await readLaws(
    em,
    tried.map(({ stored }) => stored.lawDigest),
  );
  for (const { stored, tried: one } of tried) {
    try {
      note(of.tally, stored, one, answerOf(of.rule, one, stored, decisions.get(stored.id), laws));
    } catch (error) {
      leftOut.push({ id: stored.id, because: (error as Error).message });
    }
  }
  return leftOut;
}

function answerOf(
  rule: Rule,
  tried: Tried,
  stored: StoredCase,
  decision: Decision | undefined,
  laws: ReadonlyMap<string, LawBook>,
): Answer {
  if (!decision) throw new Error('the decision itself cannot be read');
  const asThen = (): Ruleset =>
    rulesetAsThen({
      ...{ jurisdiction: stored.sheet.jurisdiction, policy: stored.policy, rules: stored.rules },
      order: decision.findings.map((finding) => finding.rule),
      law: stored.lawDigest === null ? null : (laws.get(stored.lawDigest) ?? null),
    }).ruleset;
  return answerWith(rule, tried, { ...stored, decision, asThen });
}

function note(tally: Tally, stored: StoredCase, tried: Tried, after: Answer): void {
  const { id, bookingId, memberId, memberName, aircraftId, registration, answer, asOf, knownAt } = stored;
  if (after === answer) return;
  const finding = told(tried);
  tally.changed.push({
    ...{ decisionId: id, bookingId, memberId, memberName, aircraftId, registration },
    ...{ departs: asOf, askedAt: knownAt, before: answer, after },
    ...{ status: finding.status, says: finding.says },
  });
}

/** Where the rule is kept as asked and an instructor's way is closed by it, that is what is told. */
function told({ finding, dual }: Tried): Pick<Finding, 'status' | 'says'> {
  if (dual === null || (finding.status !== 'met' && finding.status !== 'not-applicable')) return finding;
  if (dual.finding.status === 'met' || dual.finding.status === 'not-applicable') return finding;
  return { status: dual.finding.status, says: `With an instructor aboard: ${dual.finding.says}` };
}

const isUnread = (one: StoredCase | UnreadCase): one is UnreadCase => 'because' in one;
