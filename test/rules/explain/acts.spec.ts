import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ACTS_SEEN } from '../../../src/rules/explain/acts-seen.js';
import { runCase } from '../../../src/rules/workshop/run-case.js';
import { TABLES } from './case-tables.js';

const FILE = join(__dirname, '../../../src/rules/explain/acts-seen.ts');
const WRITING = process.env['BELLCRANK_TEST_WRITE_ACTS'] === '1';

/** Each act that a rule's cases offer, in the order of the cases, with the first sentence it was offered by. */
function linesOf({ rule, cases }: (typeof TABLES)[number]): string[] {
  const lines = new Map<string, string>();
  for (const one of cases) {
    for (const { act, by, title } of runCase(rule, one).finding.remedies)
      if (!lines.has(act)) lines.set(act, [rule, act, by, title].join(' | '));
  }
  return [...lines.values()];
}

test('the rule book’s acts are those that the case tables offer; if not: npm run acts:write', () => {
  const tables = [...TABLES].sort((a, b) => (a.rule < b.rule ? -1 : 1));
  const seen = tables.flatMap(linesOf);
  expect(seen.length).toBeGreaterThan(100);
  expect(seen.filter((line) => /[`\\$]/.test(line) || line.split(' | ').length !== 4)).toEqual([]);
  if (WRITING) {
    const text = readFileSync(FILE, 'utf8');
    writeFileSync(
      FILE,
      text.replace(/const TABLE = `[^`]*`/, () => `const TABLE = \`\n${seen.join('\n')}\n\``),
    );
    return;
  }
  const held = Object.entries(ACTS_SEEN).flatMap(([rule, acts]) =>
    acts.map(({ act, by, example }) => [rule, act, by, example].join(' | ')),
  );
  expect(held).toEqual(seen);
});
