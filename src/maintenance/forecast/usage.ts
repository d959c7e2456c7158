/** What an aircraft flew, week by week, out of the readings of one meter. */
import { addDays, daysBetween, type LocalDate } from '../../rules/index.js';

/** A running total on a date, in tenths of an hour; dates ascend, totals never fall. */
export interface Reading {
  on: LocalDate;
  totalTenths: number;
}

/** Weeks in order, each by its Monday, without gaps; hours in tenths. */
export interface WeeklyUsage {
  firstMonday: LocalDate;
  tenths: number[];
}

/** The Monday of the week a date lies in (ISO 8601). */
export function mondayOf(date: LocalDate): LocalDate {
  // 1970-01-05 was a Monday.
  const days = daysBetween('1970-01-05', date);
  return addDays(date, -(((days % 7) + 7) % 7));
}

/** More than this between two readings was not flown on one day (common practice, no source): tenths of an hour. */
const ONE_DAY_TENTHS = 80;

/**
 * Hours since the reading before belong to the day of the reading, as where every flight is read; more than a day's flying is spread
 * evenly over the days in between. The week of the last reading is whole only up to it, so it is left out.
 */
export function weeklyUsage(readings: readonly Reading[]): WeeklyUsage | null {
  const [first] = readings;
  const last = readings.at(-1);
  if (!first || !last) return null;
  const firstMonday = mondayOf(addDays(first.on, 6));
  const weeks = Math.floor(daysBetween(firstMonday, mondayOf(last.on)) / 7);
  if (weeks < 1) return null;
  const tenths = new Array<number>(weeks).fill(0);
  for (const [index, reading] of readings.entries()) {
    const before = readings[index - 1];
    if (!before) continue;
    const added = reading.totalTenths - before.totalTenths;
    const days = added > ONE_DAY_TENTHS ? Math.max(1, daysBetween(before.on, reading.on)) : 1;
    for (let day = 0; day < days; day += 1) {
      const week = Math.floor(daysBetween(firstMonday, addDays(reading.on, -day)) / 7);
      if (week >= 0 && week < weeks) tenths[week]! += added / days;
    }
  }
  return { firstMonday, tenths };
}
