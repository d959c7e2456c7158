import { show } from '../../platform/http/views.js';
import {
  checkRule,
  warningsOf,
  type ClubRule,
  type LocalDate,
  type ReadRule,
  type RuleTexts,
} from '../../rules/index.js';
import { CheckView, ClubRuleView, DryRunHeadView, type Phase } from './club-rule-view.dto.js';
import type { ClubRuleDryRunRow, ClubRuleRow } from './club-rule.entity.js';

/** What a version is on a day. One that was taken back before it began is past. */
export function phaseOf({ state, inForceFrom, inForceTo }: ClubRuleRow, day: LocalDate): Phase {
  if (state === 'draft' || inForceFrom === null) return 'draft';
  if (inForceTo !== null && (inForceTo <= day || inForceTo <= inForceFrom)) return 'past';
  return inForceFrom > day ? 'to-come' : 'in-force';
}

/** The version as the rules take it. `from` stands in for the first day of a draft, which has none yet. */
export const ruleOf = (row: ClubRuleRow, from: LocalDate): ClubRule => ({
  ...{ code: row.code, version: row.version, title: row.title, weight: row.weight },
  ...{ appliesWhen: row.appliesWhen, requirement: row.requirement, message: row.message },
  ...{ condition: row.condition, document: row.document },
  ...{ from: row.inForceFrom ?? from, to: row.inForceTo },
});

/** The rules whose text can be read. */
export function readRules(rows: readonly ClubRuleRow[]): ReadRule[] {
  return rows.flatMap((row) => {
    const { rule: checked } = checkRule(row);
    return checked ? [{ rule: row, checked }] : [];
  });
}

/** What a check of texts found; null when they cannot be read. */
export function checkView(
  texts: RuleTexts & Pick<ClubRule, 'code' | 'title' | 'condition'>,
  others: readonly ReadRule[],
): CheckView | null {
  const { rule: checked } = checkRule(texts);
  if (!checked) return null;
  const { reads, cost } = checked;
  return { reads, cost, warnings: warningsOf({ rule: texts, checked }, others) };
}

/** A version as an answer. `others`: versions in force or to come; `runs`: its dry runs. */
export function ruleView(
  row: ClubRuleRow,
  of: { today: LocalDate; others: readonly ReadRule[]; run: ClubRuleDryRunRow | null },
): ClubRuleView {
  const { rule: checked, faults } = checkRule(row);
  return show(ClubRuleView, row, {
    phase: phaseOf(row, of.today),
    reads: checked?.reads ?? [],
    cost: checked?.cost ?? null,
    faults: faults ?? [],
    warnings: checked ? warningsOf({ rule: row, checked }, of.others) : [],
    dryRun: of.run && dryRunHead(of.run, row),
  });
}

const dryRunHead = (run: ClubRuleDryRunRow, { state, rowVersion }: ClubRuleRow): DryRunHeadView => ({
  at: run.recordedAt,
  by: run.runBy,
  lookedAt: run.lookedAt,
  changed: run.changed,
  ofThisDraft: state === 'draft' && run.draftVersion === rowVersion,
});
