/** Bookings as an RFC 5545 calendar. Pure: the same bookings give the same bytes, whenever it is asked for. */
import { ICalCalendarMethod, ICalEventStatus, ICalEventTransparency } from 'ical-generator';
import ical from 'ical-generator';
import { CAUTION, type Instant } from '../../rules/index.js';

/** A booking as it stands in somebody's calendar. */
export interface CalendarEntry {
  id: string;
  summary: string;
  description: string;
  departs: Instant;
  arrives: Instant;
  cancelled: boolean;
  /** Counts the changes, from 0 (RFC 5545, 3.8.7.4). */
  sequence: number;
  /** When it was last changed, as far as is known. */
  changedAt: Instant;
}

/** Seconds between two looks that are asked for (RFC 7986, REFRESH-INTERVAL). */
const LOOK_AGAIN_S = 15 * 60;

/**
 * All times are in UTC: an instant needs no zone, and no clock change can be read wrongly. A booking that was cancelled
 * stays for a while and says so, since calendars keep what merely disappears.
 */
export function calendarText(title: string, entries: readonly CalendarEntry[], url: string): string {
  const calendar = ical({
    ...{ name: title, prodId: { company: 'Bellcrank', product: 'Bookings', language: 'EN' } },
    ...{ method: ICalCalendarMethod.PUBLISH, ttl: LOOK_AGAIN_S },
  });
  for (const entry of entries)
    calendar.createEvent({
      id: `${entry.id}@bellcrank`,
      ...{ start: new Date(entry.departs), end: new Date(entry.arrives) },
      summary: entry.cancelled ? `Cancelled: ${entry.summary}` : entry.summary,
      description: [entry.description, CAUTION].filter((text) => text !== '').join('\n\n'),
      url,
      ...{ sequence: entry.sequence, stamp: new Date(entry.changedAt) },
      status: entry.cancelled ? ICalEventStatus.CANCELLED : ICalEventStatus.CONFIRMED,
      // A flight that is off leaves its people free.
      transparency: entry.cancelled ? ICalEventTransparency.TRANSPARENT : ICalEventTransparency.OPAQUE,
    });
  return calendar.toString();
}
