/** Small pieces of the calendar: clock readings, written instants, remembered answers. */
import { Temporal } from 'temporal-polyfill';
import { clockSeconds, nextReading, readClock } from '../../src/rules/calendar/clocks.js';
import { laterOf, addPlainMonths, addYears, ageOn, daysBetween } from '../../src/rules/calendar/dates.js';
import {
  localClock,
  localDateOf,
  plusSeconds,
  toInstant,
  toSeconds,
} from '../../src/rules/calendar/instants.js';
import { remember, rememberOne } from '../../src/rules/calendar/remember.js';

describe('instants as they are written', () => {
  test.each([
    [0, '1970-01-01T00:00:00Z'],
    [-1, '1969-12-31T23:59:59Z'],
    [86_399, '1970-01-01T23:59:59Z'],
    [86_400, '1970-01-02T00:00:00Z'],
    [3_661, '1970-01-01T01:01:01Z'],
    [36_610, '1970-01-01T10:10:10Z'],
    [951_782_400, '2000-02-29T00:00:00Z'],
    [1_803_924_009, '2027-03-01T18:00:09Z'],
    [0.5, '1970-01-01T00:00:00.5Z'],
    [1_803_924_009.123, '2027-03-01T18:00:09.123Z'],
  ])('%d is %s', (seconds, written) => {
    expect(toInstant(seconds)).toBe(written);
    expect(Temporal.Instant.from(written).epochMilliseconds).toBe(seconds * 1000);
  });
  test('read back, whatever the offset they are written with; fractions are cut', () => {
    expect(toSeconds('2027-03-01T18:00:09Z')).toBe(1_803_924_009);
    expect(toSeconds('2027-03-01T11:00:09-07:00')).toBe(1_803_924_009);
    expect(toSeconds('2027-03-01T18:00:09.999Z')).toBe(1_803_924_009);
    expect(plusSeconds('2027-03-01T18:00:09Z', -10)).toBe('2027-03-01T17:59:59Z');
  });
  test('local readings either side of a minute and a quarter', () => {
    expect([1_803_924_059, 1_803_924_060].map((at) => localClock(at, 'America/Denver'))).toEqual([
      '11:00',
      '11:01',
    ]);
    const midnight = toSeconds('2027-03-02T07:00:00Z');
    expect([midnight - 1, midnight].map((at) => localDateOf(at, 'America/Denver'))).toEqual([
      '2027-03-01',
      '2027-03-02',
    ]);
  });
});

describe('dates', () => {
  test.each([
    ['2027-01-01', '2027-01-02', '2027-01-02'],
    ['2027-01-02', '2027-01-01', '2027-01-02'],
    [null, '2027-01-01', '2027-01-01'],
    ['2027-01-01', null, '2027-01-01'],
    [null, null, null],
  ])('the later of %p and %p', (a, b, later) => {
    expect(laterOf(a, b)).toBe(later);
  });
  test('days between, both ways, over a year end and in whole days', () => {
    expect([daysBetween('2026-12-31', '2027-03-01'), daysBetween('2027-03-01', '2026-12-31')]).toEqual([
      60, -60,
    ]);
    expect(daysBetween('2020-01-01', '2027-01-01')).toBe(2557);
  });
  test('the three ways of a missing day are told apart', () => {
    expect(addPlainMonths('2027-01-31', 1, 'roll-to-next-month')).toBe('2027-03-01');
    expect(addPlainMonths('2027-01-31', 1, 'clamp-to-month-end')).toBe('2027-02-28');
    expect(() => addPlainMonths('2027-01-31', 1, 'reject')).toThrow('2027-01-31 plus 1 months has no day 31');
    expect(addYears('2024-02-29', 1, 'roll-to-next-month')).toBe('2025-03-01');
    expect(addYears('2024-02-29', 4, 'reject')).toBe('2028-02-29');
  });
  test('on the birthday itself one is older', () => {
    expect(['2027-05-31', '2027-06-01', '2028-01-01'].map((on) => ageOn('1990-06-01', on))).toEqual([
      36, 37, 37,
    ]);
  });
});

describe('a zone’s clock', () => {
  const ZONE = 'America/Denver';
  test.each([
    ['2027-03-01T07:00:00Z', 0],
    ['2027-03-01T06:59:59Z', 86_399],
    ['2027-03-01T18:30:15Z', 41_415],
    ['2027-07-01T18:30:15Z', 45_015],
    // Either side of the jumps: 01:59:59 is followed by 03:00, and in autumn by 01:00.
    ['2027-03-14T08:59:59Z', 7199],
    ['2027-03-14T09:00:00Z', 10_800],
    ['2027-11-07T07:59:59Z', 7199],
    ['2027-11-07T08:00:00Z', 3600],
  ])('at %s it shows %i seconds past midnight', (instant, shown) => {
    expect(clockSeconds(toSeconds(instant), ZONE)).toBe(shown);
  });
  test.each([
    ['00:00', 0],
    ['09:05', 32_700],
    ['19:59', 71_940],
    ['23:59', 86_340],
    ['24:00', null],
    ['12:60', null],
    ['9:05', null],
    ['12:00:00', null],
    ['x12:00', null],
    ['1200', null],
    ['ab:cd', null],
  ])('%s reads %p', (text, seconds) => {
    expect(readClock(text)).toBe(seconds);
  });
  test('the next reading is the next second at which the clock shows it, by counting', () => {
    const readings = [readClock('00:00')!, readClock('11:00')!, readClock('18:30')!];
    for (const from of [
      '2027-03-01T17:59:59Z',
      '2027-03-01T18:00:00Z',
      '2027-03-01T18:00:01Z',
      '2027-03-02T02:00:00Z',
      '2027-03-02T06:59:59Z',
    ]) {
      const at = toSeconds(from);
      let next = at + 1;
      while (!readings.includes(clockSeconds(next, ZONE))) next += 1;
      expect([from, toInstant(nextReading(at, ZONE, readings))]).toEqual([from, toInstant(next)]);
    }
  });
  test('a jump of the clock is told before the reading that lies beyond it', () => {
    const noon = readClock('12:00')!;
    // Forward on 2027-03-14 at 09:00Z, back on 2027-11-07 at 08:00Z.
    expect(toInstant(nextReading(toSeconds('2027-03-14T02:00:00Z'), ZONE, [noon]))).toBe(
      '2027-03-14T09:00:00Z',
    );
    expect(toInstant(nextReading(toSeconds('2027-03-14T08:59:59Z'), ZONE, [noon]))).toBe(
      '2027-03-14T09:00:00Z',
    );
    expect(toInstant(nextReading(toSeconds('2027-03-14T09:00:00Z'), ZONE, [noon]))).toBe(
      '2027-03-14T18:00:00Z',
    );
    expect(toInstant(nextReading(toSeconds('2027-11-07T01:00:00Z'), ZONE, [noon]))).toBe(
      '2027-11-07T08:00:00Z',
    );
    // A reading before the jump comes first.
    expect(toInstant(nextReading(toSeconds('2027-03-14T02:00:00Z'), ZONE, [noon, readClock('01:30')!]))).toBe(
      '2027-03-14T08:30:00Z',
    );
  });
});

describe('remembered answers', () => {
  test('of two values: asked once each, and anew when too many are kept', () => {
    let made = 0;
    const of = remember((a: number, b: string) => {
      made += 1;
      return `${a} ${b}`;
    });
    expect([of(1, 'x'), of(1, 'x'), of(1, 'y'), of(2, 'x')]).toEqual(['1 x', '1 x', '1 y', '2 x']);
    expect(made).toBe(3);
    for (let a = 3; a < 20_000; a += 1) of(a, 'x');
    expect(made).toBe(20_000);
    of(1, 'x');
    of(19_999, 'x');
    expect(made).toBe(20_000);
    // One more than it keeps: all are forgotten, and this one is kept.
    of(1, 'z');
    expect(made).toBe(20_001);
    of(1, 'z');
    expect(made).toBe(20_001);
    of(1, 'x');
    of(19_999, 'x');
    expect(made).toBe(20_003);
    for (let a = 30_000; a < 30_000 + 19_997; a += 1) of(a, 'x');
    of(1, 'z');
    expect(made).toBe(40_000);
    of(7, 'new');
    of(1, 'z');
    expect(made).toBe(40_002);
  });
  test('of one value', () => {
    let made = 0;
    const of = rememberOne((a: number) => {
      made += 1;
      return -a;
    });
    for (let a = 1; a <= 20_000; a += 1) of(a);
    expect([of(1), of(20_000)]).toEqual([-1, -20_000]);
    expect(made).toBe(20_000);
    of(20_001);
    of(20_001);
    expect(made).toBe(20_001);
    of(1);
    expect(made).toBe(20_002);
  });
  test('errors are not kept', () => {
    let tries = 0;
    const fails = () => {
      tries += 1;
      throw new Error('no');
    };
    const [one, two] = [rememberOne(fails), remember(fails)];
    for (let index = 0; index < 2; index += 1) {
      expect(() => one(1)).toThrow('no');
      expect(() => two(1, 1)).toThrow('no');
    }
    expect(tries).toBe(4);
  });
});
