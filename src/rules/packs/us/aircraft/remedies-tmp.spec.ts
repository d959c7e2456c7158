import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { applyRemedy, decide, judgeAll, rulesetFor, toSeconds } from '../../../index.js';
import { readCaseTable, sheetOf } from '../../../workshop/case-table.js';
import { baseSheet } from '../../../workshop/base-sheet.js';
import { startingPolicy } from '../../club/starting-policy.js';
import { US_AIRCRAFT_RULES } from './index.js';

const tables = readdirSync(__dirname, { recursive: true, encoding: 'utf8' })
  .filter((n) => n.endsWith('.cases.yaml'))
  .map((n) => readCaseTable(parse(readFileSync(join(__dirname, n), 'utf8'))));
const policy = startingPolicy();
const { book } = rulesetFor('US', policy);
const all = { rules: US_AIRCRAFT_RULES, book };
test('base sheet', () => {
  const s = baseSheet();
  const d = decide(s, policy, all);
  expect(
    d.findings.filter((f) => !['met', 'not-applicable'].includes(f.status)).map((f) => [f.rule, f.says]),
  ).toEqual([]);
  expect(d.conditions).toEqual([]);
  const dual = {
    ...s,
    flight: { ...s.flight, purpose: 'dual' as const, instructorId: 'instructor-1', personsOnBoard: 2 },
  };
  expect(
    decide(dual, policy, all).findings.filter((f) => !['met', 'not-applicable'].includes(f.status)),
  ).toEqual([]);
});
describe.each(tables)('$rule', (table) => {
  const rules = US_AIRCRAFT_RULES.filter((r) => r.id === table.rule);
  const reached = new Set<string>();
  test.each(table.cases)('$name', (one) => {
    const { sheet } = sheetOf(one);
    const d = decide(sheet, policy, { rules, book });
    const f = d.findings[0]!;
    reached.add(f.branch);
    expect(f.status).toBe(one.expect.status);
    if (one.expect.branch) expect(f.branch).toBe(one.expect.branch);
    expect(f.says).toContain(one.expect.says ?? '');
    if (one.expect.counted) expect(f.counted.map((c) => c.id)).toEqual(one.expect.counted);
    if (one.expect.remedies) expect(f.remedies.map((r) => r.act)).toEqual(one.expect.remedies);
    if (one.expect.conditions)
      expect(f.conditions).toEqual(one.expect.conditions.map((c) => expect.stringContaining(c)));
    if (one.expect.until !== undefined) expect(f.until).toBe(one.expect.until);
    for (const remedy of f.remedies) {
      const after = applyRemedy(sheet, d.crew, remedy);
      const g = judgeAll(after, { rules, book }, toSeconds(after.flight.departs)).judged[0]!.finding;
      if (!['met', 'not-applicable'].includes(g.status))
        throw new Error(`${remedy.act}: ${g.status} ${g.says}`);
    }
  });
  test('branches', () =>
    expect([...reached]).toEqual(expect.arrayContaining(Object.keys(rules[0]!.branches))));
});
