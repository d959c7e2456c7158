/** Numbers due to be held against their source again, told ahead and in the order in which they fall due. */
import { toSeconds } from '../../../src/rules/calendar/instants.js';
import { judgeAll } from '../../../src/rules/engine/judge.js';
import { ParameterBook } from '../../../src/rules/engine/parameters.js';
import { declaredBy, parametersChecked } from '../../../src/rules/engine/stale.js';
import { defineParameter } from '../../../src/rules/parameters/parameter.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';

const parameter = (id: string, checkedOn: string, ends: string | null = null) =>
  defineParameter({
    id,
    title: id,
    unit: 'days',
    values: [
      { from: null, value: 1, reference: 'x' },
      ...(ends ? [{ from: ends, value: null, reference: 'y' }] : []),
    ],
    checkedOn,
    status: 'seen',
    recheckAfterMonths: 12,
  });
const sheet = baseSheet();
/** What is said of a flight at noon of a day. */
const said = (parameters: ReturnType<typeof parameter>[], date: string) => {
  const book = new ParameterBook(parameters, { values: [] });
  const rule = parametersChecked(
    book,
    parameters.map(({ id }) => id),
  );
  const noon = toSeconds(`${date}T19:00:00Z`);
  return judgeAll(sheet, { rules: [rule], book }, noon).judged[0]!.finding.says;
};
const GOOD = 'The numbers behind the rules have been re-checked lately enough';

// Told by id: the first falls due last.
const three = [
  parameter('us.a', '2026-06-30'),
  parameter('us.b', '2026-04-30'),
  parameter('us.c', '2026-05-31'),
];
test.each([
  ['2027-04-30', `${GOOD}; the next are due by 2027-04-30.`],
  ['2027-05-01', 'Hold these numbers against their source again: “us.b” (to be re-checked by 2027-04-30).'],
  [
    '2027-07-01',
    'Hold these numbers against their source again: “us.b” (to be re-checked by 2027-04-30); “us.c” (to be re-checked by 2027-05-31); “us.a” (to be re-checked by 2027-06-30).',
  ],
])('on %s, in order of their dates, whatever the order of their names', (date, says) => {
  expect(said(three, date)).toBe(says);
});
test('of many due on one day two are named', () => {
  const many = ['us.a', 'us.b', 'us.c', 'us.d'].map((id) => parameter(id, '2026-04-30'));
  const by = 'to be re-checked by 2027-04-30';
  const again = 'Hold these numbers against their source again:';
  expect(said(many, '2027-05-01')).toBe(`${again} “us.a”, “us.b” and 2 more (${by}).`);
  expect(said(many.slice(0, 2), '2027-05-01')).toBe(`${again} “us.a”, “us.b” (${by}).`);
});
test('the end of a value is told thirty days ahead, and no more once it is there', () => {
  const ending = [parameter('us.a', '2026-12-31', '2027-07-01')];
  const told = 'Hold these numbers against their source again: “us.a” (no value from 2027-07-01).';
  expect(['2027-05-31', '2027-06-01', '2027-06-30', '2027-07-01'].map((date) => said(ending, date))).toEqual([
    `${GOOD}; the next are due by 2027-12-31.`,
    told,
    told,
    `${GOOD}; the next are due by 2027-12-31.`,
  ]);
});
test('a club’s own numbers are the club’s to check', () => {
  expect(said([parameter('club.a', '2020-01-01')], '2027-05-01')).toBe(`${GOOD}.`);
});

test('three due on one day: two named, one counted, in the order of their ids', () => {
  const three = ['us.c', 'us.a', 'us.b'].map((id) => parameter(id, '2026-04-30'));
  expect(said(three, '2027-05-01')).toContain('“us.a”, “us.b” and 1 more (');
});
test('another value from a day on is no end, nor is a number that never had one', () => {
  const dated = (values: object[]) =>
    defineParameter({
      ...parameter('us.a', '2026-12-31'),
      title: 'Days of grace',
      values: values as ReturnType<typeof parameter>['values'],
    });
  const first = { from: null, value: 1, reference: 'x' };
  const next = `${GOOD}; the next are due by 2027-12-31.`;
  expect(said([dated([first, { from: '2027-07-01', value: 2, reference: 'y' }])], '2027-06-15')).toBe(next);
  expect(said([dated([{ ...first, value: null }])], '2027-06-15')).toBe(next);
  // Told by its title, not by its id.
  expect(said([dated([first, { from: '2027-07-01', value: null, reference: 'y' }])], '2027-06-15')).toContain(
    '“Days of grace” (no value from 2027-07-01)',
  );
});
test('the end of what a club set and nobody declared is told by its id', () => {
  const row = (from: string, value: number | null) => ({ id: 'club.x', from, value, reference: 'minutes' });
  const book = new ParameterBook([], { values: [row('2020-01-01', 1), row('2027-07-01', null)] });
  const rules = [parametersChecked(book, ['club.x'])];
  const { finding } = judgeAll(sheet, { rules, book }, toSeconds('2027-06-15T19:00:00Z')).judged[0]!;
  expect(finding.says).toContain('“club.x” (no value from 2027-07-01)');
});
test('looked at is what the rules of a set declare', () => {
  const rule = parametersChecked(new ParameterBook([], { values: [] }), []);
  expect(
    declaredBy([{ ...rule, parameters: ['us.a', 'us.b'] }, rule, { ...rule, parameters: ['us.c'] }]),
  ).toEqual(['us.a', 'us.b', 'us.c']);
});
