/** Tries a rule on one batch of stored decisions. */
import { setImmediate as nextTurn } from 'node:timers/promises';
import type { EntityManager } from 'typeorm';
import {
  answerWith,
  rulesetAsThen,
  tryRule,
  type Answer,
  type Decision,
  type Finding,
  type LawBook,
  type Policy,
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

/** What is tried: the rule, the club's other rules beside it, and where it is counted. */
export interface Trial {
  rule: Rule;
  others: readonly Rule[];
  tally: Tally;
}

/** Cases judged before others get their turn on this thread. */
const AT_A_STRETCH = 16;

/** Reads a batch, judges the rule and the club's other rules on it, and counts. Gives what could not be judged. */
export async function tryCases(
  em: EntityManager,
  refs: readonly CaseRef[],
  { rule, others, tally }: Trial,
): Promise<LeftOut[]> {
  const read = await readCases(em, refs);
  const leftOut: LeftOut[] = read.filter(isUnread).map(({ id, because }) => ({ id, because }));
  const attempt = async (cases: readonly StoredCase[], work: (one: StoredCase) => void): Promise<void> => {
    for (const [at, one] of cases.entries()) {
      if (at % AT_A_STRETCH === AT_A_STRETCH - 1) await nextTurn();
      try {
        work(one);
      } catch (error) {
        leftOut.push({ id: one.id, because: (error as Error).message });
      }
    }
  };
  const mattering = new Map<string, Tried>();
  const readable = read.filter((one): one is StoredCase => !isUnread(one));
  const see = (finding: Finding, of: StoredCase): void =>
    tally.see(
      finding,
      others.map((other) => tryRule(other, of).finding),
    );
  await attempt(readable, (one) => {
    const tried = tryRule(rule, one);
    if (tried.matters) mattering.set(one.id, tried);
    else see(tried.finding, one);
  });
  const left = readable.filter(({ id }) => mattering.has(id));
  const decisions = await readDecisionsOf(em, [...mattering.keys()]);
  const laws = await readLaws(
    em,
    left.map(({ lawDigest }) => lawDigest),
  );
  const sets = new RulesetsThen(laws);
  await attempt(left, (one) => {
    const decision = decisions.get(one.id);
    if (!decision) throw new Error('the decision itself cannot be read');
    const tried = mattering.get(one.id)!;
    const after = answerWith(rule, tried, { ...one, decision, asThen: () => sets.of(one, decision) });
    see(tried.finding, one);
    note(tally, one, tried, after);
  });
  return leftOut;
}

/** Sets of rules as decisions were made with them; those of one policy and one release are one. */
class RulesetsThen {
  private readonly made = new Map<Policy, Map<string, Ruleset>>();

  constructor(private readonly laws: ReadonlyMap<string, LawBook>) {}

  of({ sheet, policy, rules, lawDigest }: StoredCase, { findings }: Decision): Ruleset {
    const order = findings.map((finding) => finding.rule);
    const key = JSON.stringify([sheet.jurisdiction, lawDigest, order, rules]);
    const ofPolicy = this.made.get(policy) ?? new Map<string, Ruleset>();
    this.made.set(policy, ofPolicy);
    let set = ofPolicy.get(key);
    if (!set) {
      const law = lawDigest === null ? null : (this.laws.get(lawDigest) ?? null);
      set = rulesetAsThen({ jurisdiction: sheet.jurisdiction, policy, rules, order, law }).ruleset;
      ofPolicy.set(key, set);
    }
    return set;
  }
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
