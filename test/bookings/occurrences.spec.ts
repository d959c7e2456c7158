/**
 * When the flights of a series are. Held against the examples of RFC 5545, section 3.8.5.3, and its rules for times that a change of
 * the clocks skips or doubles (section 3.3.5); clock changes of 2026 in the United States: 8 March and 1 November (15 U.S.C. 260a).
 */
import { ProblemException } from '../../src/platform/problems/index.js';
import { occurrencesOf } from '../../src/bookings/series/occurrences.js';
import { onItsDay } from '../../src/bookings/series/on-its-day.js';
import '../../src/bookings/changes/changes.problems.js';

const NEW_YORK = 'America/New_York';
const hourFrom = (departs: string) => ({
  departs,
  arrives: new Date(Date.parse(departs) + 3_600_000).toISOString().replace('.000', ''),
});
const at = (departs: string, recurrence: string, zone = NEW_YORK): string[] =>
  occurrencesOf({ first: hourFrom(departs), recurrence, zone }).map((one) => one.departs);
const refused = (departs: string, recurrence: string): string => {
  try {
    at(departs, recurrence);
  } catch (error) {
    if (error instanceof ProblemException) return error.detail;
    throw error;
  }
  throw new Error(`${recurrence} was taken`);
};

// DTSTART;TZID=America/New_York:19970902T090000 in all of them.
const SEPTEMBER = '1997-09-02T13:00:00Z';

test('RFC 5545: daily for 10 occurrences', () => {
  const days = Array.from(
    { length: 10 },
    (_, index) => `1997-09-${String(2 + index).padStart(2, '0')}T13:00:00Z`,
  );
  expect(at(SEPTEMBER, 'FREQ=DAILY;COUNT=10')).toEqual(days);
});

test('RFC 5545: weekly for 10 occurrences goes over the end of summer time and stays at nine', () => {
  const found = at(SEPTEMBER, 'FREQ=WEEKLY;COUNT=10');
  // September 2, 9, 16, 23, 30; October 7, 14, 21 in summer time; October 28, November 4 in standard time.
  expect(found).toEqual([
    ...['1997-09-02', '1997-09-09', '1997-09-16', '1997-09-23', '1997-09-30'].map(
      (day) => `${day}T13:00:00Z`,
    ),
    ...['1997-10-07', '1997-10-14', '1997-10-21'].map((day) => `${day}T13:00:00Z`),
    ...['1997-10-28', '1997-11-04'].map((day) => `${day}T14:00:00Z`),
  ]);
});

test('RFC 5545: weekly on Tuesday and Thursday for five weeks', () => {
  const days = ['02', '04', '09', '11', '16', '18', '23', '25', '30'].map(
    (day) => `1997-09-${day}T13:00:00Z`,
  );
  const all = [...days, '1997-10-02T13:00:00Z'];
  expect(at(SEPTEMBER, 'FREQ=WEEKLY;COUNT=10;WKST=SU;BYDAY=TU,TH')).toEqual(all);
  // The same with the instant the RFC gives as the end: 19971007T000000Z.
  expect(at(SEPTEMBER, 'FREQ=WEEKLY;UNTIL=19971007T000000Z;WKST=SU;BYDAY=TU,TH')).toEqual(all);
});

test('RFC 5545: monthly on the first Friday for 10 occurrences', () => {
  // 1997-09-05, 10-03, 11-07, 12-05, 1998-01-02, 02-06, 03-06, 04-03, 05-01, 06-05; 400 days hold them all.
  const found = at('1997-09-05T13:00:00Z', 'FREQ=MONTHLY;COUNT=10;BYDAY=1FR');
  expect(found.map((one) => one.slice(0, 10))).toEqual([
    ...['1997-09-05', '1997-10-03', '1997-11-07', '1997-12-05', '1998-01-02'],
    ...['1998-02-06', '1998-03-06', '1998-04-03', '1998-05-01', '1998-06-05'],
  ]);
});

test('RFC 5545: the fifteenth and thirtieth, and no thirtieth of February', () => {
  // 3.8.5.3, "an example where an invalid date is ignored": January 15, 30, February 15, March 15, 30.
  const found = at('2007-01-15T14:00:00Z', 'FREQ=MONTHLY;BYMONTHDAY=15,30;COUNT=5');
  expect(found.map((one) => one.slice(0, 10))).toEqual([
    ...['2007-01-15', '2007-01-30', '2007-02-15', '2007-03-15', '2007-03-30'],
  ]);
});

test('a time that the clocks skip is as it would have been, and of a doubled one the first is meant', () => {
  // 2:30 on 8 March 2026 does not exist in New York: read with the offset before, UTC-5, it is 3:30 in summer time, 07:30 UTC.
  expect(at('2026-03-01T07:30:00Z', 'FREQ=WEEKLY;COUNT=3')).toEqual([
    ...['2026-03-01T07:30:00Z', '2026-03-08T07:30:00Z', '2026-03-15T06:30:00Z'],
  ]);
  // 1:30 on 1 November 2026 comes twice: the first is in summer time, UTC-4.
  expect(at('2026-10-25T05:30:00Z', 'FREQ=WEEKLY;COUNT=2')).toEqual([
    ...['2026-10-25T05:30:00Z', '2026-11-01T05:30:00Z'],
  ]);
});

test('lasts as long as the first, though the clock says otherwise', () => {
  // From 0:30 for three hours; on the night of 1 November the clock says 2:30 when they are over.
  const first = { departs: '2026-10-25T04:30:00Z', arrives: '2026-10-25T07:30:00Z' };
  expect(occurrencesOf({ first, recurrence: 'FREQ=WEEKLY;COUNT=2', zone: NEW_YORK })[1]).toEqual({
    ...{ departs: '2026-11-01T04:30:00Z', arrives: '2026-11-01T07:30:00Z' },
  });
});

test('a last day is meant whole, on the club’s clock', () => {
  // 21:00 in Chicago is the next day in Greenwich.
  expect(at('2026-06-02T02:00:00Z', 'FREQ=DAILY;UNTIL=20260603', 'America/Chicago')).toEqual([
    ...['2026-06-02T02:00:00Z', '2026-06-03T02:00:00Z', '2026-06-04T02:00:00Z'],
  ]);
});

test.each([
  ['FREQ=HOURLY;COUNT=2', /DAILY, WEEKLY or MONTHLY/],
  ['FREQ=WEEKLY', /no end/],
  ['FREQ=WEEKLY;COUNT=2;UNTIL=20270101', /may not stand together/],
  ['FREQ=WEEKLY;COUNT=61', /at most 60/],
  ['FREQ=DAILY;UNTIL=20261231T000000Z', /at most 60/],
  ['FREQ=WEEKLY;BYHOUR=3;COUNT=2', /BYHOUR cannot be used/],
  ['FREQ=WEEKLY;BYDAY=XX;COUNT=2', /days of the week/],
  ['FREQ=WEEKLY;BYDAY=1MO;COUNT=2', /FREQ=MONTHLY/],
  ['FREQ=MONTHLY;BYDAY=9MO;COUNT=2', /days of the week/],
  ['FREQ=MONTHLY;BYMONTHDAY=31;BYDAY=1MO;COUNT=2', /may not stand together/],
  ['FREQ=MONTHLY;COUNT=15', /more than 400 days/],
  ['FREQ=WEEKLY;UNTIL=20280101', /more than 400 days/],
  ['COUNT=2', /FREQ must/],
  ['FREQ=WEEKLY;COUNT=0', /COUNT must be/],
  ['FREQ=WEEKLY;INTERVAL=0;COUNT=2', /INTERVAL must be/],
  ['FREQ=WEEKLY;UNTIL=2026', /UNTIL is a day/],
  ['FREQ=WEEKLY;UNTIL=20261301', /UNTIL is a day/],
  ['FREQ=WEEKLY;FREQ=DAILY;COUNT=2', /twice/],
  ['FREQ=WEEKLY;BYDAY=SU;COUNT=2', /first flight is not on a day/],
  ['FREQ=MONTHLY;BYMONTHDAY=31;BYMONTH=2;COUNT=2', /BYMONTH cannot be used/],
  ['FREQ=WEEKLY;UNTIL=20260501', /no day/],
])('%s is refused in words', (recurrence, says) => {
  // A Monday.
  expect(refused('2026-06-01T15:00:00Z', recurrence)).toMatch(says);
});

test('another hour of its own day, across the change of the clocks', () => {
  const one = { departs: '2026-03-09T14:00:00Z', arrives: '2026-03-09T16:00:00Z' };
  expect(onItsDay(one, { departsAt: '09:00', zone: NEW_YORK })).toEqual({
    ...{ departs: '2026-03-09T13:00:00Z', arrives: '2026-03-09T15:00:00Z' },
  });
  expect(onItsDay(one, { lastsMinutes: 45, zone: NEW_YORK })).toEqual({
    ...one,
    arrives: '2026-03-09T14:45:00Z',
  });
  expect(
    onItsDay({ ...one, departs: '2026-03-08T15:00:00Z' }, { departsAt: '02:30', zone: NEW_YORK }).departs,
  ).toBe('2026-03-08T07:30:00Z');
});
