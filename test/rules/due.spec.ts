/** When an item falls due, as the maintenance forecast asks it. Dates follow from the intervals by hand. */
import { batteryThrough, dueOf, hundredHourDue } from '../../src/rules/packs/common/items/due.js';
import { ITEM } from '../../src/rules/workshop/records.js';
import type { ItemFact } from '../../src/rules/facts/aircraft.js';

const item = (change: Partial<ItemFact>): ItemFact => ({
  ...ITEM,
  calendarMonths: null,
  lastDoneTenths: null,
  ...change,
});
const due = (change: Partial<ItemFact>) => dueOf(item(change));
const NOTHING = { throughOn: null, throughTenths: null, settled: false, hoursUnknown: false };

test.each([
  ['calendar months', { calendarMonths: 12 }, { throughOn: '2027-09-30' }],
  ['months', { plainMonths: 12 }, { throughOn: '2027-09-05' }],
  ['days', { days: 30 }, { throughOn: '2026-10-05' }],
  ['the first of several', { calendarMonths: 12, plainMonths: 2, days: 90 }, { throughOn: '2026-11-05' }],
  ['hours', { intervalTenths: 1000, lastDoneTenths: 10_000 }, { throughTenths: 11_000 }],
  [
    'hours, done late',
    { intervalTenths: 1000, lastDoneTenths: 10_060, lastDueTenths: 10_000 },
    { throughTenths: 11_000 },
  ],
  [
    'hours, done early',
    { intervalTenths: 1000, lastDoneTenths: 9850, lastDueTenths: 10_000 },
    { throughTenths: 10_850 },
  ],
  ['hours whose last are not on record', { intervalTenths: 1000 }, { hoursUnknown: true }],
  [
    'hours whose last are not on record, where they were due is',
    { intervalTenths: 1000, lastDueTenths: 10_000 },
    { hoursUnknown: true },
  ],
  ['no interval', {}, {}],
  ['never done', { calendarMonths: 12, days: 3, intervalTenths: 1000, lastDoneOn: null }, {}],
  ['a fixed date to come', { fixedDueOn: '2026-09-06' }, { throughOn: '2026-09-06' }],
  ['a fixed date met', { fixedDueOn: '2026-09-05' }, {}],
  ['a fixed date, never done', { fixedDueOn: '2026-09-05', lastDoneOn: null }, { throughOn: '2026-09-05' }],
  ['fixed hours to come', { fixedDueTenths: 10_001, lastDoneTenths: 10_000 }, { throughTenths: 10_001 }],
  ['fixed hours met', { fixedDueTenths: 10_000, lastDoneTenths: 10_000 }, {}],
  ['fixed hours, never done', { fixedDueTenths: 10_000, lastDoneOn: null }, { throughTenths: 10_000 }],
  ['one-time and done', { recurring: false, calendarMonths: 12 }, { settled: true }],
  [
    'one-time, not done',
    { recurring: false, lastDoneOn: null, fixedDueOn: '2027-01-01' },
    { throughOn: '2027-01-01' },
  ],
])('%s', (_, change, wanted) => {
  expect(due(change)).toEqual({ ...NOTHING, ...wanted });
});

test('intervals of the law stand over the item’s own', () => {
  const own = item({ calendarMonths: 24, intervalTenths: 500, lastDoneTenths: 10_000 });
  expect(dueOf(own, { calendarMonths: 12 })).toEqual({ ...NOTHING, throughOn: '2027-09-30' });
  expect(dueOf(own, { tenths: 1000 })).toEqual({ ...NOTHING, throughTenths: 11_000 });
});

// 14 CFR 91.207(c)(2): half of the useful life, or the date marked.
test.each([
  [null, null],
  [{ eltBatteryReplaceOn: '2027-05-01' }, '2027-05-01'],
  [
    {
      eltBatteryReplaceOn: '2027-05-01',
      eltBatteryNewOn: '2020-01-01',
      eltBatteryUsefulLifeEndsOn: '2022-01-01',
    },
    '2027-05-01',
  ],
  [{ eltBatteryNewOn: '2025-01-01', eltBatteryUsefulLifeEndsOn: '2025-01-12' }, '2025-01-06'],
  [{ eltBatteryNewOn: '2025-01-01' }, null],
  [{ eltBatteryUsefulLifeEndsOn: '2025-01-12' }, null],
])('an ELT battery with %j is good through %p', (detail, throughOn) => {
  expect(due({ kind: 'elt-battery', recurring: false, calendarMonths: 1, detail })).toEqual({
    ...NOTHING,
    throughOn,
  });
  if (detail) expect(batteryThrough(detail, 2)).toBe(throughOn);
});

// 14 CFR 91.409(b): the annual counts as a 100-hour inspection; whichever gives more.
describe('the 100-hour limit', () => {
  const done = (
    id: string,
    kind: ItemFact['kind'],
    lastDoneTenths: number | null,
    change: Partial<ItemFact> = {},
  ) => item({ id, kind, lastDoneTenths, ...change });
  test.each([
    [[done('a', 'annual', 10_000), done('b', 'hours-100', 10_500)], 'b', 11_500],
    [[done('a', 'annual', 10_500), done('b', 'hours-100', 10_000)], 'a', 11_500],
    [[done('b', 'hours-100', 10_500), done('a', 'annual', 10_000)], 'b', 11_500],
    [[done('b', 'annual', 10_000), done('a', 'hours-100', 10_000)], 'a', 11_000],
    [[done('a', 'hours-100', 10_000), done('b', 'annual', 10_000)], 'a', 11_000],
    [[done('a', 'annual', null), done('b', 'hours-100', 9000)], 'b', 10_000],
    [[done('a', 'hours-100', 10_500, { lastDoneOn: null }), done('b', 'annual', 9000)], 'b', 10_000],
    [[done('a', 'club', 20_000), done('b', 'annual', 9000)], 'b', 10_000],
    [[done('a', 'hours-100', 10_060, { lastDueTenths: 10_000 })], 'a', 11_000],
  ])('%#', (items, from, throughTenths) => {
    expect(hundredHourDue(items, 1000)).toMatchObject({ throughTenths, from: { id: from } });
  });
  test('none on record', () => {
    expect(hundredHourDue([], 1000)).toBeNull();
    expect(hundredHourDue([done('a', 'directive', 10_000)], 1000)).toBeNull();
  });
});
