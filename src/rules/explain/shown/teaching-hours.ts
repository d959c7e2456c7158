import { hoursInWords, WEEKDAYS } from '../../packs/club/booking/teaching-windows.js';
import type { TeachingHoursFact } from '../../facts/person.js';
import { parts, type Show } from './shown.js';

/** Teaching hours as they were told, by weekday or for one date. */
export const showTeachingHours: Show<TeachingHoursFact[]> = (all) =>
  all.map((one) => ({
    id: one.id,
    on: one.on ?? one.from,
    says: parts(
      one.kind === 'date' ? `on ${one.on}` : `every ${WEEKDAYS[one.weekday! - 1]}`,
      hoursInWords([one]),
      one.from && `from ${one.from}`,
      one.through && `through ${one.through}`,
    ),
  }));
