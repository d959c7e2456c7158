/** Times as the club's members read them: in the club's zone, whatever the phone's. */
import { Temporal } from 'temporal-polyfill';
import { LOCALE } from './locale.js';

/** Said where `instantIn` finds no instant, or two, for one of the times of a form. */
export const NO_SUCH_TIME =
  'One of the times does not exist once on that day: the clocks change. Choose another.';

/**
 * 'YYYY-MM-DD' and 'HH:MM' in the club's zone as an instant.
 * Null when a clock change skips or repeats that time: then the member must choose another.
 */
export function instantIn(zone: string, date: string, clock: string): string | null {
  try {
    return Temporal.PlainDateTime.from(`${date}T${clock}`)
      .toZonedDateTime(zone, { disambiguation: 'reject' })
      .toInstant()
      .toString({ smallestUnit: 'second' });
  } catch {
    return null;
  }
}

/** This instant, in UTC with whole seconds. */
export const now = (): string =>
  Temporal.Instant.fromEpochMilliseconds(Date.now())
    .round({ smallestUnit: 'second', roundingMode: 'floor' })
    .toString();

export const today = (zone: string): string => dateIn(zone, now());
export const plusDays = (date: string, days: number): string =>
  Temporal.PlainDate.from(date).add({ days }).toString();
export const dateIn = (zone: string, instant: string): string =>
  Temporal.Instant.from(instant).toZonedDateTimeISO(zone).toPlainDate().toString();

/** '14:30' */
export function clockIn(zone: string, instant: string): string {
  // Twenty-four hours in every English: log, calendar and weather are written that way.
  return new Intl.DateTimeFormat(LOCALE, {
    timeZone: zone,
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  }).format(new Date(instant));
}

/** 'Thu 26 Nov' (with the year when it is another one). */
export function dayIn(zone: string, instant: string): string {
  const year = dateIn(zone, instant).slice(0, 4) === today(zone).slice(0, 4) ? undefined : 'numeric';
  return new Intl.DateTimeFormat(LOCALE, {
    timeZone: zone,
    weekday: 'short',
    day: 'numeric',
    month: 'short',
    year,
  }).format(new Date(instant));
}

/** 'Thu 26 Nov, 14:30' */
export const momentIn = (zone: string, instant: string): string =>
  `${dayIn(zone, instant)}, ${clockIn(zone, instant)}`;

/** 'Thu 26 Nov 13:00 to 16:00' */
export function spanIn(zone: string, from: string, to: string): string {
  const sameDay = dateIn(zone, from) === dateIn(zone, to);
  return `${dayIn(zone, from)} ${clockIn(zone, from)} to ${sameDay ? clockIn(zone, to) : momentIn(zone, to)}`;
}
