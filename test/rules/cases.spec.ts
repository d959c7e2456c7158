import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import {
  rulesetFor,
  toInstant,
  ALL_RULES,
  POLICY_PARAMETERS,
  decide,
  startOfDay,
  type Finding,
  type PolicyValue,
} from '../../src/rules/index.js';
import { readCaseTable, sheetOf, type Case } from '../../src/rules/workshop/case-table.js';
import { startingPolicy } from '../../src/rules/packs/club/starting-policy.js';

const PACKS = join(__dirname, '../../src/rules/packs');

function tablesBelow(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.cases.yaml'))
    .map((name) => join(folder, name))
    .sort();
}

/** A later row for the same id and date replaces the starting one. */
const withPolicy = (changes: PolicyValue[]) => ({
  values: [
    ...startingPolicy().values.filter((value) => !changes.some((change) => change.id === value.id)),
    ...changes,
  ],
});

const tables = tablesBelow(PACKS).map((file) => ({
  file,
  table: readCaseTable(parse(readFileSync(file, 'utf8'))),
}));

/** The finding of one rule on a case; the other rules have their own tables. */
function findingOn(ruleId: string, one: Case): { finding: Finding; zone: string } {
  const { sheet, policy } = sheetOf(one);
  const whole = withPolicy(policy);
  const ruleset = rulesetFor(sheet.jurisdiction, whole);
  const rules = ruleset.rules.filter((rule) => rule.id === ruleId);
  if (rules.length !== 1)
    throw new Error(`${rules.length} rules ${ruleId} in the ${sheet.jurisdiction} pack`);
  return { finding: decide(sheet, whole, { ...ruleset, rules }).findings[0]!, zone: sheet.zone };
}

describe.each(tables)('$table.rule', ({ table }) => {
  test.each(table.cases)('$name [$source]', (one) => {
    const { finding, zone } = findingOn(table.rule, one);
    const { expect: wanted } = one;
    expect({ status: finding.status, says: finding.says }).toEqual({
      status: wanted.status,
      says: expect.stringContaining(wanted.says ?? ''),
    });
    if (wanted.branch !== undefined) expect(finding.branch).toBe(wanted.branch);
    if (wanted.counted) expect(finding.counted.map((counted) => counted.id)).toEqual(wanted.counted);
    if (wanted.remedies) expect(finding.remedies.map((remedy) => remedy.act)).toEqual(wanted.remedies);
    if (wanted.conditions) {
      expect(finding.conditions).toEqual(wanted.conditions.map((part) => expect.stringContaining(part)));
    }
    // The page shows them as a list under the heading "Before departure".
    for (const condition of finding.conditions)
      expect(condition).toMatch(/^(?!Before departure)[A-Z].*[^.]\.$/);
    if (wanted.until !== undefined) {
      const until =
        wanted.until !== null && wanted.until.length === 10
          ? toInstant(startOfDay(wanted.until, zone))
          : wanted.until;
      expect(finding.until).toBe(until);
    }
  });
});

describe('the rule book', () => {
  const tabled = new Map(tables.map(({ table }) => [table.rule, table]));

  test.each(ALL_RULES.map((rule) => [rule.id, rule] as const))(
    '%s has a case table that reaches every branch',
    (id, rule) => {
      const table = tabled.get(id);
      expect(table).toBeDefined();
      const reached = new Set<string>();
      for (const one of table!.cases) reached.add(findingOn(id, one).finding.branch);
      expect([...reached]).toEqual(expect.arrayContaining(Object.keys(rule.branches)));
    },
  );

  test('every policy parameter has a starting value', () => {
    const started = new Set(startingPolicy().values.map((value) => value.id));
    expect(POLICY_PARAMETERS.map((parameter) => parameter.id).filter((id) => !started.has(id))).toEqual([]);
  });
});
