/** The parts of the forecast, each by itself: weeks, expectation, bounds, due days. */
import { attemptsOf, boundsOf, scale, type Bounds } from '../../src/maintenance/forecast/backtest.js';
import { courseOf, dueDates, reachedOn, type WeekAhead } from '../../src/maintenance/forecast/due-dates.js';
import { expectWeeks } from '../../src/maintenance/forecast/expect.js';
import { mondayOf, weeklyUsage } from '../../src/maintenance/forecast/usage.js';
import { itemSays, testSays } from '../../src/maintenance/forecast/words.js';

describe('weeks', () => {
  test.each([
    ['2026-11-23', '2026-11-23'],
    ['2026-11-26', '2026-11-23'],
    ['2026-11-29', '2026-11-23'],
    ['1969-12-31', '1969-12-29'],
  ])('%s lies in the week of %s', (date, monday) => {
    expect(mondayOf(date)).toBe(monday);
  });

  test('a flight counts for the day of its reading, however long nothing was flown before', () => {
    const usage = weeklyUsage([
      { on: '2026-03-02', totalTenths: 100 },
      { on: '2026-03-20', totalTenths: 115 },
      { on: '2026-03-24', totalTenths: 125 },
    ]);
    expect(usage).toEqual({ firstMonday: '2026-03-02', tenths: [0, 0, 15] });
  });

  test('more than a day’s flying is spread over the days since the last reading', () => {
    const usage = weeklyUsage([
      { on: '2026-03-01', totalTenths: 0 },
      { on: '2026-03-15', totalTenths: 140 },
      { on: '2026-03-16', totalTenths: 140 },
    ])!;
    expect(usage.tenths.map(Math.round)).toEqual([70, 70]);
  });

  test('readings within one week are no whole week', () => {
    expect(weeklyUsage([{ on: '2026-03-03', totalTenths: 1 }])).toBeNull();
    expect(weeklyUsage([])).toBeNull();
  });
});

describe('expectation', () => {
  test('nothing is expected of an aircraft without a past', () => {
    expect(expectWeeks([], 3)).toBeNull();
  });

  test('the recent weeks alone where last year is not known', () => {
    const history = [...new Array<number>(10).fill(90), ...new Array<number>(8).fill(30)];
    expect(expectWeeks(history, 2)).toEqual([
      { tenths: 30, basis: 'recent' },
      { tenths: 30, basis: 'recent' },
    ]);
  });

  /** A year of 10, a summer of 100 in it from week 20 on for ten weeks. */
  const year = (level = 1) =>
    Array.from({ length: 52 }, (_none, week) => (week >= 20 && week < 30 ? 100 : 10) * level);

  test('last year’s weeks where they are known', () => {
    const ahead = expectWeeks([...year(), ...year().slice(0, 18)], 6)!;
    expect(ahead.every(({ basis }) => basis === 'last-year')).toBe(true);
    // Week 18 and its neighbours are 10, 10, 10; week 20 has one summer neighbour and is summer itself.
    expect(ahead.map(({ tenths }) => Math.round(tenths))).toEqual([10, 40, 70, 100, 100, 100]);
  });

  test('moved to the level of the recent weeks, at most to double and half', () => {
    const level = (now: number) => expectWeeks([...year(), ...year(now).slice(0, 18)], 1)![0]!.tenths;
    expect(level(1.5)).toBeCloseTo(15, 6);
    expect(level(9)).toBeCloseTo(20, 6);
    expect(level(0)).toBeCloseTo(5, 6);
  });
});

describe('back-test', () => {
  test('every attempt knows only what came before it', () => {
    const history = Array.from({ length: 16 }, (_none, week) => (week < 12 ? 10 : 50));
    const attempts = attemptsOf(history, 2);
    expect(attempts.filter(({ origin }) => origin === 12)).toEqual([
      { origin: 12, ahead: 1, expected: 10, flown: 50 },
      { origin: 12, ahead: 2, expected: 20, flown: 100 },
    ]);
    expect(attempts.at(-1)).toMatchObject({ origin: 15, ahead: 1, flown: 50 });
  });

  test('too few attempts set no bounds', () => {
    expect(boundsOf(attemptsOf(new Array<number>(13).fill(10), 4))).toBeNull();
    expect(testSays(null)).toContain('Too little has been flown');
  });

  test('the newest third of the origins tests what the older ones set', () => {
    const steady = boundsOf(attemptsOf(new Array<number>(60).fill(25), 4))!;
    expect(steady).toMatchObject({ lower: 0, upper: 0, coverage: 1, medianErrorShare: 0 });
    // Flown as ever until the newest weeks, then not at all: the bounds do not hold, and it is told.
    const stopped = boundsOf(
      attemptsOf([...new Array<number>(48).fill(25), ...new Array<number>(12).fill(0)], 4),
    )!;
    expect(stopped.coverage!).toBeLessThan(0.5);
    expect(testSays(stopped)).toContain('of the outcomes lay within bounds');
  });
});

describe('due days', () => {
  const week = (monday: string, more: Partial<WeekAhead> = {}): WeekAhead => ({
    ...{ monday, trendTenths: 70, bookedTenths: 0, available: 1 },
    ...more,
  });
  const WEEKS = [week('2026-11-23'), week('2026-11-30'), week('2026-12-07')];
  const BOUNDS: Bounds = {
    lower: -1,
    upper: 1,
    setBy: 100,
    testedBy: 50,
    coverage: 0.8,
    medianErrorShare: 0.2,
  };

  test('bookings in hand count where they are more than the trend, and a shop visit takes its part of the week', () => {
    const weeks = [week('2026-11-23', { bookedTenths: 90 }), week('2026-11-30', { available: 0.5 })];
    expect(courseOf(weeks, null).likely).toEqual([90, 125]);
  });

  test('bounds widen with the hours, never fall, and never below what is booked', () => {
    const { likely, least, most } = courseOf([...WEEKS, week('2026-12-14', { available: 0 })], BOUNDS);
    expect(likely).toEqual([70, 140, 210, 210]);
    expect(most.map(Math.round)).toEqual([70, 140, 210, 210].map((sum) => Math.round(sum + scale(sum))));
    expect(least.map(Math.round)).toEqual(
      [70, 140, 210, 210].map((sum) => Math.round(Math.max(0, sum - scale(sum)))),
    );
    const booked = courseOf([week('2026-11-23', { bookedTenths: 500 })], { ...BOUNDS, upper: -5 });
    expect(booked.most).toEqual([500]);
  });

  test.each([
    [0, '2026-11-26'],
    [-5, '2026-11-26'],
    [70, '2026-11-29'],
    [71, '2026-11-30'],
    [110, '2026-12-04'],
    [211, null],
  ])('%d tenths left are used up on %s', (left, on) => {
    expect(reachedOn([70, 140, 210], left, WEEKS, '2026-11-26')).toBe(on);
  });

  test('date or hours, whichever comes first', () => {
    const course = courseOf(WEEKS, BOUNDS);
    const due = (throughOn: string | null, leftTenths: number | null) =>
      dueDates({ throughOn, leftTenths }, course, WEEKS, '2026-11-26');
    expect(due('2026-11-28', 140)).toMatchObject({ likelyOn: '2026-11-28', by: 'date' });
    expect(due('2026-12-12', 140)).toMatchObject({ likelyOn: '2026-12-06', by: 'hours' });
    expect(due('2027-06-30', null)).toEqual({ likelyOn: null, earliestOn: null, latestOn: null, by: null });
    const { earliestOn, likelyOn, latestOn } = due(null, 100);
    expect(earliestOn! < likelyOn!).toBe(true);
    expect(latestOn! > likelyOn!).toBe(true);
  });
});

test.each([
  [
    { leftTenths: 94, bookedTenths: 110, slotOn: '2026-12-14' },
    '9.4 h left, 11.0 h booked before the shop visit of 2026-12-14.',
  ],
  [
    { leftTenths: 94, bookedTenths: 0, slotOn: null, throughOn: '2026-12-31' },
    '9.4 h left, 0.0 h booked; good through 2026-12-31.',
  ],
  [{ state: 'overdue' as const, leftTenths: -12 }, '1.2 h over, 0.0 h booked.'],
  [{ state: 'overdue' as const, throughOn: '2026-10-31' }, 'was good through 2026-10-31.'],
  [{ state: 'settled' as const }, 'Done; nothing more is due.'],
  [{ state: 'never-done' as const }, 'Never done, as far as the records go.'],
])('%j is told as “%s”', (more, says) => {
  const state = {
    state: 'running' as const,
    leftTenths: null,
    throughOn: null,
    bookedTenths: 0,
    slotOn: null,
  };
  expect(itemSays({ ...state, ...more })).toBe(says);
});
