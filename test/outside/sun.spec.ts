/**
 * The sun against two outside sources: values printed in almanacs, and the solar position equations published by NOAA
 * (Global Monitoring Laboratory, solar calculation details; after J. Meeus, Astronomical Algorithms), written out here on
 * their own. Tolerance: 2 minutes, 5 beyond 60 degrees of latitude.
 */
import { toInstant } from '../../src/rules/calendar/instants.js';
import { sunTimes, type SunTimes } from '../../src/rules/sky/sun.js';

const RAD = Math.PI / 180;
const sin = (deg: number) => Math.sin(deg * RAD);
const cos = (deg: number) => Math.cos(deg * RAD);

/** NOAA: declination in degrees and equation of time in minutes, at a Julian day. */
function noaaSun(julianDay: number): { declination: number; equationOfTime: number } {
  const t = (julianDay - 2_451_545) / 36_525;
  const meanLongitude = (280.46646 + t * (36_000.76983 + 0.0003032 * t)) % 360;
  const meanAnomaly = 357.52911 + t * (35_999.05029 - 0.0001537 * t);
  const eccentricity = 0.016708634 - t * (0.000042037 + 0.0000001267 * t);
  const centre =
    sin(meanAnomaly) * (1.914602 - t * (0.004817 + 0.000014 * t)) +
    sin(2 * meanAnomaly) * (0.019993 - 0.000101 * t) +
    sin(3 * meanAnomaly) * 0.000289;
  const node = 125.04 - 1934.136 * t;
  const apparentLongitude = meanLongitude + centre - 0.00569 - 0.00478 * sin(node);
  const meanObliquity = 23 + (26 + (21.448 - t * (46.815 + t * (0.00059 - t * 0.001813))) / 60) / 60;
  const obliquity = meanObliquity + 0.00256 * cos(node);
  const y = Math.tan((obliquity / 2) * RAD) ** 2;
  const equation =
    y * sin(2 * meanLongitude) -
    2 * eccentricity * sin(meanAnomaly) +
    4 * eccentricity * y * sin(meanAnomaly) * cos(2 * meanLongitude) -
    0.5 * y * y * sin(4 * meanLongitude) -
    1.25 * eccentricity * eccentricity * sin(2 * meanAnomaly);
  return {
    declination: Math.asin(sin(obliquity) * sin(apparentLongitude)) / RAD,
    equationOfTime: (4 * equation) / RAD,
  };
}

/** NOAA: seconds since the epoch at which the sun crosses an altitude on a solar date; null where it does not. */
function noaaCrossing(
  date: string,
  latitude: number,
  longitude: number,
  altitude: number,
  side: -1 | 1,
): number | null {
  const midnight = Date.parse(`${date}T00:00:00Z`) / 60_000;
  let minutes = 720 - 4 * longitude;
  for (let round = 0; round < 6; round += 1) {
    const { declination, equationOfTime } = noaaSun((midnight + minutes) / 1440 + 2_440_587.5);
    const cosine = (sin(altitude) - sin(latitude) * sin(declination)) / (cos(latitude) * cos(declination));
    if (Math.abs(cosine) > 1) return null;
    const hourAngle = Math.acos(cosine) / RAD;
    minutes = 720 - 4 * longitude - equationOfTime + side * 4 * hourAngle;
  }
  return (midnight + minutes) * 60;
}

const DATES = Array.from({ length: 25 }, (_, index) =>
  new Date(Date.UTC(2026, 0, 4 + index * 15)).toISOString().slice(0, 10),
);
const LATITUDES = [-66, -60, -45, -30, -10, 0, 15, 28, 40, 51, 58, 60, 63, 65, 67, 70, 78];
const LONGITUDES = [-179, -105, -40, 0, 20, 100, 165];
const SIDES = [
  ['civilDawn', -6, -1],
  ['sunrise', -50 / 60, -1],
  ['sunset', -50 / 60, 1],
  ['civilDusk', -6, 1],
] as const;

describe('against the equations of NOAA, over a grid of dates and places', () => {
  test.each(LATITUDES)('latitude %i', (latitude) => {
    const tolerance = Math.abs(latitude) > 60 ? 300 : 120;
    let compared = 0;
    for (const date of DATES)
      for (const longitude of LONGITUDES) {
        const ours = sunTimes(date, { latitudeDeg: latitude, longitudeDeg: longitude });
        for (const [name, altitude, side] of SIDES) {
          const theirs = noaaCrossing(date, latitude, longitude, altitude, side);
          if (grazes(date, latitude, longitude, altitude)) continue;
          expect({ date, longitude, name, none: ours[name] === null }).toEqual({
            date,
            longitude,
            name,
            none: theirs === null,
          });
          if (theirs !== null) expect(Math.abs(ours[name]! - theirs)).toBeLessThanOrEqual(tolerance);
          compared += 1;
        }
      }
    expect(compared).toBeGreaterThan(400);
  });
});

/** Within a third of a degree of only touching the altitude, whether it crosses hangs on more than either model knows. */
function grazes(date: string, latitude: number, longitude: number, altitude: number): boolean {
  const noon = (Date.parse(`${date}T12:00:00Z`) / 60_000 - 4 * longitude) / 1440 + 2_440_587.5;
  const { declination } = noaaSun(noon);
  const highest = 90 - Math.abs(latitude - declination);
  const lowest = Math.abs(latitude + declination) - 90;
  return Math.min(Math.abs(highest - altitude), Math.abs(lowest - altitude)) < 1 / 3;
}

/** Times of one date in UTC as printed, 'HH:MM', with '+' for the next UTC date. */
interface Printed {
  source: string;
  date: string;
  place: [latitude: number, longitude: number];
  times: Partial<Record<keyof SunTimes, string>>;
}

const US = 'US Naval Observatory, from memory';
const NAUTICAL = 'The Nautical Almanac, local mean time by latitude, from memory';
const PRINTED: Printed[] = [
  {
    source: 'US Naval Observatory, 6 September 2009, 33.8 N 84.4 W, as quoted in the manual of PyEphem',
    date: '2009-09-06',
    place: [33.8, -84.4],
    times: { civilDawn: '10:50', sunrise: '11:15', sunset: '23:56', civilDusk: '00:21+' },
  },
  { source: US, date: '2024-06-21', place: [40.71, -74.01], times: { sunrise: '09:25', sunset: '00:31+' } },
  { source: US, date: '2024-12-21', place: [40.71, -74.01], times: { sunrise: '12:17', sunset: '21:32' } },
  { source: US, date: '2024-06-21', place: [47.61, -122.33], times: { sunrise: '12:11', sunset: '04:11+' } },
  { source: US, date: '2024-12-21', place: [47.61, -122.33], times: { sunrise: '15:55', sunset: '00:20+' } },
  { source: US, date: '2024-06-21', place: [51.51, -0.13], times: { sunrise: '03:43', sunset: '20:21' } },
  { source: US, date: '2024-12-21', place: [51.51, -0.13], times: { sunrise: '08:04', sunset: '15:53' } },
  { source: US, date: '2024-06-21', place: [61.22, -149.9], times: { sunrise: '12:20', sunset: '07:42+' } },
  { source: US, date: '2024-12-21', place: [61.22, -149.9], times: { sunrise: '19:14', sunset: '00:41+' } },
  { source: NAUTICAL, date: '2026-06-21', place: [40, 0], times: { sunrise: '04:31', sunset: '19:33' } },
  { source: NAUTICAL, date: '2026-12-21', place: [40, 0], times: { sunrise: '07:18', sunset: '16:39' } },
  { source: NAUTICAL, date: '2026-06-21', place: [50, 0], times: { sunrise: '03:50', sunset: '20:13' } },
  { source: NAUTICAL, date: '2026-12-21', place: [50, 0], times: { sunrise: '07:56', sunset: '16:00' } },
  {
    source: 'rules reference su-06, equator at the equinox, from memory',
    date: '2026-09-22',
    place: [0, 0],
    times: { civilDawn: '05:29', sunrise: '05:49', sunset: '17:56', civilDusk: '18:17' },
  },
];

describe('against printed almanacs', () => {
  test.each(PRINTED)('$source: $date at $place', ({ date, place: [latitudeDeg, longitudeDeg], times }) => {
    const ours = sunTimes(date, { latitudeDeg, longitudeDeg });
    const tolerance = Math.abs(latitudeDeg) > 60 ? 300 : 120;
    for (const [name, text] of Object.entries(times) as [keyof SunTimes, string][]) {
      const nextDay = text.endsWith('+') ? 86_400 : 0;
      const printed = Date.parse(`${date}T${text.slice(0, 5)}:00Z`) / 1000 + nextDay;
      const seconds = Math.abs(ours[name]! - printed);
      expect({ name, ours: toInstant(ours[name]!), close: seconds <= tolerance }).toMatchObject({
        close: true,
      });
    }
  });

  test('midnight sun at 70 N: no time at all (rules reference su-05)', () => {
    expect(sunTimes('2026-06-21', { latitudeDeg: 70, longitudeDeg: 20 })).toEqual({
      civilDawn: null,
      sunrise: null,
      sunset: null,
      civilDusk: null,
    });
  });

  test('polar night at 70 N: twilight and no sun (from memory)', () => {
    const times = sunTimes('2026-12-21', { latitudeDeg: 70, longitudeDeg: 20 });
    expect([times.sunrise, times.sunset]).toEqual([null, null]);
    expect(times.civilDusk! - times.civilDawn!).toBeGreaterThan(2 * 3600);
  });

  test('a date in a zone is the daylight of that date, wherever UTC is', () => {
    const zoned = sunTimes('2026-06-21', { latitudeDeg: -21, longitudeDeg: -175 }, 'Pacific/Tongatapu');
    expect(toInstant(zoned.sunrise!)).toMatch(/^2026-06-20T18:/);
    const solar = sunTimes('2026-06-21', { latitudeDeg: -21, longitudeDeg: -175 });
    expect(toInstant(solar.sunrise!)).toMatch(/^2026-06-21T18:/);
  });
});
