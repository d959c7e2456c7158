/** How a file is read, as a request says it. */
import type { AircraftCategory, AircraftClass, LogFact } from '../../rules/facts/person.js';
import { AIRCRAFT_CATEGORIES, AIRCRAFT_CLASSES } from '../../members/vocabulary.js';
import {
  FlagField,
  PartsField,
  TextField,
  WholeField,
  WordField,
  ZoneField,
} from '../../platform/http/fields.js';
import { LOG_ROLES } from '../words.js';
import {
  type Choices,
  CLOCKS,
  DATE_ORDERS,
  type DateOrder,
  DECIMAL_SIGNS,
  type DecimalSign,
  type FileClock,
} from './choices.js';
import { FIELD_NAMES, HOURS_FORMS, type HoursForm, type ImportField } from './fields.js';
import { type Encoding, ENCODINGS } from './file-text.js';
import { type Delimiter, DELIMITERS, MOST_COLUMNS } from './table.js';

/** Kinds of aircraft told for one file. */
export const MOST_KINDS = 300;

export class LogColumnChoice {
  @WholeField({ max: 1000, description: 'Of the column, from 0' })
  index: number;

  @WordField(FIELD_NAMES, { nullable: true, description: 'What it is; null: not taken over' })
  field: ImportField | null;

  @WordField(HOURS_FORMS, {
    nullable: true,
    description:
      'Of hours: decimal (1.5), clock (1:30), either (each as it looks), minutes (90), point-clock (1.30 for an hour and a half)',
  })
  form?: HoursForm | null;
}

export class LogKindChoice {
  @TextField({ max: 120, description: 'The aircraft as the file names it' })
  words: string;

  @WordField(AIRCRAFT_CATEGORIES)
  category: AircraftCategory;

  @WordField(AIRCRAFT_CLASSES)
  class: AircraftClass;

  @FlagField()
  tailwheel: boolean;

  @TextField({ nullable: true, max: 12, description: 'Type designator where a type rating is required' })
  typeRating?: string | null;
}

/** What is left out is found out from the file; what cannot be is asked by the preview. */
export class LogImportChoices implements Choices {
  @WordField(ENCODINGS, { optional: true })
  encoding?: Encoding;

  @WordField(DELIMITERS, { optional: true, description: 'What parts the cells' })
  delimiter?: Delimiter;

  @WholeField({ optional: true, max: 100_000, description: 'Line with the headings, from 1; 0 of JSON' })
  headingLine?: number;

  @PartsField(() => LogColumnChoice, { optional: true, max: MOST_COLUMNS })
  columns?: LogColumnChoice[];

  @WordField(DATE_ORDERS, { optional: true, description: 'How dates such as 09/03/2026 are written' })
  dates?: DateOrder;

  @WordField(DECIMAL_SIGNS, { optional: true })
  decimal?: DecimalSign;

  @WordField(CLOCKS, {
    optional: true,
    description:
      'utc: times and dates in UTC; utc-local-date: times in UTC, dates of the place; zone: both by the clock of the zone',
  })
  clock?: FileClock;

  @ZoneField({ optional: true, description: 'Of times by a zone’s clock; the club’s where absent' })
  zone?: string;

  @WordField(LOG_ROLES, {
    optional: true,
    description: 'Of flights of which the file does not tell the role',
  })
  role?: LogFact['role'];

  @FlagField({
    optional: true,
    description:
      'true: sole manipulator where the file does not say it and the role allows it (14 CFR 61.57)',
  })
  soleManipulator?: boolean;

  @FlagField({
    optional: true,
    description: 'true: as many take-offs as landings where the file counts none',
  })
  takeoffsAsLandings?: boolean;

  @PartsField(() => LogKindChoice, { optional: true, max: MOST_KINDS })
  kinds?: LogKindChoice[];

  @FlagField({
    optional: true,
    description: 'true: rows that cannot be read are left out instead of stopping it',
  })
  leaveOutBad?: boolean;

  @FlagField({ optional: true, description: 'true: rows that may be flights of the log are taken over' })
  takeAlike?: boolean;
}
