/**
 * The time an instructor teaches, from the hours of each week and of single dates (club handbook, section 4.5). Dates fall on the
 * weekdays of ISO 8601, whose names are held against those of the runtime's own calendar.
 */
import { toInstant, toSeconds } from '../../../src/rules/index.js';
import {
  hoursInWords,
  hoursOn,
  WEEKDAYS,
  windowsAround,
  windowsBetween,
} from '../../../src/rules/packs/club/booking/teaching-windows.js';
import { TEACHING_HOURS } from '../../../src/rules/workshop/records.js';

const ZONE = 'America/Denver';
const weekly = (id: string, weekday: number, opensMinutes: number, closesMinutes: number) => ({
  ...TEACHING_HOURS,
  ...{ id, weekday, opensMinutes, closesMinutes },
});
const daily = (opensMinutes: number, closesMinutes: number) =>
  [1, 2, 3, 4, 5, 6, 7].map((weekday) => weekly(`w${weekday}`, weekday, opensMinutes, closesMinutes));
const away = { ...TEACHING_HOURS, opensMinutes: null, closesMinutes: null };
const shown = (windows: { from: number; to: number }[]) =>
  windows.map(({ from, to }) => [toInstant(from), toInstant(to)]);

test('1 is Monday and 7 is Sunday, by their names', () => {
  // 2027-03-01 is a Monday.
  const names = WEEKDAYS.map((_, index) =>
    new Intl.DateTimeFormat('en-US', { weekday: 'long', timeZone: 'UTC' }).format(
      Date.UTC(2027, 2, 1 + index),
    ),
  );
  expect(names).toHaveLength(7);
  expect(WEEKDAYS).toEqual(names);
});

test('hours of the week without a first day hold', () => {
  expect(hoursOn([{ ...TEACHING_HOURS, from: null }], '2027-03-01')).toHaveLength(1);
});

test.each([[['b', 'a']], [['a', 'b']]])('of two that open together the first by its number: %j', (ids) => {
  const all = ids.map((id) => weekly(id, 1, 540, id === 'a' ? 600 : 660));
  expect(hoursOn(all, '2027-03-01').map(({ id }) => id)).toEqual(['a', 'b']);
});

describe('windows', () => {
  test('of each day from the first to the last, and those that touch are one', () => {
    const all = [
      weekly('a', 1, 540, 600),
      weekly('b', 1, 660, 720),
      weekly('c', 1, 720, 780),
      weekly('d', 2, 540, 600),
    ];
    expect(shown(windowsBetween(all, { first: '2027-03-01', last: '2027-03-02', zone: ZONE }))).toEqual([
      ['2027-03-01T16:00:00Z', '2027-03-01T17:00:00Z'],
      ['2027-03-01T18:00:00Z', '2027-03-01T20:00:00Z'],
      ['2027-03-02T16:00:00Z', '2027-03-02T17:00:00Z'],
    ]);
  });

  test('none of no hours', () => {
    expect(windowsBetween([], { first: '2027-03-01', last: '2027-03-02', zone: ZONE })).toEqual([]);
  });

  test('around a flight: from the day before, for three weeks, known up to the midnight that begins the last day', () => {
    const flight = { departs: toSeconds('2027-04-05T18:00:00Z'), arrives: toSeconds('2027-04-05T19:00:00Z') };
    const { windows, knownTo } = windowsAround(daily(540, 600), flight, ZONE);
    expect(shown(windows.slice(0, 1))).toEqual([['2027-04-04T15:00:00Z', '2027-04-04T16:00:00Z']]);
    expect(shown(windows.slice(-1))).toEqual([['2027-04-26T15:00:00Z', '2027-04-26T16:00:00Z']]);
    expect(windows).toHaveLength(23);
    expect(toInstant(knownTo)).toBe('2027-04-26T06:00:00Z');
  });
});

describe('in words', () => {
  test('each stretch, said once', () => {
    expect(hoursInWords([weekly('a', 1, 0, 61), weekly('b', 1, 600, 1439), weekly('c', 1, 0, 61)])).toBe(
      '00:00 to 01:01 and 10:00 to 23:59',
    );
  });
  test('none told', () => {
    for (const none of [[], [away], [away, away]]) expect(hoursInWords(none)).toBe('away');
    expect(hoursInWords([away, weekly('a', 1, 540, 600)])).toBe('09:00 to 10:00');
  });
});
