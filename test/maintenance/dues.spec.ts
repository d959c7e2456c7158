/**
 * The due list and the rules read the same limits: on the last day of the list a rule is met, on the day after it is short. What the
 * rules say is held against 14 CFR by their own case tables.
 */
import {
  duesByItems,
  duesUnder14Cfr,
  type ItemFact,
  type LocalDate,
  addDays,
} from '../../src/rules/index.js';
import { runCase } from '../../src/rules/workshop/run-case.js';
import { ITEM } from '../../src/rules/workshop/records.js';

const item = (more: Partial<ItemFact>): ItemFact => ({ ...ITEM, ...more });
/** The verdict of a rule for a flight at noon of a day, with just this item. */
const verdict = (rule: string, on: LocalDate, fields: object, flight: object = {}): string =>
  runCase(rule, {
    name: 'due',
    source: 'due list',
    given: {
      ...{ asOf: `${on}T18:00:00Z`, knownAt: '2026-01-01T00:00:00Z', flight },
      'aircraft.items': [fields],
      'aircraft.permits': [],
    },
    expect: { status: 'met' },
  } as never).finding.status;

const verdictOf = (on: LocalDate, items: object[]): string =>
  runCase('inspection.annual', {
    ...{ name: 'due', source: 'due list', expect: { status: 'met' } },
    given: {
      ...{ asOf: `${on}T18:00:00Z`, knownAt: '2026-01-01T00:00:00Z' },
      ...{ 'aircraft.items': items, 'aircraft.permits': [] },
    },
  } as never).finding.status;

test.each([
  ['inspection.annual', { kind: 'annual', calendarMonths: null, lastDoneOn: '2026-02-10' }, {}],
  [
    'inspection.transponder',
    { kind: 'transponder', calendarMonths: null, lastDoneOn: '2025-02-28' },
    { usesTransponder: true },
  ],
  [
    'inspection.altimeter_static',
    { kind: 'altimeter-static', calendarMonths: null, lastDoneOn: '2025-12-31' },
    { flightRules: 'IFR' },
  ],
  ['inspection.elt', { kind: 'elt-inspection', calendarMonths: null, lastDoneOn: '2026-06-30' }, {}],
] as const)('%s: last day of the list met, the day after short', (rule, fields, flight) => {
  const [due] = duesUnder14Cfr([item(fields)], '2026-11-26');
  expect(due!.throughOn).not.toBeNull();
  expect(verdict(rule, due!.throughOn!, fields, flight)).toBe('met');
  expect(verdict(rule, addDays(due!.throughOn!, 1), fields, flight)).toBe('short');
});

test('a club’s item counts whichever of its limits comes first, and directives by what they say', () => {
  const club = item({
    kind: 'club',
    calendarMonths: null,
    days: 120,
    intervalTenths: 500,
    lastDoneOn: '2026-09-01',
    lastDoneTenths: 9000,
  });
  expect(duesUnder14Cfr([club], '2026-11-26')).toMatchObject([
    { throughOn: '2026-12-30', throughTenths: 9500, settled: false, neverDone: false },
  ]);
  expect(verdict('item.club', '2026-12-30', { ...club, intervalTenths: null })).toBe('met');
  expect(verdict('item.club', '2026-12-31', { ...club, intervalTenths: null })).toBe('short');
});

test('the 100-hour inspection runs from the last annual or 100-hour inspection, late ones from where they were due', () => {
  // 14 CFR 91.409(b): inspected at 1106 h, due at 1100 h: the next at 1200 h. Reference value of the rules' case table.
  const items = [
    item({ id: 'a', kind: 'hours-100', lastDoneTenths: 11_060, lastDueTenths: 11_000 }),
    item({ id: 'b', kind: 'annual', lastDoneTenths: 10_200 }),
  ];
  expect(duesUnder14Cfr(items, '2026-11-26').find(({ item: { id } }) => id === 'a')).toMatchObject({
    throughTenths: 12_000,
  });
});

test('items that have not begun or have ended are not listed; one-time ones that were done are settled', () => {
  const items = [
    item({ id: 'a', since: '2026-11-27' }),
    item({ id: 'b', retiredOn: '2026-11-26' }),
    item({ id: 'c', kind: 'directive', recurring: false }),
    item({ id: 'd', since: '2026-11-26', retiredOn: '2026-11-27' }),
  ];
  expect(duesUnder14Cfr(items, '2026-11-26').map(({ item: { id }, settled }) => [id, settled])).toEqual([
    ['c', true],
    ['d', false],
  ]);
});

test('where no pack holds the law of airworthiness, the items’ own intervals count', () => {
  const own = item({ calendarMonths: 6, lastDoneOn: '2026-09-05' });
  expect(duesByItems([own], '2026-11-26')).toMatchObject([{ throughOn: '2027-03-31' }]);
  expect(duesByItems([{ ...own, lastDoneOn: null }], '2026-11-26')).toMatchObject([
    { throughOn: null, neverDone: true },
  ]);
});

describe('a progressive programme (14 CFR 91.409(c)(3) and (d))', () => {
  const on = '2026-11-26' as LocalDate;
  const annual = item({ id: 'annual', kind: 'annual', lastDoneOn: '2024-02-10', lastDoneTenths: 9000 });
  const hundred = item({ id: 'hundred', kind: 'hours-100', lastDoneOn: '2024-02-10', lastDoneTenths: 9000 });
  const complete = item({
    ...{ id: 'whole', kind: 'progressive', calendarMonths: 12 },
    ...{ lastDoneOn: '2026-06-10', lastDoneTenths: 11500 },
  });
  const dues = (...items: ItemFact[]) =>
    duesUnder14Cfr(items, on).map(({ item: { id }, throughOn, throughTenths, settled }) => [
      ...[id, throughOn, throughTenths, settled],
    ]);

  test('neither annual nor 100-hour inspection is due under one', () => {
    expect(dues(annual, complete, hundred)).toEqual([
      ['annual', null, null, true],
      ['hundred', null, null, true],
      ['whole', '2027-06-30', null, false],
    ]);
  });

  test('after one both run from its last complete inspection, as the rules have it', () => {
    const ended = { ...complete, retiredOn: on };
    const tested = item({ id: 'tested', kind: 'transponder', lastDoneOn: '2025-01-10' });
    expect(dues(annual, ended, hundred, tested)).toEqual([
      ['annual', '2027-06-30', null, false],
      ['hundred', null, 12500, false],
      ['tested', '2027-01-31', null, false],
    ]);
    const items = [
      { kind: 'annual', lastDoneOn: '2024-02-10' },
      { kind: 'progressive', calendarMonths: 12, lastDoneOn: '2026-06-10', retiredOn: on },
    ];
    expect(['2027-06-30', '2027-07-01'].map((day) => verdictOf(day as LocalDate, items))).toEqual([
      'met',
      'short',
    ]);
  });

  test('a later annual counts by itself, and so does one of a club that is under no law of ours', () => {
    const ended = { ...complete, retiredOn: on };
    expect(dues({ ...annual, lastDoneOn: '2026-11-20' }, ended)).toEqual([
      ['annual', '2027-11-30', null, false],
    ]);
    expect(duesByItems([{ ...annual, calendarMonths: 12 }, ended], on)[0]!.throughOn).toBe('2025-02-28');
  });
});
