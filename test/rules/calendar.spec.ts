/** Calendar arithmetic as the law counts it, and the place of instants in a zone. */
import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import {
  addDays,
  addPlainMonths,
  addYears,
  ageOn,
  daysBetween,
  daysLater,
  endOfDay,
  localDateOf,
  startOfDay,
  throughCalendarMonths,
  toInstant,
  toSeconds,
} from '../../src/rules/index.js';

describe('calendar months run to the end of the month (14 CFR usage)', () => {
  test.each([
    ['2022-02-11', 24, '2024-02-29'],
    ['2024-08-30', 6, '2025-02-28'],
    ['2025-01-10', 24, '2027-01-31'],
    ['2026-03-05', 12, '2027-03-31'],
    ['2026-12-31', 1, '2027-01-31'],
    ['2024-02-29', 12, '2025-02-28'],
  ])('%s plus %i is good through %s', (event, months, through) => {
    expect(throughCalendarMonths(event, months)).toBe(through);
  });
});

describe('plain months keep the day number and say what they do at a month end', () => {
  test.each([
    ['2024-08-31', 6, 'clamp-to-month-end', '2025-02-28'],
    ['2024-08-31', 6, 'roll-to-next-month', '2025-03-01'],
    ['2024-02-29', 12, 'clamp-to-month-end', '2025-02-28'],
    ['2024-02-29', 12, 'roll-to-next-month', '2025-03-01'],
    ['2024-02-29', 48, 'reject', '2028-02-29'],
    ['2026-03-31', -1, 'clamp-to-month-end', '2026-02-28'],
  ] as const)('%s plus %i (%s) is %s', (date, months, monthEnd, then) => {
    expect(addPlainMonths(date, months, monthEnd)).toBe(then);
  });

  test('a missing day is refused where the rule says so', () => {
    expect(() => addPlainMonths('2025-01-31', 1, 'reject')).toThrow(RangeError);
    expect(() => addYears('2024-02-29', 1, 'reject')).toThrow('2024-02-29 plus 12 months has no day 29');
  });
});

describe('days', () => {
  test.each([
    ['2023-12-01', 90, '2024-02-29'],
    ['2023-12-01', 91, '2024-03-01'],
    ['2026-12-01', 90, '2027-03-01'],
    ['2027-01-30', 30, '2027-03-01'],
  ])('%s plus %i is %s (from the rules reference)', (date, days, then) => {
    expect(addDays(date, days)).toBe(then);
    expect(daysBetween(date, then)).toBe(days);
  });
});

describe('age turns on the birthday; 29 February on 1 March in common years (from memory)', () => {
  test.each([
    ['1986-06-15', '2026-06-14', 39],
    ['1986-06-15', '2026-06-15', 40],
    ['1984-02-29', '2025-02-28', 40],
    ['1984-02-29', '2025-03-01', 41],
    ['1984-02-29', '2024-02-29', 40],
  ])('born %s, on %s: %i', (born, on, age) => {
    expect(ageOn(born, on)).toBe(age);
  });
});

describe('zones', () => {
  test.each([
    // 21:15 at UTC-7 is tomorrow in UTC.
    ['2026-11-26T04:15:00Z', 'America/Denver', '2026-11-25'],
    ['2026-11-26T07:00:00Z', 'America/Denver', '2026-11-26'],
    ['2026-06-30T18:14:59Z', 'Asia/Kathmandu', '2026-06-30'],
    ['2026-06-30T18:15:00Z', 'Asia/Kathmandu', '2026-07-01'],
  ])('%s in %s is %s', (instant, zone, date) => {
    expect(localDateOf(toSeconds(instant), zone)).toBe(date);
  });

  test('a day with a clock change has 23 or 25 hours', () => {
    const hours = (date: string) =>
      (endOfDay(date, 'America/Denver') - startOfDay(date, 'America/Denver')) / 3600;
    expect([hours('2026-03-08'), hours('2026-11-01'), hours('2026-11-02')]).toEqual([23, 25, 24]);
  });

  test('a day that begins at one o’clock, where midnight is skipped', () => {
    // Chile's clocks went forward at midnight of 2024-09-08 (IANA time zone database).
    expect(toInstant(startOfDay('2024-09-08', 'America/Santiago'))).toBe('2024-09-08T04:00:00Z');
  });

  test('what is no instant is refused', () => {
    expect(() => toSeconds('yesterday')).toThrow(RangeError);
  });
});

describe('against Temporal, which knows calendars', () => {
  const date = fc
    .integer({ min: 0, max: 80_000 })
    .map((days) => Temporal.PlainDate.from('1950-01-01').add({ days }).toString());
  const zone = fc.constantFrom(
    'America/Denver',
    'Europe/Lisbon',
    'Asia/Kathmandu',
    'Australia/Lord_Howe',
    'UTC',
  );

  test('days, calendar months and the way back', () => {
    fc.assert(
      fc.property(
        date,
        fc.integer({ min: -4000, max: 4000 }),
        fc.integer({ min: 0, max: 120 }),
        (from, days, months) => {
          expect(addDays(from, days)).toBe(Temporal.PlainDate.from(from).add({ days }).toString());
          expect(addDays(addDays(from, days), -days)).toBe(from);
          const through = Temporal.PlainDate.from(throughCalendarMonths(from, months));
          expect(through.day).toBe(through.daysInMonth);
          expect(through.toPlainYearMonth().toString()).toBe(
            Temporal.PlainDate.from(from).toPlainYearMonth().add({ months }).toString(),
          );
        },
      ),
      { numRuns: 300 },
    );
  });

  test('a date begins where the zone says, and its last second is still in it', () => {
    fc.assert(
      fc.property(date, zone, (day, where) => {
        expect(localDateOf(startOfDay(day, where), where)).toBe(day);
        expect(localDateOf(endOfDay(day, where) - 1, where)).toBe(day);
        expect(localDateOf(endOfDay(day, where), where)).toBe(addDays(day, 1));
      }),
      { numRuns: 300 },
    );
  });
});

describe('so many days later by the clock', () => {
  test.each([
    // Denver leaves standard time on 2027-03-14 and comes back on 2027-11-07 (IANA time zone database).
    ['2027-03-13T18:00:00Z', 1, '2027-03-14T17:00:00Z'],
    ['2027-03-10T18:00:00Z', 6, '2027-03-16T17:00:00Z'],
    ['2027-03-10T18:00:00Z', 3, '2027-03-13T18:00:00Z'],
    ['2027-11-06T17:00:00Z', 1, '2027-11-07T18:00:00Z'],
    // 02:30 does not exist that day.
    ['2027-03-13T09:30:00Z', 1, '2027-03-14T09:30:00Z'],
    // 01:30 comes twice: the first.
    ['2027-11-06T07:30:00Z', 1, '2027-11-07T07:30:00Z'],
    ['2027-03-10T18:00:00Z', 0, '2027-03-10T18:00:00Z'],
  ])('%s and %i days: %s', (at, days, then) => {
    expect(toInstant(daysLater(toSeconds(at), days, 'America/Denver'))).toBe(then);
  });
});
