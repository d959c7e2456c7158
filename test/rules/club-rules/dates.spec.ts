/** Dates and clocks inside expressions, held against plain comparison of dates and against Temporal. */
import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { clockSeconds, nextReading, readClock } from '../../../src/rules/calendar/clocks.js';
import { DateValue, DaysValue, readDate } from '../../../src/rules/club-rules/dates.js';
import { weekdayOf } from '../../../src/rules/club-rules/schema/when.js';
import { Moment } from '../../../src/rules/engine/moment.js';
import { addDays, known, localDateOf, toSeconds } from '../../../src/rules/index.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';
import { KNOWN_AT, memberWith, status } from './scene.js';

const ZONE = 'America/Denver';
const BASE = toSeconds('2027-03-14T00:00:00Z');
const momentAt = (departs: number, hours: number): Moment =>
  new Moment({ departs, durationSeconds: hours * 3600, knownAt: BASE, zone: ZONE });

test("comparing with the flight's dates is comparing dates", () => {
  const offsets = fc.integer({ min: -4 * 86_400, max: 4 * 86_400 });
  fc.assert(
    fc.property(
      offsets,
      fc.integer({ min: 0, max: 60 }),
      fc.integer({ min: -5, max: 5 }),
      (offset, hours, days) => {
        const departs = BASE + offset;
        const fixed = addDays('2027-03-14', days);
        for (const end of ['departure', 'arrival'] as const) {
          const is = localDateOf(end === 'departure' ? departs : departs + hours * 3600, ZONE);
          const flight = DateValue.ofFlight(momentAt(departs, hours), end);
          const day = DateValue.on(fixed);
          expect([
            flight.isBefore(day),
            day.isBefore(flight),
            flight.equals(day),
            day.equals(flight),
          ]).toEqual([is < fixed, fixed < is, is === fixed, is === fixed]);
          expect(
            DateValue.never.isBefore(flight) &&
              !flight.isBefore(DateValue.never) &&
              !flight.equals(DateValue.never),
          ).toBe(true);
        }
        const moment = momentAt(departs, hours);
        const [from, to] = [DateValue.ofFlight(moment, 'departure'), DateValue.ofFlight(moment, 'arrival')];
        const [starts, ends] = [localDateOf(departs, ZONE), localDateOf(departs + hours * 3600, ZONE)];
        expect([from.isBefore(to), from.equals(to)]).toEqual([starts < ends, starts === ends]);
        const since = Temporal.PlainDate.from(fixed).until(ends).days;
        const value = new DaysValue(DateValue.on(fixed), moment);
        expect([value.resolve(), String(value), value.is(since), value.is(since + 1)]).toEqual([
          since,
          String(since),
          true,
          false,
        ]);
        for (let n = since - 3; n <= since + 3; n += 1) expect(value.atMost(n)).toBe(since <= n);
      },
    ),
    { numRuns: 800 },
  );
});

test('a comparison with a fixed date asks for one change point, not for every midnight', () => {
  const moment = momentAt(BASE, 1);
  DateValue.ofFlight(moment, 'departure').isBefore(DateValue.on('2027-06-01'));
  expect(moment.nextChange).toBe(toSeconds('2027-06-01T06:00:00Z'));
});

test('days since a date are compared with a number by one change point; as a number they change every midnight', () => {
  const moment = momentAt(BASE, 1);
  expect(new DaysValue(DateValue.on('2027-03-01'), moment).atMost(60)).toBe(true);
  // 2027-03-01 + 60 days = 2027-04-30, to its end in Denver, less the hour of flight.
  expect(moment.nextChange).toBe(toSeconds('2027-05-01T05:00:00Z'));
  expect(new DaysValue(DateValue.on('2027-03-01'), moment).resolve()).toBe(12);
  // BASE is 17:00 on the thirteenth in Denver: the arrival meets midnight seven hours on.
  expect(moment.nextChange).toBe(toSeconds('2027-03-14T06:00:00Z'));
});

test('months are added as the calendar has them, days as they come', () => {
  expect(String(DateValue.on('2027-01-31').plusMonths(1))).toBe('2027-02-28');
  expect(String(DateValue.on('2028-01-31').plusMonths(1))).toBe('2028-02-29');
  expect(String(DateValue.on('2027-03-31').plusMonths(-1))).toBe('2027-02-28');
  expect(String(DateValue.on('2027-12-31').plusDays(1))).toBe('2028-01-01');
});

test.each([
  ['2027-02-28', true],
  ['2027-02-29', false],
  ['2028-02-29', true],
  ['1900-01-01', true],
  ['2199-12-31', true],
  ['1899-12-31', false],
  ['2200-01-01', false],
  ['2027-2-1', false],
  ['2027-13-01', false],
  [' 2027-01-01', false],
])('%s written as a date: %s', (text, is) => expect(readDate(text) !== null).toBe(is));

test.each([
  ['00:00', 0],
  ['23:59', 86_340],
  ['24:00', null],
  ['7:00', null],
  ['07:60', null],
])('%s read as a clock: %s', (text, seconds) => expect(readClock(text)).toBe(seconds));

test('days of the week are those of ISO 8601', () => {
  for (let days = 0; days < 800; days += 1) {
    const date = addDays('2023-12-25', days);
    const iso = Temporal.PlainDate.from(date).dayOfWeek;
    expect(weekdayOf(date)).toBe(
      ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'][iso - 1],
    );
  }
});

describe('clocks of zones, where they change and where they do not', () => {
  const zones = [
    'America/Denver',
    'Europe/Berlin',
    'Australia/Lord_Howe',
    'Asia/Kathmandu',
    'America/St_Johns',
  ];
  const at = fc.integer({ min: toSeconds('2026-01-01T00:00:00Z'), max: toSeconds('2028-01-01T00:00:00Z') });

  test('show what Temporal shows', () => {
    fc.assert(
      fc.property(at, fc.constantFrom(...zones), (seconds, zone) => {
        const shown = Temporal.Instant.fromEpochMilliseconds(seconds * 1000)
          .toZonedDateTimeISO(zone)
          .toPlainTime();
        expect(clockSeconds(seconds, zone)).toBe(shown.hour * 3600 + shown.minute * 60 + shown.second);
      }),
      { numRuns: 500 },
    );
  });

  test('no comparison with a reading changes before the next one is said to be', () => {
    // Around every change of the clocks of these zones in 2027 (tz database as Temporal has it), and anywhere.
    const changes = [
      '2027-03-14T09:00:00Z',
      '2027-11-07T08:00:00Z',
      '2027-03-28T01:00:00Z',
      '2027-10-31T01:00:00Z',
      '2027-04-03T15:00:00Z',
      '2027-10-02T15:30:00Z',
    ];
    const near = fc
      .tuple(fc.constantFrom(...changes), fc.integer({ min: -90_000, max: 90_000 }))
      .map(([change, off]) => toSeconds(change) + off);
    fc.assert(
      fc.property(
        fc.oneof(near, near, at),
        fc.constantFrom(...zones),
        fc.integer({ min: 0, max: 1439 }),
        (from, zone, minute) => {
          const limit = minute * 60;
          const next = nextReading(from, zone, [0, limit]);
          const before = (seconds: number): boolean => clockSeconds(seconds, zone) < limit;
          expect(next).toBeGreaterThan(from);
          expect(next - from).toBeLessThanOrEqual(86_400);
          const is = before(from);
          for (let seconds = from; seconds < next; seconds += 300) expect(before(seconds)).toBe(is);
          expect(before(next - 1)).toBe(is);
        },
      ),
      { numRuns: 400 },
    );
  });
});

describe('papers on their edges', () => {
  const base = baseSheet().people['member-1']!;
  const list = <T>(fact: unknown): T => (fact as { value: T[] }).value[0]!;
  const medical = list<object>(base.medicals);
  const certificate = list<object>(base.certificates);
  // The flight is on 2027-03-01 in Denver.
  test.each([
    ['2027-03-02', 3],
    ['2027-03-01', 0],
    [null, 3],
  ])('a medical withdrawn on %s is of class %s', (withdrawnOn, best) => {
    const sheet = memberWith({ medicals: known([{ ...medical, withdrawnOn }] as never, KNOWN_AT) });
    expect(status(`pilot.medicalClass == ${best}`, sheet)).toBe('met');
  });

  test.each([
    [{ from: '2027-02-01', to: '2027-02-28' }, 'private'],
    [{ from: '2027-02-01', to: '2027-03-01' }, 'none'],
    [{ from: '2027-03-01', to: null }, 'none'],
    [{ from: '2027-03-02', to: null }, 'private'],
  ])('a certificate suspended %j is of level %s', (span, level) => {
    const sheet = memberWith({
      certificates: known([{ ...certificate, suspensions: [{ id: 's', ...span }] }] as never, KNOWN_AT),
    });
    expect(status(`pilot.certificateLevel == "${level}"`, sheet)).toBe('met');
  });

  test.each([
    ['2027-02-28', 'none'],
    ['2027-03-01', 'private'],
  ])('a certificate valid through %s is of level %s', (validThrough, level) => {
    const sheet = memberWith({ certificates: known([{ ...certificate, validThrough }] as never, KNOWN_AT) });
    expect(status(`pilot.certificateLevel == "${level}"`, sheet)).toBe('met');
  });

  test.each([
    ['1991-03-01', 36],
    ['1991-03-02', 35],
    ['1992-02-29', 35],
  ])('born on %s is %s', (birthDate, age) => {
    expect(status(`pilot.ageYears == ${age}`, memberWith({ birthDate: known(birthDate, KNOWN_AT) }))).toBe(
      'met',
    );
  });
});
