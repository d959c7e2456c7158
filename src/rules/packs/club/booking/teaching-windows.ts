/** The time an instructor teaches, made from the hours of each week and of single dates. */
import { addDays, type LocalDate } from '../../../calendar/dates.js';
import { localDateOf, type EpochSeconds } from '../../../calendar/instants.js';
import { clockOn, isoWeekday } from '../../../calendar/weekdays.js';
import type { TeachingHoursFact } from '../../../facts/person.js';

export const WEEKDAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];

/** From an instant up to another. */
export interface Window {
  from: EpochSeconds;
  to: EpochSeconds;
}

/** The hours that hold on a date: those told for the date itself where there are any, and else those of its week. */
export function hoursOn(all: readonly TeachingHoursFact[], date: LocalDate): TeachingHoursFact[] {
  const told = all.filter(({ kind, on }) => kind === 'date' && on === date);
  const weekday = isoWeekday(date);
  const hold =
    told.length > 0
      ? told
      : all.filter(
          (one) =>
            one.kind === 'weekly' &&
            one.weekday === weekday &&
            (one.from === null || one.from <= date) &&
            (one.through === null || date <= one.through),
        );
  return hold
    .filter(({ opensMinutes, closesMinutes }) => opensMinutes !== null && closesMinutes !== null)
    .sort((a, b) => a.opensMinutes! - b.opensMinutes! || (a.id < b.id ? -1 : 1));
}

/** The windows of some dates, earliest first; those that touch are one. */
export function windowsBetween(
  all: readonly TeachingHoursFact[],
  of: { first: LocalDate; last: LocalDate; zone: string },
): Window[] {
  const windows: Window[] = [];
  for (let date = of.first; date <= of.last; date = addDays(date, 1)) {
    for (const { opensMinutes, closesMinutes } of hoursOn(all, date)) {
      const from = clockOn(date, opensMinutes!, of.zone);
      const to = clockOn(date, closesMinutes!, of.zone);
      const before = windows.at(-1);
      if (before && from <= before.to) before.to = Math.max(before.to, to);
      else windows.push({ from, to });
    }
  }
  return windows;
}

/** Days ahead for which windows are worked out at once. */
const AHEAD_DAYS = 21;

/** Windows around a flight, and the instant up to which they are all there is. */
export function windowsAround(
  all: readonly TeachingHoursFact[],
  flight: { departs: EpochSeconds; arrives: EpochSeconds },
  zone: string,
): { windows: Window[]; knownTo: EpochSeconds } {
  const last = addDays(localDateOf(flight.arrives, zone), AHEAD_DAYS);
  const first = addDays(localDateOf(flight.departs, zone), -1);
  // The last day's window may go on past midnight.
  return { windows: windowsBetween(all, { first, last, zone }), knownTo: clockOn(last, 0, zone) };
}

/** '09:00 to 12:00 and 13:00 to 17:00'; 'away' where none is told. */
export function hoursInWords(all: readonly TeachingHoursFact[]): string {
  const told = all.filter(({ opensMinutes }) => opensMinutes !== null);
  if (told.length === 0) return 'away';
  const spans = told.map(
    ({ opensMinutes, closesMinutes }) => `${clock(opensMinutes!)} to ${clock(closesMinutes!)}`,
  );
  return [...new Set(spans)].join(' and ');
}

const clock = (minutes: number): string =>
  `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
