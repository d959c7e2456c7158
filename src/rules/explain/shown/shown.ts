import type { LocalDate } from '../../calendar/dates.js';
import type { Instant } from '../../calendar/instants.js';
import { localClock, localDateOf, toSeconds } from '../../calendar/instants.js';

/** One record behind a fact, in a line. */
export interface RecordShown {
  /** Id of the record, as findings count it; null where the fact is no record of its own (a date of birth). */
  id: string | null;
  /** Ids inside it that a finding may count instead: a compliance, a deferral. */
  alsoIds?: string[];
  /** Where it sorts: newest first. Null: undated. */
  on: LocalDate | null;
  says: string;
}

/** How the records of a fact are shown; `zone` is the club's. */
export type Show<T> = (value: T, zone: string) => RecordShown[];

/** 'x, y' of what is there; falsy parts are left out. */
export const parts = (...of: (string | false | null | undefined)[]): string => of.filter(Boolean).join(', ');

/** '2027-03-01 11:30', the clock of the zone. */
export function dayAndClock(at: Instant, zone: string): string {
  const seconds = toSeconds(at);
  return `${localDateOf(seconds, zone)} ${localClock(seconds, zone)}`;
}

/** '1050.0 h' from tenths. */
export const hours = (tenths: number): string => `${(tenths / 10).toFixed(1)} h`;
/** 'single engine land' from 'single-engine-land'; nothing where an old sheet has nothing. */
export const plain = (word: string | undefined): string => (word ?? '').replaceAll('-', ' ');
