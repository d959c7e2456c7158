/** The sun over the year, and what holds at every rise and set. */
import { toInstant, toSeconds } from '../../../src/rules/calendar/instants.js';
import { subsolarPoint } from '../../../src/rules/sky/ephemeris.js';
import {
  isPlace,
  solarDay,
  solarDayNumber,
  sunAltitudeDeg,
  sunTimes,
  SUNSET_ALTITUDE_DEG,
} from '../../../src/rules/sky/sun.js';

const HOUR = 3600;
const DAY = 86_400;
/** Minutes by which the sun is ahead of the clock of mean time. */
const aheadMinutes = (at: number): number => {
  const ofDay = (((at % DAY) + DAY) % DAY) / DAY;
  return 4 * (subsolarPoint(at).greenwichHourAngleDeg - (360 * ofDay - 180));
};

// The equation of time and the declination as almanacs print them for noon at Greenwich (from memory).
test.each([
  ['2026-02-11', -14.2, -14.0],
  ['2026-04-15', 0, 9.8],
  ['2026-06-21', -1.9, 23.4],
  ['2026-11-03', 16.4, -15.1],
  ['2026-12-21', 2, -23.4],
])('at noon of %s the sun is %d minutes ahead and stands over %d degrees', (date, ahead, declination) => {
  const at = toSeconds(`${date}T12:00:00Z`);
  expect(Math.abs(aheadMinutes(at) - ahead)).toBeLessThan(0.2);
  expect(Math.abs(subsolarPoint(at).declinationDeg - declination)).toBeLessThan(0.1);
});

test('over three years it is never more than 17 minutes from mean time, and moves evenly', () => {
  const start = toSeconds('2026-01-01T00:00:00Z');
  let [least, greatest, widest] = [0, 0, 0];
  let before = aheadMinutes(start);
  for (let at = start + 6 * HOUR; at < start + 1096 * DAY; at += 6 * HOUR) {
    const now = aheadMinutes(at);
    [least, greatest] = [Math.min(least, now), Math.max(greatest, now)];
    widest = Math.max(widest, Math.abs(now - before));
    before = now;
  }
  expect([Math.round(least), Math.round(greatest)]).toEqual([-14, 16]);
  // Half a minute a day at most (late December).
  expect(widest).toBeLessThan(0.13);
});

test('a solar day begins at midnight of local mean time', () => {
  // 105 degrees west is seven hours behind, 7.5 degrees east half an hour ahead.
  expect([7 * HOUR - 1, 7 * HOUR].map((at) => solarDayNumber(at, -105))).toEqual([-1, 0]);
  expect([-1800 - 1, -1800].map((at) => solarDayNumber(at, 7.5))).toEqual([-1, 0]);
  expect(solarDay(0, { latitudeDeg: 0, longitudeDeg: -105 }, 0)).toMatchObject({
    from: 7 * HOUR,
    to: 31 * HOUR,
    beginsBelow: true,
  });
});

test('overhead where it stands, straight below at the other end of the earth, on the horizon a quarter round', () => {
  const start = toSeconds('2026-03-01T00:00:00Z');
  for (let at = start; at < start + 300 * DAY; at += 7 * HOUR + 11) {
    const { declinationDeg, greenwichHourAngleDeg } = subsolarPoint(at);
    const altitude = (latitudeDeg: number, longitudeDeg: number) =>
      sunAltitudeDeg({ latitudeDeg, longitudeDeg }, at);
    expect(altitude(declinationDeg, -greenwichHourAngleDeg)).toBeCloseTo(90, 4);
    expect(altitude(-declinationDeg, 180 - greenwichHourAngleDeg)).toBeCloseTo(-90, 4);
    // Seen from the surface it is 8.8 arc seconds lower than from the centre.
    expect(altitude(0, 90 - greenwichHourAngleDeg) * 3600).toBeCloseTo(-8.794, 2);
    // Sixty degrees from the horizon, half of that.
    expect((altitude(declinationDeg - 30, -greenwichHourAngleDeg) - 60) * 3600).toBeCloseTo(-4.397, 2);
  }
});

describe('at a crossing the sun goes through the altitude, the way that is told', () => {
  const from = solarDayNumber(toSeconds('2026-01-01T12:00:00Z'), 0);
  test.each([
    [-18, 40, -105],
    [-6, 63, 20],
    [SUNSET_ALTITUDE_DEG, 66, -150],
    [SUNSET_ALTITUDE_DEG, -66.5, 165],
    [0, 0, 0],
    [45, 35, 100],
    [85, 10, -60],
  ])('%d degrees at %d, %d', (altitude, latitudeDeg, longitudeDeg) => {
    const place = { latitudeDeg, longitudeDeg };
    let found = 0;
    for (let number = from; number < from + 365; number += 1) {
      const day = solarDay(altitude, place, number);
      let below = day.beginsBelow;
      for (const at of day.crossings) {
        const [before, after] = [sunAltitudeDeg(place, at - 1), sunAltitudeDeg(place, at + 1)];
        expect({ at: toInstant(at), below: before < altitude, above: after < altitude }).toEqual({
          at: toInstant(at),
          below,
          above: !below,
        });
        below = !below;
        found += 1;
      }
      expect({ number, endsBelow: sunAltitudeDeg(place, day.to) < altitude }).toEqual({
        number,
        endsBelow: below,
      });
    }
    expect(found).toBeGreaterThan(100);
  });
});

test('the poles and the date line are places, nothing beyond them is', () => {
  const place = (latitudeDeg: number, longitudeDeg: number) => isPlace({ latitudeDeg, longitudeDeg });
  expect([place(90, 180), place(-90, -180), place(0, 0)]).toEqual([true, true, true]);
  expect([place(90.1, 0), place(-90.1, 0), place(0, 180.1), place(0, -180.1), place(Number.NaN, 0)]).toEqual(
    Array(5).fill(false),
  );
});

test('times round the noon of the date, wherever they fall in solar days', () => {
  for (const [latitudeDeg, longitudeDeg] of [
    [66, -150],
    [67, 20],
    [-66.2, 165],
  ] as const) {
    const place = { latitudeDeg, longitudeDeg };
    for (let day = 0; day < 365; day += 1) {
      const noon = toSeconds('2026-01-01T12:00:00Z') + day * DAY - longitudeDeg * 240;
      const date = toInstant(toSeconds('2026-01-01T12:00:00Z') + day * DAY).slice(0, 10);
      const { sunrise, sunset } = sunTimes(date, place);
      for (const [at, sign] of [
        [sunrise, -1],
        [sunset, 1],
      ] as const) {
        if (at === null) continue;
        expect({ date, side: (at - noon) * sign >= 0, far: Math.abs(at - noon) < 12.4 * HOUR }).toEqual({
          date,
          side: true,
          far: true,
        });
        expect({
          date,
          sign: Math.sign(sunAltitudeDeg(place, at - 1) - sunAltitudeDeg(place, at + 1)),
        }).toEqual({
          date,
          sign,
        });
      }
    }
  }
});

test('two nights that begin in one day of mean time: each sunset is told of its own date', () => {
  // The first short nights after the midnight sun: down three minutes past mean midnight, and again a quarter of an hour before the next.
  const place = { latitudeDeg: 66.56, longitudeDeg: 20 };
  const midnight = toSeconds('2026-07-07T00:00:00Z') - 20 * 240;
  const { crossings, beginsBelow } = solarDay(SUNSET_ALTITUDE_DEG, place, midnight / DAY + 20 / 360);
  expect([beginsBelow, crossings.length]).toEqual([false, 3]);
  const [first, rise, second] = crossings;
  expect(sunTimes('2026-07-06', place)).toMatchObject({ sunset: first });
  expect(sunTimes('2026-07-07', place)).toMatchObject({ sunrise: rise, sunset: second });
  expect(second! - midnight).toBeGreaterThan(23.5 * HOUR);
  for (const [at, sign] of [
    [first!, 1],
    [rise!, -1],
    [second!, 1],
  ] as const)
    expect(Math.sign(sunAltitudeDeg(place, at - 5) - sunAltitudeDeg(place, at + 5))).toBe(sign);
});

// Civil twilight ends with the centre of the sun six degrees under the horizon (US Naval Observatory, as the Air Almanac; from memory).
test('at civil dawn and dusk the sun stands six degrees under the horizon', () => {
  const place = { latitudeDeg: 40, longitudeDeg: -105 };
  const { civilDawn, civilDusk } = sunTimes('2027-03-01', place, 'America/Denver');
  for (const at of [civilDawn!, civilDusk!])
    expect(Math.abs(sunAltitudeDeg(place, at) + 6)).toBeLessThan(0.01);
});

test('where the clock is fourteen hours ahead and the place far west, the times are those of the date there', () => {
  const line = { latitudeDeg: 1.9, longitudeDeg: -157.4 };
  const { sunrise, sunset } = sunTimes('2027-03-01', line, 'Pacific/Kiritimati');
  const [begins, ends] = [toSeconds('2027-02-28T10:00:00Z'), toSeconds('2027-03-01T10:00:00Z')];
  expect(sunrise).toBeGreaterThan(begins);
  expect(sunset).toBeLessThan(ends);
});

describe('in the far north', () => {
  const from = (first: string): string[] =>
    Array.from({ length: 120 }, (_, day) =>
      toInstant(toSeconds(`${first}T00:00:00Z`) + day * DAY).slice(0, 10),
    );
  const noonAt = (date: string): number => toSeconds(`${date}T12:00:00Z`);

  // Refraction lifts the sun by 50 minutes of arc: from 65.73 N on it does not set at midsummer, and to 67.4 N it rises at midwinter.
  test.each([
    ['2027-04-20', 65.8, 1],
    ['2027-04-20', 66.5, 15],
    ['2027-04-20', 68, 15],
    ['2027-04-20', 75, 15],
    ['2026-11-01', 67, 0],
    ['2026-11-01', 68, 15],
    ['2026-11-01', 75, 15],
  ])('from %s on at %d N no time is of another noon', (first, latitudeDeg, least) => {
    const place = { latitudeDeg, longitudeDeg: 0 };
    const none = from(first).filter((date) => {
      const { sunrise, sunset } = sunTimes(date, place);
      if (sunrise !== null) {
        expect(sunrise).toBeGreaterThan(noonAt(date) - DAY / 2 - 1200);
        expect(sunrise).toBeLessThanOrEqual(noonAt(date) + 1200);
      }
      if (sunset !== null) expect(sunset).toBeLessThan(noonAt(date) + DAY / 2 + 1200);
      return sunrise === null;
    });
    expect(none.length).toBeGreaterThanOrEqual(least);
    if (least === 0) expect(none).toEqual([]);
  });

  // In mid-May the sun is four minutes ahead of mean time, so its midnight is four minutes early.
  test('a sunrise just before midnight of mean time is told of the noon that follows', () => {
    const place = { latitudeDeg: 70.35, longitudeDeg: 0 };
    const sunrise = sunTimes('2026-05-15', place).sunrise!;
    expect(sunrise).toBeLessThan(toSeconds('2026-05-15T00:00:00Z'));
    expect(sunrise).toBeGreaterThan(toSeconds('2026-05-14T23:50:00Z'));
    expect(Math.abs(sunAltitudeDeg(place, sunrise) - SUNSET_ALTITUDE_DEG)).toBeLessThan(0.01);
  });
});
