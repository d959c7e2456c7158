/**
 * When the flights of a series are (RFC 5545, sections 3.3.10 and 3.8.5.3), counted on the club's clock: eight in the morning stays
 * eight in the morning when the clocks change.
 */
import { Temporal } from 'temporal-polyfill';
import { ProblemException } from '../../platform/problems/index.js';
import { RRule } from './recurrence-library.js';

/** Most flights booked by one rule, and how far the last may lie. */
export const MOST_OCCURRENCES = 60;
const FARTHEST_DAYS = 400;

/**
 * What a recurrence may say here. Days need no hours or seconds, and whatever could name a day that never comes (BYMONTH, BYSETPOS,
 * a sixth Friday) would have the library look for it through thousands of years.
 */
const PARTS: Record<string, { form: RegExp; says: string }> = {
  FREQ: { form: /^(DAILY|WEEKLY|MONTHLY)$/, says: 'FREQ must be DAILY, WEEKLY or MONTHLY.' },
  INTERVAL: { form: /^[1-6]$/, says: 'INTERVAL must be from 1 to 6.' },
  COUNT: {
    form: /^([1-9]|[1-5]\d|60)$/,
    says: 'COUNT must be from 1 to 60: a series holds at most 60 flights.',
  },
  UNTIL: { form: /^\d{8}(T\d{6}Z?)?$/, says: 'UNTIL is a day or an instant: 20270430 or 20270430T160000Z.' },
  BYDAY: {
    form: /^([+-]?[1-4])?(MO|TU|WE|TH|FR|SA|SU)(,([+-]?[1-4])?(MO|TU|WE|TH|FR|SA|SU))*$/,
    says: 'BYDAY holds days of the week, such as SA,SU; with MONTHLY also 1FR or -1SU.',
  },
  BYMONTHDAY: {
    form: /^-?([1-9]|[12]\d|3[01])(,-?([1-9]|[12]\d|3[01]))*$/,
    says: 'BYMONTHDAY holds days of the month, 1 to 31 or -1 to -31.',
  },
  WKST: { form: /^(MO|TU|WE|TH|FR|SA|SU)$/, says: 'WKST is the first day of the week, such as MO.' },
};

/** A flight's times. */
export interface Occurrence {
  departs: string;
  arrives: string;
}

const refuse = (detail: string): ProblemException =>
  new ProblemException('recurrence-refused', { detail, field: 'recurrence' });

/**
 * The flights of a series, the first as given.
 *
 * The library counts on a clock without a zone; each time is then put into the zone. A local time that a change of the clocks skips
 * is taken as it would have been before the change, and of one that comes twice the first is meant (RFC 5545, section 3.3.5). Every
 * flight lasts as long as the first (section 3.8.5.3: the duration is exact).
 * @throws ProblemException 422 for a rule that cannot be read, has no end, or gives no flight or too many.
 */
export function occurrencesOf(of: { first: Occurrence; recurrence: string; zone: string }): Occurrence[] {
  const { first, recurrence, zone } = of;
  const begins = Temporal.Instant.from(first.departs).toZonedDateTimeISO(zone).toPlainDateTime();
  const lasts = Temporal.Instant.from(first.departs).until(Temporal.Instant.from(first.arrives));
  const options = optionsOf(recurrence, zone);
  const farthest = dateOf(begins.add({ days: FARTHEST_DAYS }));
  if (options.until && options.until > farthest) throw tooFar();
  const found: Date[] = [];
  new RRule({ ...options, dtstart: dateOf(begins), until: options.until ?? farthest }).all((date) => {
    found.push(date);
    return found.length <= MOST_OCCURRENCES;
  });
  if (found.length > MOST_OCCURRENCES)
    throw refuse(
      `A series holds at most ${MOST_OCCURRENCES} flights. Give a smaller COUNT or an earlier UNTIL.`,
    );
  if (options.count && found.length > 0 && found.length < options.count) throw tooFar();
  if (found.length === 0) throw refuse('It gives no day. Check BYDAY, BYMONTHDAY and UNTIL.');
  if (found[0]!.getTime() !== dateOf(begins).getTime())
    throw refuse('The first flight is not on a day of the recurrence. Change its day, or the recurrence.');
  return found.map((date) => {
    const departs = plainOf(date).toZonedDateTime(zone, { disambiguation: 'compatible' }).toInstant();
    return { departs: told(departs), arrives: told(departs.add(lasts)) };
  });
}

const tooFar = (): ProblemException =>
  refuse(`The last flight would lie more than ${FARTHEST_DAYS} days after the first. Bring the end nearer.`);

type Options = Partial<ConstructorParameters<typeof RRule>[0]> & { until?: Date | null };

/** What the library takes; each part was looked at, so that it cannot mean what the library makes of a slip. */
function optionsOf(recurrence: string, zone: string): Options {
  const parts = recurrence.split(';').map((part) => part.split('='));
  for (const [name = '', value = ''] of parts) {
    const known = PARTS[name];
    if (!known)
      throw refuse(`${name || 'An empty part'} cannot be used here. Use ${Object.keys(PARTS).join(', ')}.`);
    if (!known.form.test(value)) throw refuse(known.says);
  }
  const said = Object.fromEntries(parts) as Record<string, string | undefined>;
  const { FREQ, COUNT, UNTIL, BYDAY, BYMONTHDAY } = said;
  if (parts.length !== Object.keys(said).length) throw refuse('A part is given twice. Give each once.');
  if (FREQ === undefined) throw refuse(PARTS['FREQ']!.says);
  if (COUNT === undefined && UNTIL === undefined) throw refuse('It has no end. Give COUNT or UNTIL.');
  if (COUNT !== undefined && UNTIL !== undefined)
    throw refuse('COUNT and UNTIL may not stand together (RFC 5545, section 3.3.10). Leave one out.');
  if (FREQ !== 'MONTHLY' && (BYMONTHDAY !== undefined || /\d/.test(BYDAY ?? '')))
    throw refuse('Days of the month, and first or last days of the week, go with FREQ=MONTHLY.');
  if (BYMONTHDAY !== undefined && BYDAY !== undefined)
    throw refuse('BYMONTHDAY and BYDAY may not stand together here. Leave one out.');
  const text = parts.filter(([name]) => name !== 'UNTIL').map((part) => part.join('='));
  const { dtstart: _start, tzid: _zone, ...options } = RRule.parseString(text.join(';'));
  return { ...options, until: UNTIL === undefined ? null : untilOf(UNTIL, zone) };
}

/** The last moment on the club's clock: a day means all of it, an instant in UTC is what the clock shows then. */
function untilOf(text: string, zone: string): Date {
  const read = /^(\d{4})(\d\d)(\d\d)(?:T(\d\d)(\d\d)(\d\d)(Z?))?$/.exec(text);
  try {
    if (!read) throw new RangeError(text);
    const [, year, month, day, hour = '23', minute = '59', second = '59', zulu] = read;
    const plain = Temporal.PlainDateTime.from(`${year}-${month}-${day}T${hour}:${minute}:${second}`);
    if (zulu !== 'Z') return dateOf(plain);
    return dateOf(plain.toZonedDateTime('UTC').withTimeZone(zone).toPlainDateTime());
  } catch {
    throw refuse(PARTS['UNTIL']!.says);
  }
}

/** A clock's reading as the library takes it, a date whose UTC fields are the clock's; and back. */
const dateOf = (plain: Temporal.PlainDateTime): Date =>
  new Date(plain.toZonedDateTime('UTC').epochMilliseconds);
const plainOf = (date: Date): Temporal.PlainDateTime =>
  Temporal.Instant.fromEpochMilliseconds(date.getTime()).toZonedDateTimeISO('UTC').toPlainDateTime();
const told = (instant: Temporal.Instant): string => instant.toString({ smallestUnit: 'second' });
