/**
 * Dates inside expressions. The flight's own dates are not values but questions: comparing one with a fixed date asks the
 * moment, which remembers when the answer changes. Only what cannot be asked that way turns them into a date, and then
 * the moment remembers each midnight.
 */
import { addDays, addPlainMonths, daysBetween, type LocalDate } from '../calendar/dates.js';
import type { Moment } from '../engine/moment.js';

/** Days since a day that never was: more than any limit. */
export const DAYS_SINCE_NEVER = 999_999;
/** Dates are written within these years; the calendar's text order holds there. */
const [FIRST, LAST]: [LocalDate, LocalDate] = ['1900-01-01', '2199-12-31'];

/** A date in an expression: a day, the flight's departure or arrival, or a day that never was (before all others). */
export class DateValue {
  private constructor(
    private readonly day: LocalDate | null,
    private readonly of: { moment: Moment; end: 'departure' | 'arrival' } | null,
  ) {}

  static on(day: LocalDate): DateValue {
    return new DateValue(day, null);
  }

  static readonly never = new DateValue(null, null);

  static ofFlight(moment: Moment, end: 'departure' | 'arrival'): DateValue {
    return new DateValue(null, { moment, end });
  }

  /** The day, which for the flight's own dates makes the moment remember the next midnight. Null: never. */
  resolve(): LocalDate | null {
    if (this.of === null) return this.day;
    return this.of.end === 'departure' ? this.of.moment.departureDate() : this.of.moment.arrivalDate();
  }

  isBefore(other: DateValue): boolean {
    if (this.of !== null && other.of === null) return !other.atOrBeforeFlight(this.of);
    if (other.of !== null && this.of === null) return this.beforeFlight(other.of);
    return order(this.resolve()) < order(other.resolve());
  }

  equals(other: DateValue): boolean {
    return !this.isBefore(other) && !other.isBefore(this);
  }

  plusDays(days: number): DateValue {
    const day = this.resolve();
    return day === null ? this : DateValue.on(addDays(day, days));
  }

  plusMonths(months: number): DateValue {
    const day = this.resolve();
    return day === null ? this : DateValue.on(addPlainMonths(day, months, 'clamp-to-month-end'));
  }

  toString(): string {
    return this.resolve() ?? 'never';
  }

  /** Is this day the flight's or before it? */
  private atOrBeforeFlight({ moment, end }: { moment: Moment; end: 'departure' | 'arrival' }): boolean {
    if (this.day === null) return true;
    if (this.day > LAST) return false;
    return end === 'departure'
      ? moment.startsOnOrAfter(this.day)
      : !moment.endsOnOrBefore(addDays(this.day, -1));
  }

  /** Is this day before the flight's? */
  private beforeFlight({ moment, end }: { moment: Moment; end: 'departure' | 'arrival' }): boolean {
    if (this.day === null) return true;
    if (this.day > LAST) return false;
    return end === 'departure'
      ? moment.startsOnOrAfter(addDays(this.day, 1))
      : !moment.endsOnOrBefore(this.day);
  }
}

const order = (day: LocalDate | null): string => day ?? '';

/**
 * Whole days from a day to the end of the flight. Like the flight's dates it is a question: comparing it with a number asks
 * the moment for the one day on which the comparison changes.
 */
export class DaysValue {
  constructor(
    private readonly since: DateValue,
    private readonly moment: Moment,
  ) {}

  /** Is it at most so many? A day that never was is longer ago than any number. */
  atMost(days: number): boolean {
    const day = this.since.resolve();
    return day !== null && this.moment.endsOnOrBefore(addDays(day, days));
  }

  is(days: number): boolean {
    return this.atMost(days) && !this.atMost(days - 1);
  }

  /** The number, which makes the moment remember the next midnight. */
  resolve(): number {
    const day = this.since.resolve();
    return day === null ? DAYS_SINCE_NEVER : daysBetween(day, this.moment.arrivalDate());
  }

  toString(): string {
    return this.since.resolve() === null ? 'never' : String(this.resolve());
  }
}

/** Reads a date that is written in an expression; null when it is none. */
export function readDate(text: string): LocalDate | null {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text) || text < FIRST || text > LAST) return null;
  try {
    return addDays(text, 0) === text ? text : null;
  } catch {
    return null;
  }
}
