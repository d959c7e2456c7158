import { Temporal } from 'temporal-polyfill';
import {
  addDays,
  addPlainMonths,
  daysBetween,
  localDateOf,
  throughCalendarMonths,
  toInstant,
  toSeconds,
  type EpochSeconds,
  type Instant,
  type LocalDate,
} from '../rules/index.js';

/** The club's zone, and that of all its airfields. */
export const ZONE = 'America/Denver';

/** The demo's place in time: everything in it is so many days or months from `today`. */
export class When {
  /** The club's calendar date of `asOf`. */
  readonly today: LocalDate;
  /** First day of the 18 months of flights. */
  readonly firstDay: LocalDate;

  constructor(readonly asOf: Instant) {
    this.today = localDateOf(toSeconds(asOf), ZONE);
    this.firstDay = addPlainMonths(this.today, -18, 'clamp-to-month-end');
  }

  /** Days of flights behind today. */
  get span(): number {
    return daysBetween(this.firstDay, this.today);
  }

  /** A date so many days before today. */
  daysAgo(days: number): LocalDate {
    return addDays(this.today, -days);
  }

  /** How many days before today a date lies. */
  ago(date: LocalDate): number {
    return daysBetween(date, this.today);
  }

  /** The same day of the month so many months before today; the last day of a shorter month. */
  monthsAgo(months: number): LocalDate {
    return addPlainMonths(this.today, -months, 'clamp-to-month-end');
  }

  /** A day in the month that lies so many months before today's; never later than its last. */
  inMonth(monthsAgo: number, day: number): LocalDate {
    const end = throughCalendarMonths(this.today, -monthsAgo);
    const wanted = `${end.slice(0, 8)}${String(day).padStart(2, '0')}`;
    return wanted > end ? end : wanted;
  }

  /**
   * Months until the end of the month in which a paper should run out within six weeks: 0 for this month's end when
   * that is still ten days off, else 1.
   */
  get monthsToSoonEnd(): number {
    return daysBetween(this.today, throughCalendarMonths(this.today, 0)) >= 10 ? 0 : 1;
  }
}

const noons = new Map<LocalDate, EpochSeconds>();

/**
 * The instant of a clock reading (in minutes after midnight) on a date in the club's zone. From five in the morning on it
 * is counted from noon: the zone's clocks change in the small hours.
 */
export function at(date: LocalDate, minutes: number): Instant {
  if (minutes < clock(5)) return toInstant(zoned(date, minutes));
  const noon = noons.get(date) ?? zoned(date, clock(12));
  noons.set(date, noon);
  return toInstant(noon + (minutes - clock(12)) * 60);
}

function zoned(date: LocalDate, minutes: number): EpochSeconds {
  const plainTime = Temporal.PlainTime.from({ hour: Math.floor(minutes / 60), minute: minutes % 60 });
  const time = Temporal.PlainDate.from(date).toZonedDateTime({ timeZone: ZONE, plainTime });
  return Math.floor(time.epochMilliseconds / 1000);
}

/** Clock reading in minutes after midnight. */
export const clock = (hours: number, minutes = 0): number => hours * 60 + minutes;

/** 1 = Monday ... 7 = Sunday. */
export const weekday = (date: LocalDate): number => Temporal.PlainDate.from(date).dayOfWeek;
