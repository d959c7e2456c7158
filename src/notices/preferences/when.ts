/** When mail goes out: quiet hours and the day's digest, on the clock of the club's zone. Pure. */
import { Temporal } from 'temporal-polyfill';
import type { Instant } from '../../rules/index.js';

/** What a person wants of the hours. */
export interface Hours {
  /** 'HH:MM', both or neither. */
  quietFrom: string | null;
  quietTo: string | null;
  /** Hour of the day's digest. */
  digestHour: number;
}

/** Quiet by night unless a person says otherwise: common practice, no source. */
export const USUAL_HOURS: Hours = { quietFrom: '22:00', quietTo: '07:00', digestHour: 7 };

/**
 * The first moment from `at` on that is not within quiet hours. A clock time that a clock change skips counts as the moment
 * the clock would have shown it (an hour's gap moves it an hour on, RFC 5545 section 3.3.5); one that comes twice begins
 * quiet hours the first time and ends them the first time.
 */
export function outOfQuiet(at: Instant, zone: string, { quietFrom, quietTo }: Hours): Instant {
  if (quietFrom === null || quietTo === null || quietFrom === quietTo) return at;
  const here = Temporal.Instant.from(at).toZonedDateTimeISO(zone);
  // The night that has begun the day before may last into today.
  for (const day of [here.toPlainDate().subtract({ days: 1 }), here.toPlainDate()]) {
    const from = clockOn(day, quietFrom, zone);
    const to = clockOn(quietTo > quietFrom ? day : day.add({ days: 1 }), quietTo, zone);
    if (!before(here, from) && before(here, to)) return text(to);
  }
  return at;
}

/** The next time the digest goes out, after `at`. */
export function nextDigest(at: Instant, zone: string, { digestHour }: Pick<Hours, 'digestHour'>): Instant {
  return nextClock(at, zone, `${String(digestHour).padStart(2, '0')}:00`);
}

/** The next time after `at` that the zone's clock shows this. */
export function nextClock(at: Instant, zone: string, clock: string): Instant {
  const here = Temporal.Instant.from(at).toZonedDateTimeISO(zone);
  const today = clockOn(here.toPlainDate(), clock, zone);
  return text(before(here, today) ? today : clockOn(here.toPlainDate().add({ days: 1 }), clock, zone));
}

const clockOn = (day: Temporal.PlainDate, clock: string, zone: string): Temporal.ZonedDateTime =>
  day.toZonedDateTime({ timeZone: zone, plainTime: Temporal.PlainTime.from(clock) });
const before = (a: Temporal.ZonedDateTime, b: Temporal.ZonedDateTime): boolean =>
  Temporal.ZonedDateTime.compare(a, b) < 0;
const text = (at: Temporal.ZonedDateTime): Instant => at.toInstant().toString({ smallestUnit: 'second' });
