/** Why a stored decision came out as it did, as this reader may know it. Nothing is looked up: the facts are stored with it. */
import type { SignedIn } from '../../accounts/current-user.js';
import {
  derive,
  explainAnswer,
  type AnswerExplained,
  type DerivedFrom,
  type Derivation,
} from '../../rules/explain/index.js';
import { rulesetAsThen } from '../../rules/index.js';
import { asSeenBy, hiddenBehind } from '../privacy.js';
import { DamagedDecision, type StoredDecision } from '../stored-decision.js';

/** The answer and the derivations of its findings, in their order. */
export interface Why {
  answer: AnswerExplained;
  derivations: Derivation[];
}

/**
 * Explains a decision and every finding of it, or only that of one rule (none when the decision has none of it).
 *
 * @throws DamagedDecision when what is stored cannot be explained at all.
 */
export function why(stored: StoredDecision, viewer: SignedIn, rule: string | null): Why {
  try {
    return explain(stored, viewer, rule);
  } catch (error) {
    throw new DamagedDecision(
      stored.id,
      stored.memberId,
      `it cannot be explained (${(error as Error).message})`,
    );
  }
}

function explain(stored: StoredDecision, viewer: SignedIn, rule: string | null): Why {
  const { decision, sheet } = stored;
  const from = derivedFrom(stored);
  const seen = asSeenBy(viewer, sheet, decision);
  const findings = seen.findings.filter((finding) => rule === null || finding.rule === rule);
  return {
    answer: explainAnswer(seen, from),
    derivations: findings.map((finding) =>
      derive(finding, from, hiddenBehind(viewer, finding, { sheet, crew: decision.crew })),
    ),
  };
}

/** The rules and numbers of then, as far as the release has them. */
function derivedFrom({ decision, sheet, policy, law, rules }: StoredDecision): DerivedFrom {
  const order = decision.findings.map((finding) => finding.rule);
  const { ruleset } = rulesetAsThen({ jurisdiction: sheet.jurisdiction, policy, rules, order, law });
  return { sheet, ruleset, asOf: decision.asOf };
}
