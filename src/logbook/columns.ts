import { AIRCRAFT_CATEGORIES, AIRCRAFT_CLASSES } from '../members/vocabulary.js';
import type { LogEntryDto } from './log.dto.js';
import { DEVICES, LOG_ROLES } from './words.js';

/** What a column of a log file holds. Hours are decimal, to a tenth; instants are UTC, RFC 3339; 'flag' is yes or no. */
export type ColumnUnit = 'date' | 'instant' | 'h' | 'count' | 'flag' | 'word' | 'text';

/** A field of the entry, or the name by which the club knows the aircraft or model it was flown in. */
export type LogField = Exclude<keyof LogEntryDto, 'aircraftId' | 'modelId'> | 'registration' | 'makeModel';

/** One column of a member's log as a file. */
export interface LogColumn {
  field: LogField;
  heading: string;
  unit: ColumnUnit;
  /** The words it may hold. */
  words?: readonly string[];
  /** May be empty. */
  empty?: true;
}

/**
 * The one list of what a log file holds, in order; export and import both go by it, so that what was taken out comes in
 * again unchanged. Voided entries are no part of it.
 */
export const LOG_COLUMNS: readonly LogColumn[] = [
  { field: 'flownOn', heading: 'Date', unit: 'date' },
  { field: 'departedAt', heading: 'Off blocks (UTC)', unit: 'instant', empty: true },
  { field: 'arrivedAt', heading: 'On blocks (UTC)', unit: 'instant', empty: true },
  { field: 'fromAirfield', heading: 'From', unit: 'text' },
  { field: 'toAirfield', heading: 'To', unit: 'text' },
  { field: 'registration', heading: 'Aircraft of the club', unit: 'text', empty: true },
  { field: 'makeModel', heading: 'Model of the club', unit: 'text', empty: true },
  { field: 'aircraftWords', heading: 'Aircraft in words', unit: 'text' },
  { field: 'category', heading: 'Category', unit: 'word', words: AIRCRAFT_CATEGORIES },
  { field: 'class', heading: 'Class', unit: 'word', words: AIRCRAFT_CLASSES },
  { field: 'typeRating', heading: 'Type rating', unit: 'text', empty: true },
  { field: 'tailwheel', heading: 'Tailwheel', unit: 'flag' },
  { field: 'device', heading: 'Training device', unit: 'word', words: DEVICES, empty: true },
  { field: 'role', heading: 'Role', unit: 'word', words: LOG_ROLES },
  { field: 'soleManipulator', heading: 'Sole manipulator', unit: 'flag' },
  { field: 'totalH', heading: 'Total (h)', unit: 'h' },
  { field: 'nightH', heading: 'Night (h)', unit: 'h' },
  { field: 'crossCountryH', heading: 'Cross-country (h)', unit: 'h' },
  { field: 'actualInstrumentH', heading: 'Actual instrument (h)', unit: 'h' },
  { field: 'simulatedInstrumentH', heading: 'Simulated instrument (h)', unit: 'h' },
  { field: 'dualGivenH', heading: 'Instruction given (h)', unit: 'h' },
  { field: 'takeoffs', heading: 'Take-offs', unit: 'count' },
  { field: 'landings', heading: 'Landings', unit: 'count' },
  { field: 'fullStopLandings', heading: 'Full-stop landings', unit: 'count' },
  { field: 'nightTakeoffs', heading: 'Night take-offs', unit: 'count' },
  { field: 'nightFullStopLandings', heading: 'Night full-stop landings', unit: 'count' },
  { field: 'approaches', heading: 'Instrument approaches', unit: 'count' },
  { field: 'holding', heading: 'Holding', unit: 'flag' },
  { field: 'interceptTrack', heading: 'Intercepting and tracking', unit: 'flag' },
  { field: 'remarks', heading: 'Remarks', unit: 'text', empty: true },
];
