import type { EpochSeconds } from '../../rules/calendar/instants.js';
import type { LocalDate } from '../../rules/calendar/dates.js';
import type { AircraftCategory, AircraftClass, LogFact } from '../../rules/facts/person.js';
import type { Place } from '../../rules/sky/sun.js';

/** What is looked at. Each stands for one value of the entry. */
export const CHECKS = [
  'date',
  'block-hours',
  'speed',
  'night-hours',
  'night-take-offs',
  'night-landings',
  'cross-country',
] as const;

/** `flagged`: it cannot be, or hardly, with the rest of the entry. `not-checkable`: something needed is not on record. */
export const OUTCOMES = ['fits', 'flagged', 'not-checkable'] as const;

/** One value held against what can be worked out. It never changes the entry. */
export interface Check {
  check: (typeof CHECKS)[number];
  /** The field of the entry it is about. */
  field: string;
  outcome: (typeof OUTCOMES)[number];
  written: string;
  /** Null where nothing could be worked out. */
  computed: string | null;
  /** One sentence; of what could not be checked, why. */
  says: string;
  /** Where the computed value comes from. */
  source: string | null;
}

/** An airfield of an entry, with its place and zone where the club knows it. */
export interface Field {
  code: string;
  at: (Place & { zone: string }) | null;
}

/** An entry as the checks need it. Hours in tenths. */
export interface Flown {
  departs: EpochSeconds;
  arrives: EpochSeconds;
  /** false: only the day is known, and the instants are the latest it allows. */
  timesKnown?: boolean;
  on: LocalDate;
  from: Field;
  to: Field;
  category: AircraftCategory;
  class: AircraftClass;
  device: LogFact['device'];
  takeoffs: number;
  landings: number;
  fullStopLandings: number;
  nightTakeoffs: number;
  nightFullStopLandings: number;
  totalTenths: number;
  nightTenths: number;
  crossCountryTenths: number;
}

/** A flight between two places the club knows. */
export interface Placed extends Flown {
  from: Field & { at: Place & { zone: string } };
  to: Field & { at: Place & { zone: string } };
}

/** Why nothing is held against the clock of an entry without times. */
export const NO_TIMES = 'The file it came from gave no times.';

/** The entry with both its places, or why there is nothing to look from. */
export function placed(flown: Flown): Placed | string {
  if (flown.device !== null) return 'It was time in a training device, which stays where it is.';
  if (flown.timesKnown === false) return NO_TIMES;
  const unknown = [flown.from, flown.to].find(({ at }) => at === null);
  if (unknown) return `Where ${unknown.code} lies is not on record: it is no airfield of the club.`;
  return flown as Placed;
}

/** '1.4 h' */
export const hoursText = (tenths: number): string => `${(tenths / 10).toFixed(1)} h`;
/** '1 landing', '2 landings' */
export const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;
