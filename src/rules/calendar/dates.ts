/**
 * Arithmetic on calendar dates ('YYYY-MM-DD'), where the law counts days and months rather than hours.
 * Dates compare as strings, so `<` and `<=` on them are chronological.
 *
 * Each function says what it does at a month end; nothing clamps silently
 * (conventions `time.days_preceding`, `time.calendar_months`, `time.plain_months` and `time.age` of the rules reference).
 */
import { Temporal } from 'temporal-polyfill';
import { remember } from './remember.js';

/** A calendar date, 'YYYY-MM-DD', in the zone of the place where the event happened. */
export type LocalDate = string;

/** What adding months does when the target month is too short to hold the day number. */
export type MonthEnd = 'clamp-to-month-end' | 'roll-to-next-month' | 'reject';

/** `date` plus whole days (may be negative). */
export function addDays(date: LocalDate, days: number): LocalDate {
  return daysAdded(date, days);
}

const daysAdded = remember((date: LocalDate, days: number): LocalDate =>
  Temporal.PlainDate.from(date).add({ days }).toString(),
);

/**
 * "N calendar months" from an event in month M: the last day of month M+N, whatever the day of the event.
 * 14 CFR usage ("calendar months"); 2022-02-11 + 24 is 2024-02-29.
 */
export function throughCalendarMonths(event: LocalDate, months: number): LocalDate {
  return monthEndAfter(event, months);
}

const monthEndAfter = remember((event: LocalDate, months: number): LocalDate => {
  const month = Temporal.PlainYearMonth.from(event).add({ months });
  return month.toPlainDate({ day: month.daysInMonth }).toString();
});

/**
 * "N months" without "calendar": the same day number N months later.
 * Throws RangeError for a missing day when `monthEnd` is 'reject'.
 */
export function addPlainMonths(date: LocalDate, months: number, monthEnd: MonthEnd): LocalDate {
  return monthsAdded[monthEnd](date, months);
}

const monthsAdded: Record<MonthEnd, (date: LocalDate, months: number) => LocalDate> = {
  'clamp-to-month-end': remember((date, months) => sameDay(date, months, 'clamp-to-month-end')),
  'roll-to-next-month': remember((date, months) => sameDay(date, months, 'roll-to-next-month')),
  reject: remember((date, months) => sameDay(date, months, 'reject')),
};

function sameDay(date: LocalDate, months: number, monthEnd: MonthEnd): LocalDate {
  const from = Temporal.PlainDate.from(date);
  const clamped = from.add({ months });
  if (clamped.day === from.day) return clamped.toString();
  if (monthEnd === 'reject') throw new RangeError(`${date} plus ${months} months has no day ${from.day}`);
  return monthEnd === 'clamp-to-month-end' ? clamped.toString() : clamped.add({ days: 1 }).toString();
}

/** "N years": the same day and month N years later; 29 February falls as `monthEnd` says. */
export function addYears(date: LocalDate, years: number, monthEnd: MonthEnd): LocalDate {
  return addPlainMonths(date, years * 12, monthEnd);
}

/** Whole days from `earlier` to `later`; negative when they are the other way round. */
export function daysBetween(earlier: LocalDate, later: LocalDate): number {
  return Temporal.PlainDate.from(earlier).until(Temporal.PlainDate.from(later), { largestUnit: 'days' }).days;
}

/** Age in whole years on `date`. A person born on 29 February has a birthday on 1 March in common years (from memory). */
export function ageOn(birthDate: LocalDate, date: LocalDate): number {
  let years = Number(date.slice(0, 4)) - Number(birthDate.slice(0, 4));
  if (date.slice(5) < birthDate.slice(5)) years -= 1;
  return years;
}

/** The later of two dates; a missing one loses. */
export function laterOf(a: LocalDate | null, b: LocalDate | null): LocalDate | null {
  if (a === null) return b;
  return b === null || a > b ? a : b;
}
