/**
 * Questions about time: each answer, and the departure at which it next differs, tried a second before, at and after each edge.
 * Nothing but the definition of each question is used to say what is right.
 */
import { endOfDay, startOfDay, toInstant, toSeconds } from '../../../src/rules/calendar/instants.js';
import { momentAt } from '../../../src/rules/engine/judge.js';
import { FlightTime, Moment } from '../../../src/rules/engine/moment.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';

const ZONE = 'America/Denver';
const HOUR = 3600;
const NOON = toSeconds('2027-03-01T19:00:00Z');
const moment = (departs: number, durationSeconds = HOUR) =>
  new Moment({ departs, durationSeconds, knownAt: NOON - 7200, zone: ZONE });
const at = (instant: string): number => toSeconds(instant);

/** The answer at a departure, and when it says it will differ. */
function asked<T>(
  ask: (of: Moment) => T,
  departs: number,
  durationSeconds = HOUR,
): { answer: T; next: number | null } {
  const of = moment(departs, durationSeconds);
  return { answer: ask(of), next: of.nextChange };
}

/** Holds a question against what it means, second by second around its edges. */
function holds(
  ask: (of: Moment) => boolean,
  means: (departs: number) => boolean,
  edges: number[],
  duration = HOUR,
): void {
  const changes = edges.filter((edge) => means(edge - 1) !== means(edge)).sort((a, b) => a - b);
  for (const edge of edges)
    for (const departs of [edge - 100_000, edge - 2, edge - 1, edge, edge + 1, edge + 100_000]) {
      const { answer, next } = asked(ask, departs, duration);
      expect([toInstant(departs), answer]).toEqual([toInstant(departs), means(departs)]);
      // A moment may name a departure too early, never one too late.
      const change = changes.find((one) => one > departs) ?? null;
      if (change !== null) {
        expect(next).not.toBeNull();
        expect(next!).toBeLessThanOrEqual(change);
      }
      if (next !== null) expect(next).toBeGreaterThan(departs);
    }
  // From just before an edge the edge itself is named.
  for (const change of changes) expect(asked(ask, change - 1, duration).next).toBe(change);
}

const INSTANT = '2027-03-01T20:00:00Z';
const I = at(INSTANT);

describe.each([
  ['as text', INSTANT as string | number],
  ['as seconds', I as string | number],
])('an instant %s', (_, instant) => {
  test('departs at or after it', () => {
    holds(
      (of) => of.departsAtOrAfter(instant),
      (departs) => departs >= I,
      [I],
    );
  });
  test('departs at or before it', () => {
    holds(
      (of) => of.departsAtOrBefore(instant),
      (departs) => departs <= I,
      [I + 1],
    );
  });
  test('arrives before it', () => {
    holds(
      (of) => of.arrivesBefore(instant),
      (departs) => departs + HOUR < I,
      [I - HOUR],
    );
  });
  test('once it is past, nothing changes any more', () => {
    expect(asked((of) => of.departsAtOrAfter(instant), I).next).toBeNull();
    expect(asked((of) => of.arrivesBefore(instant), I - HOUR).next).toBeNull();
  });
});

test('an instant written another way is compared as time', () => {
  expect(asked((of) => of.departsAtOrAfter('2027-03-01T13:00:00-07:00'), I - 1)).toEqual({
    answer: false,
    next: I,
  });
  expect(asked((of) => of.arrivesBefore('2027-03-01T13:00:00-07:00'), I - HOUR - 1).answer).toBe(true);
});

describe('dates, in the club’s zone', () => {
  const date = '2027-03-14'; // The clocks go forward: the day has 23 hours.
  const begins = startOfDay(date, ZONE);
  const ends = endOfDay(date, ZONE);

  test('starts on or after a date', () => {
    holds(
      (of) => of.startsOnOrAfter(date),
      (departs) => departs >= begins,
      [begins],
    );
  });
  test('ends on or before a date, the whole flight', () => {
    holds(
      (of) => of.endsOnOrBefore(date),
      (departs) => departs + HOUR < ends,
      [ends - HOUR],
    );
  });
  test('ends within so many days of a date', () => {
    holds(
      (of) => of.endsWithinDaysOf('2027-03-04', 10),
      (departs) => departs + HOUR < ends,
      [ends - HOUR],
    );
    expect(asked((of) => of.endsWithinDaysOf('2027-03-04', 9), ends - HOUR - 1).answer).toBe(false);
  });
  test('of two dates the nearer change is named', () => {
    const both = (of: Moment) => [
      of.startsOnOrAfter(date),
      of.startsOnOrAfter('2027-03-10'),
      of.startsOnOrAfter('2027-03-12'),
    ];
    expect(asked(both, NOON).next).toBe(startOfDay('2027-03-10', ZONE));
    const ending = (of: Moment) => [
      of.endsOnOrBefore(date),
      of.endsOnOrBefore('2027-03-10'),
      of.endsOnOrBefore('2027-03-12'),
    ];
    expect(asked(ending, NOON).next).toBe(endOfDay('2027-03-10', ZONE) - HOUR);
    const mixed = (of: Moment) => [of.startsOnOrAfter('2027-03-11'), of.endsOnOrBefore('2027-03-10')];
    expect(asked(mixed, NOON).next).toBe(endOfDay('2027-03-10', ZONE) - HOUR);
  });
  test('asked twice, the next change is the same', () => {
    const of = moment(NOON);
    of.startsOnOrAfter(date);
    of.endsOnOrBefore(date);
    expect([of.nextChange, of.nextChange]).toEqual([begins, begins]);
  });
  test('the dates of departure and arrival change at midnight', () => {
    const late = at('2027-03-02T06:30:00Z'); // 23:30 of 1 March there.
    expect(asked((of) => of.departureDate(), late)).toEqual({
      answer: '2027-03-01',
      next: at('2027-03-02T07:00:00Z'),
    });
    expect(asked((of) => of.arrivalDate(), late)).toEqual({
      answer: '2027-03-02',
      next: at('2027-03-03T06:00:00Z'),
    });
  });
});

describe('sharing time with a span', () => {
  const [from, to] = [at('2027-03-01T20:00:00Z'), at('2027-03-01T21:00:00Z')];
  test('back to back does not collide', () => {
    holds(
      (of) => of.overlaps(toInstant(from), toInstant(to)),
      (departs) => departs + HOUR > from && departs < to,
      [from - HOUR + 1, to],
    );
  });
  test('a span without an end', () => {
    holds(
      (of) => of.overlaps(from, null),
      (departs) => departs + HOUR > from,
      [from - HOUR + 1],
    );
  });
  test('a flight of no length collides from the first instant on', () => {
    holds(
      (of) => of.overlaps(from, to),
      (departs) => departs >= from && departs < to,
      [from, to],
      0,
    );
  });
});

describe('what was known when', () => {
  test('hours and the date count from when the facts were gathered', () => {
    const of = moment(NOON);
    expect([of.hoursFromKnowledge(0), of.hoursFromKnowledge(2.5)]).toEqual([
      '2027-03-01T17:00:00Z',
      '2027-03-01T19:30:00Z',
    ]);
    expect(of.knowledgeDate()).toBe('2027-03-01');
    expect(
      new Moment({
        departs: NOON,
        durationSeconds: 0,
        knownAt: at('2027-03-01T06:59:59Z'),
        zone: ZONE,
      }).knowledgeDate(),
    ).toBe('2027-02-28');
    expect(of.nextChange).toBeNull();
    expect([of.durationSeconds, of.zone]).toEqual([HOUR, ZONE]);
  });
});

describe('asking the sun', () => {
  const span = (of: Moment, edges: number[], knownTo: number) =>
    of.watch(({ departs, arrives }) => ({ answer: [departs, arrives], edges, knownTo }));
  test('it is told the span', () => {
    expect(span(moment(NOON), [], NOON + 9999)).toEqual([NOON, NOON + HOUR]);
  });
  test('an edge is met by the arrival, a second after it, by the departure, and a second after that', () => {
    const edge = NOON + 10 * HOUR;
    const next = (departs: number) => {
      const of = moment(departs);
      span(of, [edge], departs + 1000 * HOUR);
      return of.nextChange;
    };
    expect([NOON, edge - HOUR, edge - HOUR + 1, edge, edge + 1].map(next)).toEqual([
      edge - HOUR,
      edge - HOUR + 1,
      edge,
      edge + 1,
      edge + 1 + 999 * HOUR,
    ]);
  });
  test('what is known no further is asked again', () => {
    const of = moment(NOON);
    span(of, [], NOON + 5 * HOUR);
    expect(of.nextChange).toBe(NOON + 4 * HOUR);
  });
});

test('questions asked aside leave no trace', () => {
  const of = moment(NOON);
  expect(of.aside().startsOnOrAfter('2027-03-02')).toBe(false);
  expect(of.nextChange).toBeNull();
});

test('a flight’s time serves several moments, each with its own changes', () => {
  const time = new FlightTime({ departs: NOON, durationSeconds: HOUR, knownAt: NOON, zone: ZONE });
  const [one, two] = [new Moment(time), new Moment(time)];
  one.startsOnOrAfter('2027-03-02');
  expect([one.nextChange, two.nextChange]).toEqual([startOfDay('2027-03-02', ZONE), null]);
  expect([time.departsText, time.arrivesText, time.departsOn, time.arrivesOn]).toEqual([
    '2027-03-01T19:00:00Z',
    '2027-03-01T20:00:00Z',
    '2027-03-01',
    '2027-03-01',
  ]);
  expect([time.arrivalDateLess(1), time.arrivalDateLess(1), time.arrivalDateLess(0)]).toEqual([
    '2027-02-28',
    '2027-02-28',
    '2027-03-01',
  ]);
});

test('within no days at all is the day of arrival', () => {
  expect(asked((of) => of.endsWithinDaysOf('2027-03-01', 0), NOON).answer).toBe(true);
  expect(asked((of) => of.endsWithinDaysOf('2027-02-28', 0), NOON).answer).toBe(false);
  expect(asked((of) => of.aside().endsWithinDaysOf('2027-02-28', 0), NOON).answer).toBe(false);
});

test('a sheet is judged at a departure in its own zone, with the length of its flight', () => {
  const sheet = baseSheet();
  const of = momentAt(sheet, NOON);
  expect([of.departureDate(), of.durationSeconds, of.zone]).toEqual(['2027-03-01', HOUR, ZONE]);
});

test('a flight that takes time may touch a span that begins as it ends', () => {
  const { answer, next } = asked((of) => of.overlaps(I, null), I - 2 * HOUR);
  expect([answer, next]).toEqual([false, I - HOUR + 1]);
});
