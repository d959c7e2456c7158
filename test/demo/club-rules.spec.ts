/** The demo club's own rules: readable, without warnings, two in force and a draft to try. */
import { generateClub } from '../../src/demo/generate.js';
import { DEMO_SEED } from '../../src/demo/ids.js';
import { checkRule, warningsOf } from '../../src/rules/index.js';

const { club_rules: rows } = generateClub({ seed: DEMO_SEED, asOf: '2026-11-25T15:00:00Z' }).rows;
const texts = rows.map((row) => ({ ...row, appliesWhen: row.applies_when }));

test.each(texts)('$code is taken as it is', (row) => {
  const { rule, faults } = checkRule(row);
  expect(faults).toBeNull();
  const others = texts
    .filter(({ code }) => code !== row.code)
    .map((other) => ({ rule: other, checked: checkRule(other).rule! }));
  expect(warningsOf({ rule: row, checked: rule! }, others)).toEqual([]);
});

test('two are in force, and one waits for a dry run', () => {
  expect(rows.map(({ state }) => state).sort()).toEqual(['active', 'active', 'draft']);
});
