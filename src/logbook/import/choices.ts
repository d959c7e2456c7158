/** How a file is to be read, as far as somebody has to say it. Pure. */
import type { AircraftCategory, AircraftClass, LogFact } from '../../rules/facts/person.js';
import type { HoursForm, ImportField } from './fields.js';
import type { Encoding } from './file-text.js';
import type { Delimiter } from './table.js';

/** How dates of figures alone are written. */
export const DATE_ORDERS = ['year-first', 'day-first', 'month-first'] as const;
export type DateOrder = (typeof DATE_ORDERS)[number];

export const DECIMAL_SIGNS = ['point', 'comma'] as const;
export type DecimalSign = (typeof DECIMAL_SIGNS)[number];

/** utc: times and date in UTC; utc-local-date: times in UTC, the date that of the zone; zone: both by the zone's clock. */
export const CLOCKS = ['utc', 'utc-local-date', 'zone'] as const;
export type FileClock = (typeof CLOCKS)[number];

export interface ColumnChoice {
  /** From 0. */
  index: number;
  /** Null: not taken over. */
  field: ImportField | null;
  /** Of hours. */
  form?: HoursForm | null;
}

/** What a kind of aircraft that the club does not know is. */
export interface KindChoice {
  words: string;
  category: AircraftCategory;
  class: AircraftClass;
  tailwheel: boolean;
  typeRating?: string | null;
}

/** What is absent is found out from the file, or asked. */
export interface Choices {
  encoding?: Encoding;
  delimiter?: Delimiter;
  headingLine?: number;
  columns?: ColumnChoice[];
  dates?: DateOrder;
  decimal?: DecimalSign;
  clock?: FileClock;
  /** IANA zone; the club's where absent. */
  zone?: string;
  /** Of flights of which the file does not say it. */
  role?: LogFact['role'];
  /** Whether the member was sole manipulator where the file does not say it and the role allows it. */
  soleManipulator?: boolean;
  /** Whether a flight without a count of take-offs had as many as landings. */
  takeoffsAsLandings?: boolean;
  kinds?: KindChoice[];
  /** Rows that cannot be read are left out; otherwise they stop the import. */
  leaveOutBad?: boolean;
  /** Rows that may be flights of the log are taken over; otherwise they are left out. */
  takeAlike?: boolean;
}

/** A choice that is still open. */
export interface Question {
  choice: 'dates' | 'decimal' | 'clock' | 'columns';
  /** Column it is about, where it is about one. */
  index: number | null;
  says: string;
}
