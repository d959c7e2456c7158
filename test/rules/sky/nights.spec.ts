import { toInstant, toSeconds } from '../../../src/rules/calendar/instants.js';
import { Moment } from '../../../src/rules/engine/moment.js';
import { UnknownFact } from '../../../src/rules/engine/unknown.js';
import {
  firstNight,
  isNight,
  nextNightStarts,
  nightSpans,
  touchesNight,
} from '../../../src/rules/sky/nights.js';
import {
  CIVIL_TWILIGHT_ALTITUDE_DEG,
  solarDay,
  sunAltitudeDeg,
  SUNSET_ALTITUDE_DEG,
  sunTimes,
} from '../../../src/rules/sky/sun.js';
import { HOME_FIELD } from '../../../src/rules/workshop/base-sheet.js';

const HOUR = 3600;
const DAY = 86_400;
const moment = (departs: number, durationSeconds: number) =>
  new Moment({ departs, durationSeconds, knownAt: departs, zone: 'America/Denver' });
const noon = toSeconds('2027-03-01T19:00:00Z');
const [evening] = nightSpans('lights', HOME_FIELD, noon, noon + DAY);

describe('the three nights of one evening', () => {
  const times = sunTimes('2027-03-01', HOME_FIELD, HOME_FIELD.zone);

  test('lights from sunset, civil from the end of twilight, passengers from an hour after sunset', () => {
    const starts = (kind: 'lights' | 'civil' | 'passenger') =>
      nightSpans(kind, HOME_FIELD, noon, noon + DAY)[0]!.from;
    expect(starts('lights')).toBe(times.sunset);
    expect(starts('civil')).toBe(times.civilDusk);
    expect(starts('passenger')).toBe(times.sunset! + HOUR);
  });

  // 14 CFR 1.1, 61.57(b), 91.209: check values rn-11, rn-12, rn-13 of the rules reference.
  test.each([
    [10, { lights: true, civil: false, passenger: false }],
    [45, { lights: true, civil: true, passenger: false }],
    [75, { lights: true, civil: true, passenger: true }],
  ])('%i minutes after sunset', (minutes, nights) => {
    const at = times.sunset! + minutes * 60;
    expect({
      lights: isNight('lights', HOME_FIELD, at),
      civil: isNight('civil', HOME_FIELD, at),
      passenger: isNight('passenger', HOME_FIELD, at),
    }).toEqual(nights);
  });
});

describe('touchesNight', () => {
  test('arriving in the second the night begins touches it; a second earlier does not', () => {
    const begins = evening!.from;
    expect(touchesNight(moment(begins - HOUR, HOUR), [HOME_FIELD], 'lights')).toBe(true);
    expect(touchesNight(moment(begins - HOUR - 1, HOUR), [HOME_FIELD], 'lights')).toBe(false);
  });

  test('departing in the second the night ends touches it; a second later does not', () => {
    const ends = nightSpans('lights', HOME_FIELD, noon, noon + DAY)[0]!.to;
    expect(touchesNight(moment(ends, HOUR), [HOME_FIELD], 'lights')).toBe(true);
    expect(touchesNight(moment(ends + 1, HOUR), [HOME_FIELD], 'lights')).toBe(false);
  });

  test('by day the next change is the first departure that arrives in the night', () => {
    const byDay = moment(noon, HOUR);
    expect(touchesNight(byDay, [HOME_FIELD], 'lights')).toBe(false);
    expect(toInstant(byDay.nextChange!)).toBe(toInstant(evening!.from - HOUR));
  });

  test('by night it is the first departure after the night', () => {
    const byNight = moment(evening!.from + HOUR, HOUR);
    expect(touchesNight(byNight, [HOME_FIELD], 'lights')).toBe(true);
    const whole = nightSpans('lights', HOME_FIELD, noon, noon + DAY)[0]!;
    expect(byNight.nextChange).toBe(whole.to + 1);
  });

  test('night at one field of the route is enough', () => {
    const east = { ...HOME_FIELD, id: 'airfield-east', longitudeDeg: -60 };
    const departs = evening!.from - 2 * HOUR;
    expect(touchesNight(moment(departs, HOUR), [HOME_FIELD, HOME_FIELD], 'lights')).toBe(false);
    expect(touchesNight(moment(departs, HOUR), [HOME_FIELD, east, HOME_FIELD], 'lights')).toBe(true);
  });

  test('a route without a place cannot be told', () => {
    expect(() => touchesNight(moment(noon, HOUR), [], 'civil')).toThrow(UnknownFact);
    const lost = { ...HOME_FIELD, latitudeDeg: Number.NaN };
    expect(() => touchesNight(moment(noon, HOUR), [lost], 'civil')).toThrow(UnknownFact);
  });
});

describe('towards the poles', () => {
  const from = toSeconds('2026-06-10T00:00:00Z');
  const to = from + 20 * DAY;

  test('under the midnight sun there is no night of any kind', () => {
    const far = { latitudeDeg: 70, longitudeDeg: 20 };
    for (const kind of ['civil', 'passenger', 'lights'] as const)
      expect(nightSpans(kind, far, from, to)).toEqual([]);
  });

  test('in polar night it is always night', () => {
    const far = { latitudeDeg: -88, longitudeDeg: 20 };
    for (const kind of ['civil', 'passenger', 'lights'] as const)
      expect(nightSpans(kind, far, from, to)).toEqual([{ from, to }]);
  });

  test('at 65 N at midsummer the sun sets, and there is no civil night', () => {
    const north = { latitudeDeg: 65, longitudeDeg: -150 };
    const times = sunTimes('2026-06-21', north);
    expect(times.sunset).not.toBeNull();
    expect(times.civilDusk).toBeNull();
    expect(nightSpans('lights', north, from, to).length).toBeGreaterThan(15);
    expect(nightSpans('civil', north, from, to)).toEqual([]);
    // The sun is down for less than two hours, so an hour from each side leaves nothing.
    expect(
      nightSpans('passenger', north, toSeconds('2026-06-20T12:00:00Z'), toSeconds('2026-06-22T12:00:00Z')),
    ).toEqual([]);
  });
});

describe('nextNightStarts', () => {
  test('names the coming dusk in the local time of the place', () => {
    expect(nextNightStarts(moment(noon, HOUR), HOME_FIELD, 'lights')).toBe('17:51');
  });
  test('says nothing in the night, nor where none comes', () => {
    expect(nextNightStarts(moment(evening!.from + 60, HOUR), HOME_FIELD, 'lights')).toBeNull();
    const far = { latitudeDeg: 70, longitudeDeg: 20 };
    expect(nextNightStarts(moment(toSeconds('2026-06-21T12:00:00Z'), HOUR), far, 'lights')).toBeNull();
  });
});

describe('second by second against where the sun stands', () => {
  const start = toSeconds('2027-02-20T00:00:00Z');
  const limits = { lights: SUNSET_ALTITUDE_DEG, civil: CIVIL_TWILIGHT_ALTITUDE_DEG } as const;
  const places = [
    { latitudeDeg: 39.9, longitudeDeg: -105 },
    { latitudeDeg: -33, longitudeDeg: 151 },
    { latitudeDeg: 60, longitudeDeg: 0 },
  ];

  test.each(places)('$latitudeDeg, $longitudeDeg', (place) => {
    for (const kind of ['lights', 'civil'] as const) {
      const dark = (at: number) => sunAltitudeDeg(place, at) < limits[kind];
      for (let day = 0; day < 25; day += 1) {
        // Midnight of mean time, where what is worked out at a time begins and ends, and the rest of the day by the half hour.
        const midnight = start + day * DAY - place.longitudeDeg * 240;
        for (const at of [-150, -90, -1, 0, 1, 90, 150].map((offset) => midnight + offset)) {
          expect([toInstant(at), isNight(kind, place, at)]).toEqual([toInstant(at), true]);
          // An hour from the edges of the night there is no sun either.
          expect([toInstant(at), isNight('passenger', place, at)]).toEqual([toInstant(at), true]);
        }
        for (let at = midnight; at < midnight + DAY; at += 1800)
          expect([toInstant(at), isNight(kind, place, at)]).toEqual([toInstant(at), dark(at)]);
      }
    }
  });

  test.each(places)(
    '$latitudeDeg, $longitudeDeg: one night for each day, each whole, both ends in it',
    (place) => {
      const noon = start + DAY / 2 - place.longitudeDeg * 240;
      for (const kind of ['lights', 'civil', 'passenger'] as const) {
        const spans = nightSpans(kind, place, noon, noon + 25 * DAY);
        expect(spans).toHaveLength(25);
        for (const { from, to } of spans)
          expect([from - 1, from, to, to + 1].map((at) => isNight(kind, place, at))).toEqual([
            false,
            true,
            true,
            false,
          ]);
      }
    },
  );
});

describe('runs of departures that touch a night', () => {
  /** The last departure from `departs` on that touches, found by asking each in turn. */
  const lastByAsking = (departs: number, length: number, route: (typeof HOME_FIELD)[]) => {
    let last = departs;
    while (touchesNight(moment(last + 1, length), route, 'lights')) last += 1;
    return last;
  };
  const away = (longitudeDeg: number) => ({ ...HOME_FIELD, id: `airfield${longitudeDeg}`, longitudeDeg });
  const whole = nightSpans('lights', HOME_FIELD, noon, noon + DAY)[0]!;

  test.each([
    ['night at home', [HOME_FIELD], HOUR],
    ['night two hours east first', [away(HOME_FIELD.longitudeDeg + 30), HOME_FIELD], HOUR],
    ['night two hours west last', [HOME_FIELD, away(HOME_FIELD.longitudeDeg - 30)], 2 * HOUR],
  ] as const)('%s: the change is told to the second', (_, route, length) => {
    const departs = whole.from + HOUR;
    const next = moment(departs, length);
    expect(touchesNight(next, route, 'lights')).toBe(true);
    const found = next.nextChange!;
    expect(touchesNight(moment(found - 1, length), route, 'lights')).toBe(true);
    expect(touchesNight(moment(found, length), route, 'lights')).toBe(false);
    expect(found).toBe(lastByAsking(found - 200, length, [...route]) + 1);
  });

  test('night that ends a second later at the next field is seen, whichever comes first', () => {
    // The sun stands a second later over what lies a 240th of a degree further west.
    const later = away(HOME_FIELD.longitudeDeg - 1 / 240);
    const ends = nightSpans('lights', later, noon, noon + DAY)[0]!.to;
    expect(ends).toBe(whole.to + 1);
    for (const route of [
      [HOME_FIELD, later],
      [later, HOME_FIELD],
    ]) {
      const inside = moment(whole.from + HOUR, HOUR);
      expect(touchesNight(inside, route, 'lights')).toBe(true);
      expect(inside.nextChange).toBe(ends + 1);
    }
  });

  test('a flight longer than the day touches one night after the other, as far as is looked', () => {
    const length = 13 * HOUR;
    const long = moment(noon, length);
    expect(touchesNight(long, [HOME_FIELD], 'lights')).toBe(true);
    for (let departs = noon; departs < long.nextChange!; departs += HOUR)
      expect(touchesNight(moment(departs, length), [HOME_FIELD], 'lights')).toBe(true);
    expect(long.nextChange! - noon).toBeGreaterThan(3 * DAY);
  });

  test('a flight as long as the day but for two seconds has one departure that touches no night', () => {
    const day = nightSpans('lights', HOME_FIELD, noon, noon + 2 * DAY);
    const length = day[1]!.from - day[0]!.to - 1;
    // Off in the second after the night, down in the second in which the next begins.
    expect(touchesNight(moment(day[0]!.to + 1, length), [HOME_FIELD], 'lights')).toBe(true);
    expect(touchesNight(moment(day[0]!.to + 1, length - 1), [HOME_FIELD], 'lights')).toBe(false);
    const inside = moment(day[0]!.from, length - 1);
    touchesNight(inside, [HOME_FIELD], 'lights');
    expect(inside.nextChange).toBe(day[0]!.to + 1);
    const bridged = moment(day[0]!.from, length);
    touchesNight(bridged, [HOME_FIELD], 'lights');
    expect(bridged.nextChange).toBeGreaterThan(day[1]!.from);
  });
});

describe('how far ahead a sentence names the night', () => {
  const far = { latitudeDeg: 70, longitudeDeg: 20 };
  const first = nightSpans(
    'lights',
    far,
    toSeconds('2026-06-21T00:00:00Z'),
    toSeconds('2026-08-20T00:00:00Z'),
  )[0]!;

  test('36 hours, after weeks of midnight sun', () => {
    expect(nextNightStarts(moment(first.from - 36 * HOUR, HOUR), far, 'lights')).toMatch(/^\d\d:\d\d$/);
    expect(nextNightStarts(moment(first.from - 36 * HOUR - 1, HOUR), far, 'lights')).toBeNull();
  });
  test('not the night in whose first second the flight departs', () => {
    expect(nextNightStarts(moment(first.from - 1, HOUR), far, 'lights')).not.toBeNull();
    expect(nextNightStarts(moment(first.from, HOUR), far, 'lights')).toBeNull();
  });
});

test('the first night from each hour of three weeks on is the first of all nights from then on', () => {
  for (let at = noon; at < noon + 21 * DAY; at += HOUR) {
    const first = firstNight('lights', HOME_FIELD, at, at + 3 * DAY);
    const [of] = nightSpans('lights', HOME_FIELD, at, at + 3 * DAY);
    expect([at, first && Math.max(first.from, at)]).toEqual([at, of!.from]);
  }
});

test('and in the far north, where the nights come back at the end of July', () => {
  const north = { latitudeDeg: 70, longitudeDeg: 15 };
  const begins = toSeconds('2027-07-10T00:00:00Z');
  let none = 0;
  for (let at = begins; at < begins + 30 * DAY; at += 6 * HOUR) {
    const first = firstNight('lights', north, at, at + 4 * DAY);
    const [of] = nightSpans('lights', north, at, at + 4 * DAY);
    if (!of) none += 1;
    expect([at, first && Math.max(first.from, at)]).toEqual([at, of?.from ?? null]);
  }
  expect(none).toBeGreaterThan(0);
  expect(none).toBeLessThan(120);
});

test('a field due north of another is a place of its own', () => {
  const north = { ...HOME_FIELD, latitudeDeg: 78 };
  const inWinter = moment(toSeconds('2026-12-21T19:00:00Z'), HOUR);
  expect(touchesNight(inWinter, [HOME_FIELD], 'lights')).toBe(false);
  expect(touchesNight(inWinter, [HOME_FIELD, north], 'lights')).toBe(true);
});

test('under the midnight sun a flight touches no night, as far as is looked', () => {
  const north = { ...HOME_FIELD, latitudeDeg: 78, longitudeDeg: 15 };
  const departs = toSeconds('2027-06-20T10:00:00Z');
  const of = moment(departs, HOUR);
  expect(touchesNight(of, [north], 'lights')).toBe(false);
  expect(of.nextChange).toBeGreaterThan(departs + 3 * DAY);
});

// In early July the sun is behind mean time, so the short dip under the horizon can lie wholly after midnight of mean time.
test('a night that begins after midnight of mean time is seen', () => {
  const place = { latitudeDeg: 66.05, longitudeDeg: 0 };
  const { beginsBelow, crossings } = solarDay(SUNSET_ALTITUDE_DEG, place, 20_635);
  expect([beginsBelow, crossings.length]).toEqual([false, 3]);
  const middle = Math.round((crossings[0]! + crossings[1]!) / 2);
  expect(sunAltitudeDeg(place, middle)).toBeLessThan(SUNSET_ALTITUDE_DEG);
  expect([middle, crossings[0]! - 60, crossings[1]! + 60].map((at) => isNight('lights', place, at))).toEqual([
    ...[true, false, false],
  ]);
});
