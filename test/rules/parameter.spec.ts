import { defineParameter, type DatedValue } from '../../src/rules/parameters/parameter.js';

const declare = (changes: { id?: string; values?: DatedValue[] }): unknown =>
  defineParameter({
    id: 'us.made-up.days',
    title: 'Days made up',
    unit: 'days',
    values: [
      { from: null, value: 30, reference: 'section 1' },
      { from: '2020-01-02', value: 60, reference: 'section 1, amended' },
    ],
    checkedOn: '2026-11-25',
    status: 'seen',
    recheckAfterMonths: 12,
    ...changes,
  });
const value = (from: string | null, reference = 'section 1'): DatedValue => ({ from, value: 30, reference });

test('a parameter with a history in order is taken as it is', () => {
  expect(declare({})).toMatchObject({ id: 'us.made-up.days', values: [{ value: 30 }, { value: 60 }] });
  expect(declare({ id: 'us.ads-b.2020-days' })).toMatchObject({ id: 'us.ads-b.2020-days' });
});

test.each([
  ['an id in capitals', { id: 'us.Made-up.days' }, 'parameter id us.Made-up.days is not dotted lower case'],
  ['an id without a dot', { id: 'days' }, 'is not dotted lower case'],
  ['an id that only ends well', { id: '9us.days' }, 'is not dotted lower case'],
  ['an id that only begins well', { id: 'us.days ' }, 'is not dotted lower case'],
  ['no value', { values: [] }, 'parameter us.made-up.days has no value'],
  ['a date with a word before', { values: [value('on 2020-01-02')] }, 'on 2020-01-02 is not a date'],
  ['a date with a time', { values: [value('2020-01-02T00:00')] }, '2020-01-02T00:00 is not a date'],
  [
    'a value before the one it follows',
    { values: [value('2020-01-02'), value('2019-01-02')] },
    'values must be in date order, 2019-01-02 is not',
  ],
  [
    'two values from one day',
    { values: [value('2020-01-02'), value('2020-01-02')] },
    'must be in date order',
  ],
  ['two first values', { values: [value(null), value(null)] }, 'must be in date order, 0000-00-00 is not'],
  [
    'a value without a reference',
    { values: [value(null, ' ')] },
    'the value from 0000-00-00 names no reference',
  ],
])('refused: %s', (_what, changes, message) => {
  expect(() => declare(changes)).toThrow(message);
});
