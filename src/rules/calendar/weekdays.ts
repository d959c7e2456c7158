import { Temporal } from 'temporal-polyfill';
import type { LocalDate } from './dates.js';
import type { EpochSeconds } from './instants.js';
import { rememberOne } from './remember.js';

/** 1 is Monday, 7 is Sunday (ISO 8601). */
export const isoWeekday = rememberOne((date: LocalDate): number => Temporal.PlainDate.from(date).dayOfWeek);

/**
 * The instant at which the zone's clock shows so many minutes past midnight of a date; 1440 is the midnight after. A time that
 * a change of clocks skips is an hour later, one that it repeats is the first.
 */
export function clockOn(date: LocalDate, minutes: number, zone: string): EpochSeconds {
  const [day, rest] = [Math.floor(minutes / 1440), minutes % 1440];
  const shown = Temporal.PlainDate.from(date)
    .add({ days: day })
    .toZonedDateTime({
      timeZone: zone,
      plainTime: Temporal.PlainTime.from({ hour: Math.floor(rest / 60), minute: rest % 60 }),
    });
  return Math.floor(shown.epochMilliseconds / 1000);
}
