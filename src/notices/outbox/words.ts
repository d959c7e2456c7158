/** Days and instants of a sentence as mail writes them: in words, on the club's clock. */
import { Temporal } from 'temporal-polyfill';

const WRITTEN = /\b(\d{4}-\d{2}-\d{2})(T\d{2}:\d{2}(?::\d{2})?Z)?\b/g;
const DAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** 'Wed 11 Mar 2026' */
const dayInWords = (date: Temporal.PlainDate): string =>
  `${DAYS[date.dayOfWeek - 1]} ${date.day} ${MONTHS[date.month - 1]} ${date.year}`;

/** 'Wed 11 Mar 2026, 13:00', on the zone's clock. */
export function momentInWords(instant: string, zone: string): string {
  const at = Temporal.Instant.from(instant).toZonedDateTimeISO(zone);
  return `${dayInWords(at.toPlainDate())}, ${at.toPlainTime().toString({ smallestUnit: 'minute' })}`;
}

/** A sentence of the service with its days and instants in words. */
export function datesInWords(text: string, zone: string): string {
  return text.replace(WRITTEN, (written, date: string, clock: string | undefined) => {
    try {
      return clock === undefined ? dayInWords(Temporal.PlainDate.from(date)) : momentInWords(written, zone);
    } catch {
      return written;
    }
  });
}
