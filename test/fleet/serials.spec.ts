/**
 * Serial numbers of directives. That ranges hold both their ends, and that data plates mix letters and digits, is common practice,
 * no source; the forms are invented in the style of data plates.
 */
import fc from 'fast-check';
import { isRange, withinSerials } from '../../src/fleet/directives/serials.js';

const range = (from: string, through = from) => ({ from, through });

describe('a serial number', () => {
  it.each([
    ['101', [range('101', '240')], 'in'],
    ['240', [range('101', '240')], 'in'],
    ['100', [range('101', '240')], 'out'],
    ['241', [range('101', '240')], 'out'],
    // As numbers, not as text: 99 comes before 101.
    ['99', [range('101', '240')], 'out'],
    ['0150', [range('101', '240')], 'in'],
    ['HL-1042', [range('HL-1001', 'HL-1100')], 'in'],
    ['hl-1042', [range('HL-1001', 'HL-1100')], 'in'],
    ['HL - 1042', [range('HL-1001', 'HL-1100')], 'in'],
    ['HL-1101', [range('HL-1001', 'HL-1100')], 'out'],
    ['17 10042', [range('17 10001', '17 10100')], 'in'],
    ['18 10042', [range('17 10001', '17 10100')], 'out'],
    ['HM-1042', [range('HL-1001', 'HL-1100')], 'unclear'],
    ['1042', [range('HL-1001', 'HL-1100')], 'unclear'],
    ['HL-1042A', [range('HL-1001', 'HL-1100')], 'unclear'],
    ['7', [range('1', '3'), range('7')], 'in'],
    ['5', [range('1', '3'), range('7')], 'out'],
    ['5', [range('1', '3'), range('X7')], 'unclear'],
    ['5', [range('X1', 'X3'), range('5')], 'in'],
    ['99999999999999999999', [range('99999999999999999998', '100000000000000000000')], 'in'],
  ] as const)('%s of %j: %s', (serial, ranges, state) => {
    expect(withinSerials(serial, ranges)).toBe(state);
  });

  it('is within a range exactly when its number is', () => {
    const number = fc.integer({ min: 0, max: 5000 });
    fc.assert(
      fc.property(number, number, number, (low, high, at) => {
        const ranges = [range(`L-${Math.min(low, high)}`, `L-${Math.max(low, high)}`)];
        const inside = Math.min(low, high) <= at && at <= Math.max(low, high);
        expect(withinSerials(`L-${at}`, ranges)).toBe(inside ? 'in' : 'out');
      }),
    );
  });
});

it.each([
  [range('1', '3'), true],
  [range('3', '3'), true],
  [range('3', '1'), false],
  [range('A-1', 'A-9'), true],
  [range('A-1', 'B-9'), false],
  [range(' ', ' '), false],
])('a range %j can be read: %s', (one, readable) => {
  expect(isRange(one)).toBe(readable);
});
