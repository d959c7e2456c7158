/** The sun's times behind a verdict that hangs on the night: rise, set and twilight at each field of the route. */
import { localClock, localDateOf, type EpochSeconds } from '../calendar/instants.js';
import type { FactSheet } from '../facts/sheet.js';
import { isPlace, sunTimes } from '../sky/sun.js';
import { ITS_OWN_TIME, NO_SUNRISE_OR_SUNSET } from './sentences.js';

/** One field and day. */
export interface SunSeen {
  field: string;
  /** By the field's own clock, as the conditions have it: 'sunset 17:51'. */
  says: string[];
}

const HOUR = 3600;

/** The sun's day at each field of the route, once each, on the day of departure. */
export function explainSun({ flight, zone }: FactSheet, departs: EpochSeconds): SunSeen[] {
  const fields = new Map(flight.route.filter(isPlace).map((field) => [field.code, field]));
  return [...fields.values()].map((field) => {
    const date = localDateOf(departs, field.zone);
    const { civilDawn, sunrise, sunset, civilDusk } = sunTimes(date, field, field.zone);
    const at = (what: string, instant: EpochSeconds | null): string[] =>
      instant === null ? [] : [`${what} ${localClock(instant, field.zone)}`];
    const says = [
      ...at('morning twilight begins', civilDawn),
      ...at('sunrise', sunrise),
      ...at('sunset', sunset),
      ...at('evening twilight ends', civilDusk),
      ...at('an hour after sunset', sunset === null ? null : sunset + HOUR),
    ];
    const name = field.zone === zone ? field.code : `${field.code} (${ITS_OWN_TIME})`;
    return { field: name, says: says.length > 0 ? says : [NO_SUNRISE_OR_SUNSET] };
  });
}
