/**
 * Exact time. Inside the engine an instant is a whole number of seconds since 1970-01-01T00:00:00Z;
 * outside it is RFC 3339 in UTC with whole seconds ('2026-11-25T13:00:00Z'). One second is the engine's grain.
 */
import { Temporal } from 'temporal-polyfill';
import { addDays, type LocalDate } from './dates.js';
import { remember, rememberOne } from './remember.js';

/** UTC instant as RFC 3339 with whole seconds. */
export type Instant = string;
/** Seconds since the epoch. */
export type EpochSeconds = number;

/** Reads an RFC 3339 instant; throws RangeError when it is not one. */
export function toSeconds(instant: Instant): EpochSeconds {
  return secondsOf(instant);
}

/** Sheets name the same few instants again and again, so they are read once. */
const secondsOf = rememberOne((instant: Instant): EpochSeconds => {
  const milliseconds = Date.parse(instant);
  if (Number.isNaN(milliseconds)) throw new RangeError(`not an instant: ${instant}`);
  return Math.floor(milliseconds / 1000);
});

/** Writes seconds since the epoch as RFC 3339 in UTC. */
export function toInstant(seconds: EpochSeconds): Instant {
  if (!Number.isInteger(seconds)) return Temporal.Instant.fromEpochMilliseconds(seconds * 1000).toString();
  const day = Math.floor(seconds / 86_400);
  const minute = Math.floor((seconds - day * 86_400) / 60);
  return `${dateOfDay(day)}T${two(Math.floor(minute / 60))}:${two(minute % 60)}:${two(seconds - day * 86_400 - minute * 60)}Z`;
}

/** The UTC date of a day counted from 1970-01-01; writing a date out costs more than the rest of an instant. */
const dateOfDay = rememberOne(
  (day: number): LocalDate => new Date(day * 86_400_000).toISOString().split('T')[0]!,
);

const two = (value: number): string => (value < 10 ? `0${value}` : `${value}`);

/** `instant` plus seconds (may be negative). */
export function plusSeconds(instant: Instant, seconds: number): Instant {
  return toInstant(toSeconds(instant) + seconds);
}

/** The first instant of a calendar date in a zone (01:00 where a clock change removes midnight). */
export function startOfDay(date: LocalDate, zone: string): EpochSeconds {
  return dayStart(date, zone);
}

const dayStart = remember((date: LocalDate, zone: string): EpochSeconds =>
  Math.floor(Temporal.PlainDate.from(date).toZonedDateTime(zone).startOfDay().epochMilliseconds / 1000),
);

/** The first instant after a calendar date in a zone. */
export function endOfDay(date: LocalDate, zone: string): EpochSeconds {
  return startOfDay(addDays(date, 1), zone);
}

/**
 * So many days later by the clock of a zone: 11:00 stays 11:00 when the clocks change in between. A time that a change skips is an
 * hour later, one that it repeats is the first.
 */
export function daysLater(at: EpochSeconds, days: number, zone: string): EpochSeconds {
  const here = Temporal.Instant.fromEpochMilliseconds(at * 1000).toZonedDateTimeISO(zone);
  return Math.floor(here.add({ days }).epochMilliseconds / 1000);
}

/** The calendar date of an instant in a zone. */
export function localDateOf(seconds: EpochSeconds, zone: string): LocalDate {
  // A zone's date can change only on a quarter hour, so the quarter is enough to remember it by.
  return dateOfQuarter(Math.floor(seconds / 900), zone);
}

const dateOfQuarter = remember((quarter: number, zone: string): LocalDate =>
  Temporal.Instant.fromEpochMilliseconds(quarter * 900_000)
    .toZonedDateTimeISO(zone)
    .toPlainDate()
    .toString(),
);

/** Clock reading 'HH:MM' of an instant in a zone, for people. */
export function localClock(seconds: EpochSeconds, zone: string): string {
  return clockOfMinute(Math.floor(seconds / 60), zone);
}

const clockOfMinute = remember((minute: number, zone: string): string =>
  Temporal.Instant.fromEpochMilliseconds(minute * 60_000)
    .toZonedDateTimeISO(zone)
    .toPlainTime()
    .toString({ smallestUnit: 'minute' }),
);
