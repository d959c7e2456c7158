/** Case tables are read strictly: what is not understood is refused with its line, so that no case tests nothing. */
import { readTable, readTables } from '../../workshop/tables.js';
import { missesOf, runCase } from '../../../src/rules/workshop/run-case.js';
import { edgesIn } from '../../../src/rules/workshop/edges.js';

const read = (text: string) => readTable('x.cases.yaml', text);
const CASE = `rule: recency.passengers.day
cases:
  - name: one
    source: 14 CFR 61.57(a)
    given:
      flight: { personsOnBoard: 2, purpose: passengers }
      pic.log: [{ on: Sat 2027-02-20, takeoffs: 3, landings: 3 }]
    expect: { status: met, until: Sun 2027-05-23 }
`;
/** The case with one piece of its text changed. */
const changed = (from: string, to: string): string => {
  expect(CASE).toContain(from);
  return CASE.replace(from, to);
};

test('a table in order is read, its times as instants', () => {
  const { table, lines } = read(changed('given:', 'given:\n      asOf: Mon 2027-03-01 11:00'));
  expect(table.cases[0]!.given).toMatchObject({
    asOf: '2027-03-01T18:00:00Z',
    'pic.log': [{ on: '2027-02-20', takeoffs: 3, landings: 3 }],
  });
  expect(table.cases[0]!.expect.until).toBe('2027-05-23');
  expect(lines).toEqual([3]);
});

test.each([
  ['rule: recency', 'rules: recency', 1, '"rules" is not one of rule, cases'],
  ['    source: 14 CFR 61.57(a)\n', '', 3, 'a case needs a source in words'],
  ['source: 14 CFR 61.57(a)', 'source: ""', 4, 'a case needs a source in words'],
  ['source:', 'sauce:', 4, '"sauce" is not one of name, source, given, expect, todo'],
  ['pic.log', 'pic.logs', 7, 'pic.logs is no fact'],
  ['pic.log', 'aircraft.log', 7, 'aircraft.log is no fact'],
  ['pic.log', 'copilot.log', 7, 'copilot.log is no fact'],
  ['takeoffs', 'takeofs', 7, '"takeofs" is not one of'],
  ['personsOnBoard', 'persons', 6, '"persons" is not one of'],
  ['purpose: passengers', 'purpose: passenger', 6, 'passenger is not one of solo, passengers'],
  ['takeoffs: 3', 'takeoffs: three', 7, 'takeoffs should be a number'],
  ['[{ on: Sat 2027-02-20, takeoffs: 3, landings: 3 }]', 'none', 7, 'pic.log is a list'],
  ['Sat 2027-02-20', 'Fri 2027-02-20', 7, '2027-02-20 is a Sat, not a Fri'],
  ['Sat 2027-02-20', '2027-02-30', 7, 'there is no 2027-02-30'],
  ['Sat 2027-02-20', '20.02.2027', 7, 'should be a date'],
  ['Sat 2027-02-20', '2027-2-20', 7, 'should be a date'],
  ['Sun 2027-05-23', 'Mon 2027-05-23', 8, '2027-05-23 is a Sun, not a Mon'],
  ['status: met', 'status: good', 8, 'expects a status: one of met, short'],
  ['status: met, ', '', 8, 'expects a status'],
  ['until: Sun 2027-05-23', 'till: 2027-05-23', 8, '"till" is not one of'],
  ['until: Sun 2027-05-23', 'counted: log-1', 8, 'counted is a list'],
  ['given:', 'given:\n      asOf: Mon 2027-03-01', 6, 'should be a time'],
  ['given:', 'given:\n      asOf: Sun 2027-03-14 02:30', 6, 'is no time, or not one time'],
  ['given:', 'given:\n      jurisdiction: FR', 6, 'one of US, EU, CA'],
  ['given:', 'given:\n      durationMinutes: long', 6, 'minutes, as a number'],
  ['given:', 'given:\n      policy: [{ id: club.x, from: 2027-01-01, value: 1 }]', 6, 'has a reference'],
  ['given:', 'given:\n      policy: { club.x: [1] }', 6, 'a value of policy is a single one'],
  ['given:', 'given:\n      policy: club.x', 6, 'should be'],
  ['  - name: one', '  - name: one\n    name: two', 4, 'Map keys must be unique'],
])('%s as %s is refused at line %i: %s', (from, to, line, because) => {
  const text = changed(from, to);
  expect(() => read(text)).toThrow(`x.cases.yaml:${line}: `);
  expect(() => read(text)).toThrow(because);
});

test('a value of policy alone holds from long before; an airfield is the home field, or laid over it', () => {
  const { table } = read(changed('given:', 'given:\n      policy: { club.x: 12 }'));
  expect(table.cases[0]!.given!.policy).toEqual([
    { id: 'club.x', from: '2020-01-01', value: 12, reference: 'test' },
  ]);
  const route = 'route: [home, { code: XQFR, runways: [{ lengthFt: 1800 }] }], purpose: passengers';
  const away = read(changed('purpose: passengers', route)).table.cases[0]!.given!.flight;
  expect(away).toMatchObject({
    route: [
      { code: 'XQHB', runways: [{ designator: '09' }, { designator: '27' }] },
      { code: 'XQFR', zone: 'America/Denver', runways: [{ designator: '09', lengthFt: 1800 }] },
    ],
  });
});

test('two cases of one name are refused', () => {
  expect(() => read(CASE + CASE.slice(CASE.indexOf('  - name')))).toThrow(
    'x.cases.yaml:9: a second case is called "one"',
  );
});

test('a case still to be filled in fails and says what is wanted', () => {
  const { table } = read(changed('    given:', '    todo: the log of a pilot just short\n    given:'));
  expect(missesOf(table.rule, table.cases[0]!)).toEqual(['to be filled in: the log of a pilot just short']);
});

test.each([
  [{ status: 'short' as const }, 'status should be "short" and is "met: '],
  [{ status: 'met' as const, branch: 'short' }, 'branch should be "short" and is "enough"'],
  [{ status: 'met' as const, says: 'two take-offs' }, 'the sentence should say "two take-offs"'],
  [{ status: 'met' as const, until: null }, 'until should be null and is "'],
  [{ status: 'met' as const, until: '2027-05-22' }, 'until should be "2027-05-22T06:00:00Z" and is "'],
  [{ status: 'met' as const, counted: [] }, 'counted should be [] and is ["log-1"]'],
  [
    { status: 'met' as const, remedies: ['fly-landings-day'] },
    'remedies should be ["fly-landings-day"] and is []',
  ],
  [{ status: 'met' as const, conditions: ['Be down'] }, 'conditions should be ["Be down"] and is []'],
])('an expectation that does not hold is told: %j', (expect_, miss) => {
  const { table } = read(CASE);
  expect(missesOf(table.rule, { ...table.cases[0]!, expect: expect_ })).toEqual([
    expect.stringContaining(miss),
  ]);
});

test('edges are pairs of cases a smallest step apart that come out differently', () => {
  const { table } = readTables().find((one) => one.table.rule === 'review.flight_24_months')!;
  const came = table.cases.map((one) => ({ one, came: runCase(table.rule, one).finding.branch }));
  expect(edgesIn(came)).toContainEqual(expect.objectContaining({ value: 'asOf', step: 'a day' }));
  expect(edgesIn(came.map(({ one }) => ({ one, came: 'the same' })))).toEqual([]);
});
