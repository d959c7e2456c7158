/** Finds a place where the sun does what an entry says, so that entries with clock times reach the real sun functions. */
import { localClock, type LocalDate } from '../../../rules/index.js';
import { sunTimes, type Place } from '../../../rules/sky/sun.js';
import { toSeconds } from '../../../rules/calendar/instants.js';
import { clockInstant } from '../scene.js';

/** A place at 40 degrees north where the sun rises or sets at a clock reading (minutes after midnight in `zone`). */
export function placeWhere(
  event: 'sunrise' | 'sunset',
  date: LocalDate,
  clockMinutes: number,
  zone: string,
): Place {
  const wanted = toSeconds(clockInstant(date, clockMinutes, zone));
  let longitudeDeg = -105;
  for (let turn = 0; turn < 40; turn += 1) {
    const at = sunTimes(date, { latitudeDeg: 40, longitudeDeg }, zone)[event];
    if (at === null) break;
    if (at === wanted) return { latitudeDeg: 40, longitudeDeg };
    // The earth turns a degree in four minutes; east is earlier.
    longitudeDeg += (at - wanted) / 240;
  }
  throw new Error(
    `no place has its ${event} at ${clockMinutes} minutes after midnight on ${date} (${localClock(wanted, zone)})`,
  );
}

/** A place on the prime meridian where civil twilight lasts so many minutes after sunset on `date`; needs about 21 or more. */
export function placeWithTwilight(date: LocalDate, minutes: number): Place {
  let south = 0;
  let north = 64;
  const lasts = (latitudeDeg: number): number => {
    const { sunset, civilDusk } = sunTimes(date, { latitudeDeg, longitudeDeg: 0 });
    return sunset === null || civilDusk === null ? Number.POSITIVE_INFINITY : civilDusk - sunset;
  };
  if (lasts(south) > minutes * 60) throw new Error(`civil twilight never lasts only ${minutes} minutes`);
  for (let turn = 0; turn < 60; turn += 1) {
    const middle = (south + north) / 2;
    if (lasts(middle) > minutes * 60) north = middle;
    else south = middle;
  }
  return { latitudeDeg: south, longitudeDeg: 0 };
}
