/** Dated papers: which stand for the flight, and which is newest. */
import { addDays, type LocalDate } from '../../calendar/dates.js';
import type { Moment } from '../../engine/moment.js';
import type { Suspension } from '../../facts/person.js';
import type { Reading } from './entry.js';

/** Given by the day of the flight, and good to its end. */
export const lasts = (paper: { on: LocalDate; expiresOn: LocalDate | null }, moment: Moment): boolean =>
  moment.startsOnOrAfter(paper.on) && (paper.expiresOn === null || moment.endsOnOrBefore(paper.expiresOn));

/** Does a suspension share a day with the flight? Its last day counts. */
export const suspendedDuring = (suspensions: readonly Suspension[], moment: Moment): boolean =>
  suspensions.some(
    ({ from, to }) =>
      !moment.endsOnOrBefore(addDays(from, -1)) && !(to !== null && moment.startsOnOrAfter(addDays(to, 1))),
  );

/** The newest day among records of the day of the flight or before, named as evidence; null when there is none. */
export function newest(
  r: Reading,
  records: readonly { id: string; on: LocalDate }[],
  what: string,
): LocalDate | null {
  r.spend(records.length);
  let found: { id: string; on: LocalDate } | null = null;
  for (const one of records) {
    if (found !== null && (one.on < found.on || (one.on === found.on && one.id >= found.id))) continue;
    if (r.moment.startsOnOrAfter(one.on)) found = one;
  }
  if (found !== null) r.counted([{ id: found.id, on: found.on, what }]);
  return found?.on ?? null;
}
