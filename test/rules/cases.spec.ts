import { ALL_RULES, POLICY_PARAMETERS } from '../../src/rules/index.js';
import { missesOf, runCase } from '../../src/rules/workshop/run-case.js';
import { readTables } from '../workshop/tables.js';
import { startingPolicy } from '../../src/rules/packs/club/starting-policy.js';

const tables = readTables();

describe.each(tables)('$table.rule', ({ table }) => {
  test.each(table.cases)('$name [$source]', (one) => {
    expect(missesOf(table.rule, one)).toEqual([]);
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
      for (const one of table!.cases) reached.add(runCase(id, one).finding.branch);
      expect([...reached]).toEqual(expect.arrayContaining(Object.keys(rule.branches)));
    },
  );

  test('every policy parameter has a starting value', () => {
    const started = new Set(startingPolicy().values.map((value) => value.id));
    expect(POLICY_PARAMETERS.map((parameter) => parameter.id).filter((id) => !started.has(id))).toEqual([]);
  });
});
