import { addDays } from '../../../calendar/dates.js';
import type { Moment } from '../../../engine/moment.js';

/** Days after the facts were gathered. */
export type DaysAhead = number;

/**
 * When to plan an act that counts for `days` only: today if that lasts to the end of the flight, else as many half spans
 * later as it takes. Null when no day before the flight would do, because the flight itself is longer than the span.
 */
export function plannedDay(moment: Moment, days: number): DaysAhead | null {
  const step = Math.max(1, Math.floor(days / 2));
  for (let ahead = 0; ; ahead += step) {
    const date = addDays(moment.knowledgeDate(), ahead);
    if (ahead > 0 && !moment.startsOnOrAfter(date)) return null;
    if (moment.endsOnOrBefore(addDays(date, days))) return ahead;
  }
}
