import { endOfDay, startOfDay, toSeconds, type LocalDate } from '../../rules/index.js';
import { nightSpans } from '../../rules/sky/nights.js';
import { HOME } from '../places.js';
import { at, clock, ZONE } from '../when.js';

/** The light at home on a date, in minutes after midnight. `dark`: from when landings count as night ones (14 CFR 61.57(b)). */
export interface Daylight {
  sunrise: number;
  sunset: number;
  dark: number;
}

const known = new Map<LocalDate, Daylight>();

/** Sunrise, sunset and nightfall at the home field. */
export function daylight(date: LocalDate): Daylight {
  const before = known.get(date);
  if (before) return before;
  const [from, to] = [startOfDay(date, ZONE), endOfDay(date, ZONE)];
  const noon = toSeconds(at(date, clock(12)));
  const minute = (seconds: number): number => clock(12) + Math.round((seconds - noon) / 60);
  const lights = nightSpans('lights', HOME, from, to);
  const passenger = nightSpans('passenger', HOME, from, to);
  const light = {
    sunrise: minute(lights[0]!.to),
    sunset: minute(lights[lights.length - 1]!.from),
    dark: minute(passenger[passenger.length - 1]!.from),
  };
  known.set(date, light);
  return light;
}
