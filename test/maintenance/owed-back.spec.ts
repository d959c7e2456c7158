/**
 * What a late inspection owes back. 14 CFR 91.409(b): the 100-hour limit may be exceeded by not more than 10 hours while en route to
 * a place where the inspection can be done, and the excess is included in the next 100 hours (from memory; worked by hand).
 */
import { owedBack } from '../../src/maintenance/work-orders/owed-back.js';
import { duesUnder14Cfr } from '../../src/rules/index.js';
import { ITEM } from '../../src/rules/workshop/records.js';

const ON = '2027-03-01';
const HUNDRED = {
  ...ITEM,
  id: 'hundred',
  kind: 'hours-100' as const,
  title: '100-hour inspection',
  calendarMonths: null,
  toleranceTenths: 100,
};
const ANNUAL = { ...ITEM, id: 'annual', lastDoneTenths: 9000, lastDoneOn: '2026-09-05' };
const OIL = {
  ...ITEM,
  id: 'oil',
  kind: 'club' as const,
  title: 'Oil',
  calendarMonths: null,
  intervalTenths: 500,
  toleranceTenths: 50,
};
const BY_LAW = 100;

const at = (item: typeof ITEM, doneTenths: number, ...others: (typeof ITEM)[]) =>
  owedBack(item, duesUnder14Cfr([item, ...others], ON), doneTenths, BY_LAW);

test.each([
  // Last at 1,000.0 h, due at 1,100.0 h.
  ['in time', 10_999, null, false],
  ['at its hour', 11_000, null, false],
  ['a tenth late', 11_001, 11_000, false],
  ['ten hours late', 11_100, 11_000, false],
  ['more than ten hours late', 11_101, null, true],
])('a 100-hour inspection %s', (_name, doneTenths, dueTenths, warns) => {
  const { dueTenths: owed, caution } = at(HUNDRED, doneTenths, ANNUAL);
  expect([owed, caution !== null]).toEqual([dueTenths, warns]);
});

test('what was overrun shortens the next hundred hours, an annual in its place as well', () => {
  const done = { ...HUNDRED, lastDoneTenths: 11_045, lastDueTenths: at(HUNDRED, 11_045, ANNUAL).dueTenths };
  expect(duesUnder14Cfr([done], ON)[0]!.throughTenths).toBe(12_000);
  expect(at(ANNUAL, 11_045, HUNDRED).dueTenths).toBe(11_000);
  // Without a 100-hour inspection nothing hangs on the hours of an annual.
  expect(at(ANNUAL, 99_999).dueTenths).toBeNull();
});

test('another item owes back within its own tolerance only', () => {
  // Last at 1,000.0 h, every 50 h, 5 h allowed.
  expect(at(OIL, 10_550)).toEqual({ dueTenths: 10_500, caution: null });
  expect(at(OIL, 10_551).caution).toContain('done 5.1 h later');
  expect(at({ ...OIL, toleranceTenths: 0 }, 10_501).dueTenths).toBeNull();
});
