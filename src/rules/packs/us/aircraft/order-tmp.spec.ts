import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { decide, rulesetFor, type FactSheet } from '../../../index.js';
import { readCaseTable, sheetOf } from '../../../workshop/case-table.js';
import { startingPolicy } from '../../club/starting-policy.js';
import { US_AIRCRAFT_RULES } from './index.js';

const tables = readdirSync(__dirname, { recursive: true, encoding: 'utf8' })
  .filter((n) => n.endsWith('.cases.yaml'))
  .map((n) => readCaseTable(parse(readFileSync(join(__dirname, n), 'utf8'))));
const policy = startingPolicy();
const { book } = rulesetFor('US', policy);
function reversed(s: FactSheet): FactSheet {
  const aircraft = Object.fromEntries(
    Object.entries(s.aircraft).map(([k, v]) => [
      k,
      typeof v === 'object' && v.known && Array.isArray(v.value)
        ? { ...v, value: [...v.value].reverse() }
        : v,
    ]),
  );
  return { ...s, aircraft: aircraft as never };
}
describe.each(tables)('$rule', (table) => {
  test.each(table.cases)('$name', (one) => {
    const rules = US_AIRCRAFT_RULES;
    const { sheet } = sheetOf(one);
    const strip = (s: FactSheet) =>
      decide(s, policy, { rules, book }, s.flight.departs, { days: 3, stepsPerRule: 40 }).findings.map(
        (f) => ({ ...f, remedies: f.remedies.map((r) => [r.act, r.title]) }),
      );
    const a = strip(sheet);
    expect(strip(reversed(sheet))).toEqual(a);
    expect(a.filter((f) => f.status === 'error')).toEqual([]);
  });
});
