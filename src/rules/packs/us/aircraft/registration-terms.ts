/** 14 CFR 47.40 as it stood: how long a certificate of registration is good for. */
import { throughCalendarMonths, type LocalDate } from '../../../calendar/dates.js';
import type { Parameters } from '../../../engine/parameters.js';
import type { RegistrationFact } from '../../../facts/aircraft.js';

/** Parameters of the terms since certificates have an end. */
export const REGISTRATION_TERMS = [
  'us.registration.years',
  'us.registration.years-before-extension',
  'us.registration.extended-on',
  'us.registration.ends-since',
  'us.registration.re-registration',
];

/** Last day a certificate is good for. */
export type RegistrationThrough = (one: RegistrationFact) => LocalDate;

/**
 * From 2010-10-01: one issued since runs three years to the end of the month, or to its printed date; one issued before
 * had no date on it and ended by the schedule of re-registration, which goes by the month of issue.
 */
export function throughBeforeExtension(p: Parameters): RegistrationThrough {
  const months = p.number('us.registration.years-before-extension') * 12;
  const since = p.text('us.registration.ends-since');
  const schedule = p.text('us.registration.re-registration');
  return ({ issuedOn, printedExpiryOn }) =>
    printedExpiryOn ??
    (issuedOn < since ? scheduled(schedule, issuedOn.slice(5, 7)) : throughCalendarMonths(issuedOn, months));
}

/** The day of a month's row in '03 2011-03-31, 11 2011-06-30, ...'. */
const scheduled = (schedule: string, month: string): LocalDate =>
  schedule
    .split(', ')
    .find((row) => row.startsWith(month))!
    .slice(3);

/**
 * From 2023-01-23: seven years to the end of the month of issue. One in force on that day got the longer term whatever is
 * printed on it; one already expired did not. On one issued later an earlier printed date is taken (strict reading).
 */
export function throughSinceExtension(p: Parameters): RegistrationThrough {
  const months = p.number('us.registration.years') * 12;
  const extendedOn = p.text('us.registration.extended-on');
  const before = throughBeforeExtension(p);
  return (one) => {
    const longer = throughCalendarMonths(one.issuedOn, months);
    const printed = one.printedExpiryOn;
    if (one.issuedOn >= extendedOn) return printed !== null && printed < longer ? printed : longer;
    const shorter = before(one);
    return shorter >= extendedOn ? longer : shorter;
  };
}
