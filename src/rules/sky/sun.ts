/**
 * Where the sun is: rise and set with the centre at -50' (34' refraction, 16' radius), civil twilight at -6 degrees, as
 * almanacs define them, over a sea-level horizon. Instants are rounded to whole seconds; refraction alone makes the real
 * ones uncertain by a minute or more.
 *
 * Results are remembered by their arguments alone, so a remembered answer cannot differ from a fresh one.
 */
import { Temporal } from 'temporal-polyfill';
import type { LocalDate } from '../calendar/dates.js';
import type { EpochSeconds } from '../calendar/instants.js';
import { crossingsOf } from './crossings.js';
import { subsolarPoint } from './ephemeris.js';

/** A place on the earth, degrees, north and east positive. */
export interface Place {
  latitudeDeg: number;
  longitudeDeg: number;
}

/** Altitude of the sun's centre at sunrise and sunset. */
export const SUNSET_ALTITUDE_DEG = -50 / 60;
/** Altitude of the sun's centre at the ends of civil twilight. */
export const CIVIL_TWILIGHT_ALTITUDE_DEG = -6;

/** The sun's times of one day; null where the sun does not cross that altitude (midnight sun, polar night). */
export interface SunTimes {
  civilDawn: EpochSeconds | null;
  sunrise: EpochSeconds | null;
  sunset: EpochSeconds | null;
  civilDusk: EpochSeconds | null;
}

/** The sun against one altitude over one solar day: how the day begins, and each crossing, in order. */
export interface SolarDay {
  from: EpochSeconds;
  to: EpochSeconds;
  /** The sun is below the altitude when the day begins. */
  beginsBelow: boolean;
  /** Instants at which it crosses, alternately up and down. */
  crossings: readonly EpochSeconds[];
}

const DAY = 86_400;
const RAD = Math.PI / 180;
/** The sun's horizontal parallax, 8.794 arc seconds: how much lower it stands on the horizon than from the centre. */
const PARALLAX_DEG = 8.794 / 3600;
const remembered = new Map<string, SolarDay>();
const MOST_REMEMBERED = 50_000;

/** Is the place one the sun can be asked about? */
export function isPlace(place: Place): boolean {
  return Math.abs(place.latitudeDeg) <= 90 && Math.abs(place.longitudeDeg) <= 180;
}

/** Number of the mean solar day (midnight to midnight of local mean time) that an instant falls in at a longitude. */
export function solarDayNumber(at: EpochSeconds, longitudeDeg: number): number {
  return Math.floor((at + longitudeDeg * 240) / DAY);
}

/** Altitude of the sun's centre in degrees, without refraction, as seen from the surface. */
export function sunAltitudeDeg(place: Place, at: EpochSeconds): number {
  const altitude = Math.asin(Math.min(1, Math.max(-1, sineOfAltitude(place, at)))) / RAD;
  return altitude - PARALLAX_DEG * Math.cos(altitude * RAD);
}

/** Sine of the altitude as seen from the earth's centre. */
function sineOfAltitude(place: Place, at: EpochSeconds): number {
  const { declinationDeg, greenwichHourAngleDeg } = subsolarPoint(at);
  const [latitude, declination] = [place.latitudeDeg * RAD, declinationDeg * RAD];
  return (
    Math.sin(latitude) * Math.sin(declination) +
    Math.cos(latitude) * Math.cos(declination) * Math.cos((greenwichHourAngleDeg + place.longitudeDeg) * RAD)
  );
}

/** The crossings of an altitude in one mean solar day at a place. */
export function solarDay(altitudeDeg: number, place: Place, number: number): SolarDay {
  const key = `${altitudeDeg}|${place.latitudeDeg}|${place.longitudeDeg}|${number}`;
  const known = remembered.get(key);
  if (known) return known;
  if (remembered.size >= MOST_REMEMBERED) remembered.clear();
  const found = searchSolarDay(altitudeDeg, place, number);
  remembered.set(key, found);
  return found;
}

function searchSolarDay(altitudeDeg: number, place: Place, number: number): SolarDay {
  const from = Math.round(number * DAY - place.longitudeDeg * 240);
  const to = Math.round((number + 1) * DAY - place.longitudeDeg * 240);
  const limit = Math.sin((altitudeDeg + PARALLAX_DEG * Math.cos(altitudeDeg * RAD)) * RAD);
  // The altitude cannot change faster than the earth turns under the sun, nor its declination faster than 0.41 deg a day.
  const steepest = (Math.cos(place.latitudeDeg * RAD) * 361 + 0.41) * (RAD / DAY);
  const crossings = crossingsOf((at) => sineOfAltitude(place, at) - limit, from, to, steepest).map(
    Math.round,
  );
  return { from, to, beginsBelow: sineOfAltitude(place, from) < limit, crossings };
}

/**
 * The sun's times for a calendar date at a place: the rise before, and the set after, the noon of that date. In summer
 * at high latitudes that sunset can fall after midnight, and anywhere a time can fall on the neighbouring UTC date.
 *
 * @param zone IANA zone in which `date` is a date; without it the date is in local mean solar time.
 */
export function sunTimes(date: LocalDate, place: Place, zone?: string): SunTimes {
  const noon =
    zone === undefined
      ? Math.floor(Date.parse(`${date}T12:00:00Z`) / 1000) - place.longitudeDeg * 240
      : Temporal.PlainDate.from(date).toZonedDateTime({ timeZone: zone, plainTime: '12:00' })
          .epochMilliseconds / 1000;
  const number = solarDayNumber(noon, place.longitudeDeg);
  const [sunrise, sunset] = pairAround(SUNSET_ALTITUDE_DEG, place, number);
  const [civilDawn, civilDusk] = pairAround(CIVIL_TWILIGHT_ALTITUDE_DEG, place, number);
  return { civilDawn, sunrise, sunset, civilDusk };
}

/** The last upward crossing within twelve hours before mean noon and the first downward one within twelve hours after. */
function pairAround(
  altitudeDeg: number,
  place: Place,
  number: number,
): [EpochSeconds | null, EpochSeconds | null] {
  const noon = (number + 0.5) * DAY - place.longitudeDeg * 240;
  // Apparent noon strays from mean noon by up to 17 minutes, so a crossing near midnight may sit in the next solar day.
  const reach = DAY / 2 + 1200;
  let up: EpochSeconds | null = null;
  let down: EpochSeconds | null = null;
  for (const day of [number - 1, number, number + 1]) {
    const { beginsBelow, crossings } = solarDay(altitudeDeg, place, day);
    crossings.forEach((at, index) => {
      const rising = beginsBelow === (index % 2 === 0);
      if (rising && at <= noon && at > noon - reach) up = at;
      if (!rising && at >= noon && at < noon + reach) down ??= at;
    });
  }
  return [up, down];
}
