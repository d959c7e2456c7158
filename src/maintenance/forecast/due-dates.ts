/** On which day an item falls due: by its date, or when the meter gets there, whichever comes first. */
import { addDays, daysBetween, type LocalDate } from '../../rules/index.js';
import { scale, type Bounds } from './backtest.js';

/** What is to be flown in a week to come, in tenths of an hour. */
export interface WeekAhead {
  monday: LocalDate;
  /** Expected by the trend. */
  trendTenths: number;
  /** Expected of the bookings in hand. */
  bookedTenths: number;
  /** The part of the week in which the aircraft may fly, 0 to 1: shop visits take the rest. */
  available: number;
}

/** The sum of hours flown by the end of a day: likely, and within which bounds. */
export interface Course {
  /** Likely, least and most tenths flown from the day of the facts to the end of each week. */
  likely: number[];
  least: number[];
  most: number[];
}

/** What is booked will be flown; beyond that the trend says how much more. */
export const expectedOf = ({ trendTenths, bookedTenths, available }: WeekAhead): number =>
  Math.max(bookedTenths, trendTenths * available);

/** Sums to the end of each week. Without bounds nothing is said of least and most but what is booked, and nothing at most. */
export function courseOf(weeks: readonly WeekAhead[], bounds: Bounds | null): Course {
  const course: Course = { likely: [], least: [], most: [] };
  let [sum, booked] = [0, 0];
  for (const week of weeks) {
    sum += expectedOf(week);
    booked += week.bookedTenths;
    course.likely.push(sum);
    course.least.push(Math.max(0, bounds === null ? 0 : sum + bounds.lower * scale(sum)));
    course.most.push(
      bounds === null ? Number.POSITIVE_INFINITY : Math.max(booked, sum + bounds.upper * scale(sum)),
    );
  }
  // A meter never runs back.
  for (const line of [course.least, course.most])
    for (let week = 1; week < line.length; week += 1) line[week] = Math.max(line[week]!, line[week - 1]!);
  return course;
}

/** When so many more hours will have been flown: the day on which the line reaches them; null: not within the weeks looked at. */
export function reachedOn(
  line: readonly number[],
  leftTenths: number,
  weeks: readonly WeekAhead[],
  today: LocalDate,
): LocalDate | null {
  if (leftTenths <= 0) return today;
  let before = 0;
  for (const [index, sum] of line.entries()) {
    if (sum >= leftTenths) {
      const from = index === 0 && weeks[0]!.monday < today ? today : weeks[index]!.monday;
      const days = daysBetween(from, addDays(weeks[index]!.monday, 7));
      const part = Number.isFinite(sum) && sum > before ? (leftTenths - before) / (sum - before) : 0;
      return addDays(from, Math.min(days - 1, Math.floor(part * days)));
    }
    before = sum;
  }
  return null;
}

/** When an item falls due. */
export interface DueDates {
  /** Null: not within the weeks looked at. */
  likelyOn: LocalDate | null;
  earliestOn: LocalDate | null;
  latestOn: LocalDate | null;
  /** What brings it about: its date, or the hours. */
  by: 'date' | 'hours' | null;
}

/** Its date and its hours, whichever comes first, on each of the three lines. */
export function dueDates(
  limits: { throughOn: LocalDate | null; leftTenths: number | null },
  course: Course,
  weeks: readonly WeekAhead[],
  today: LocalDate,
): DueDates {
  const end = weeks.length === 0 ? today : addDays(weeks.at(-1)!.monday, 7);
  const dated = limits.throughOn !== null && limits.throughOn < end ? limits.throughOn : null;
  const on = (line: readonly number[]): LocalDate | null => {
    const { leftTenths } = limits;
    return earlierOf(dated, leftTenths === null ? null : reachedOn(line, leftTenths, weeks, today));
  };
  const likelyOn = on(course.likely);
  return {
    likelyOn,
    earliestOn: on(course.most),
    latestOn: on(course.least),
    by: likelyOn === null ? null : likelyOn === dated ? 'date' : 'hours',
  };
}

/** The same, where the hours are used up on a certain day at the latest. */
export function notAfter(dates: DueDates, on: LocalDate | null): DueDates {
  if (on === null || (dates.likelyOn !== null && dates.likelyOn <= on)) return dates;
  return {
    likelyOn: on,
    earliestOn: earlierOf(dates.earliestOn, on),
    latestOn: dates.latestOn,
    by: 'hours',
  };
}

const earlierOf = (a: LocalDate | null, b: LocalDate | null): LocalDate | null =>
  a === null ? b : b === null ? a : a < b ? a : b;
