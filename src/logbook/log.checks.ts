import { defineProblems } from '../platform/problems/problem-catalogue.js';
import { type FieldError, pointerTo, ProblemException } from '../platform/problems/problem-exception.js';
import { addDays } from '../rules/calendar/dates.js';
import { type Instant, toSeconds } from '../rules/calendar/instants.js';
import { classFits, CLASSES_OF } from '../members/vocabulary.js';
import type { LogEntry } from './log-entry.entity.js';

defineProblems(
  {
    code: 'log-does-not-add-up',
    status: 422,
    title: 'The entry contradicts itself',
    detail: 'Change the fields listed under "errors" so that the parts fit the whole.',
  },
  {
    code: 'log-entry-void',
    status: 409,
    title: 'Entry is void',
    detail: 'A voided entry stays as it is. Make a new one.',
  },
);

/** An entry whose every column is settled. */
export type Settled = Omit<
  LogEntry,
  'clubId' | 'id' | 'memberId' | 'rowVersion' | 'recordedAt' | 'voidedAt' | 'importId' | 'bookingId'
>;

/** Whether each part fits its whole, as it would be stored. @throws 422 `log-does-not-add-up` naming every field */
export function assertAddsUp(entry: Settled, now: Instant): void {
  const errors = [...faults(entry, now)].map(([field, message]): FieldError => ({
    field,
    pointer: pointerTo(field),
    in: 'body',
    message,
  }));
  if (errors.length > 0) throw new ProblemException('log-does-not-add-up', { errors });
}

/** What does not fit in an entry, with the field it is told of. */
export function* faults(entry: Settled, now: Instant): Generator<[field: string, message: string]> {
  const spanSeconds = toSeconds(entry.arrivedAt) - toSeconds(entry.departedAt);
  if (spanSeconds <= 0) yield ['arrivedAt', 'The flight ends after it begins.'];
  if (entry.arrivedAt > now)
    yield ['arrivedAt', 'The log holds flights that have ended; this lies in the future.'];
  const utcDate = entry.departedAt.slice(0, 10);
  // No zone is more than 14 hours from UTC, so the local date is the UTC date or a neighbour of it.
  if (entry.flownOn < addDays(utcDate, -1) || entry.flownOn > addDays(utcDate, 1)) {
    yield ['flownOn', `The local date lies within a day of the departure, ${utcDate} in UTC.`];
  }
  // Hours are rounded to a tenth, so one tenth more than the span is still honest.
  if (spanSeconds > 0 && entry.totalTenths > Math.ceil(spanSeconds / 360) + 1) {
    yield ['totalH', 'The hours are more than the time between departure and arrival.'];
  }
  if (entry.nightTenths > entry.totalTenths) yield ['nightH', 'Night hours are part of the total.'];
  if (entry.dualGivenTenths > entry.totalTenths)
    yield ['dualGivenH', 'Instruction given is part of the total.'];
  if (entry.crossCountryTenths > entry.totalTenths)
    yield ['crossCountryH', 'Cross-country hours are part of the total.'];
  if (entry.actualInstrumentTenths > entry.totalTenths)
    yield ['actualInstrumentH', 'Instrument hours are part of the total.'];
  else if (entry.simulatedInstrumentTenths > entry.totalTenths - entry.actualInstrumentTenths) {
    yield ['simulatedInstrumentH', 'Simulated and actual instrument hours together are part of the total.'];
  }
  if (entry.fullStopLandings > entry.landings)
    yield ['fullStopLandings', 'Full-stop landings are part of the landings.'];
  if (entry.nightTakeoffs > entry.takeoffs)
    yield ['nightTakeoffs', 'Night take-offs are part of the take-offs.'];
  if (entry.nightFullStopLandings > entry.fullStopLandings) {
    yield ['nightFullStopLandings', 'Night full-stop landings are part of the full-stop landings.'];
  }
  if (!classFits(entry.category, entry.class)) {
    yield [
      'class',
      `Classes of the category ${entry.category} are: ${CLASSES_OF[entry.category].join(', ')}.`,
    ];
  }
}
