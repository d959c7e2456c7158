/**
 * Dates and times in case tables. A date may carry its weekday ('Sat 2027-02-20'), which must be the right one; a time may be
 * written as the club's clock shows it ('Mon 2027-03-01 11:00') or as an instant ('2027-03-01T18:00:00Z').
 */
import { Temporal } from 'temporal-polyfill';
import type { Place, Refuse } from './refuse.js';

/** The zone of the base sheet. */
export const CLUB_ZONE = 'America/Denver';

const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const WRITTEN =
  /^(?:([A-Z][a-z]+) )?(\d{4}-\d{2}-\d{2})(?:T(\d{2}:\d{2}:\d{2})Z| (\d{2}:\d{2}(?::\d{2})?))?$/;

const article = (wanted: string): string => (wanted === 'instant' ? 'a time' : `a ${wanted}`);

/** Does a text mean to be a date or a time? */
export const looksLikeTime = (text: string): boolean => /^(?:[A-Z][a-z]+ )?\d{4}-\d/.test(text);

/** The date ('YYYY-MM-DD') or instant that a text stands for; refuses dates that do not exist and wrong weekdays. */
export function conformingTime(
  value: unknown,
  wanted: 'date' | 'instant' | 'date or instant',
  place: Place,
  refuse: Refuse,
): string {
  const match = typeof value === 'string' ? WRITTEN.exec(value) : null;
  if (!match)
    return refuse(
      place,
      `should be ${article(wanted)}, such as ${wanted === 'date' ? 'Mon 2027-03-01' : 'Mon 2027-03-01 11:00'}`,
    );
  const [, weekday, date, utc, local] = match;
  let day: Temporal.PlainDate;
  try {
    day = Temporal.PlainDate.from(date!, { overflow: 'reject' });
  } catch {
    return refuse(place, `there is no ${date}`);
  }
  if (weekday !== undefined && weekday !== WEEKDAYS[day.dayOfWeek - 1])
    refuse(place, `${date} is a ${WEEKDAYS[day.dayOfWeek - 1]}, not a ${weekday}`);
  const isDate = utc === undefined && local === undefined;
  if (isDate ? wanted === 'instant' : wanted === 'date') refuse(place, `should be ${article(wanted)}`);
  if (isDate) return date!;
  return utc === undefined
    ? instantOf(`${date}T${local}`, place, refuse)
    : zulu(`${date}T${utc}Z`, place, refuse);
}

function instantOf(local: string, place: Place, refuse: Refuse): string {
  try {
    const there = Temporal.PlainDateTime.from(local).toZonedDateTime(CLUB_ZONE, { disambiguation: 'reject' });
    return there.toInstant().toString();
  } catch {
    return refuse(place, `${local} is no time, or not one time, on the club's clock`);
  }
}

function zulu(written: string, place: Place, refuse: Refuse): string {
  try {
    return Temporal.Instant.from(written).toString();
  } catch {
    return refuse(place, `there is no ${written}`);
  }
}
