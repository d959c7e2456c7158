/** What a column of a file can be, and the words that head it. Pure. */
import type { LogField } from '../columns.js';

/** How a cell of a field is read. */
export type CellKind =
  'day' | 'when' | 'hours' | 'count' | 'flag' | 'text' | 'role' | 'device' | 'category' | 'class';

/**
 * Fields of an entry, and what sheets give instead of them: landings by day and by night apart, and the role as hours in a column of
 * its own.
 */
export type ImportField =
  | LogField
  | 'dayTakeoffs'
  | 'dayLandings'
  | 'nightLandings'
  | 'dayFullStopLandings'
  | 'picH'
  | 'sicH'
  | 'dualReceivedH'
  | 'soloH';

export interface FieldOfFile {
  is: CellKind;
  /** In words, for the page. */
  title: string;
  /** Headings it is known by, in small letters, single blanks, without what stands in brackets. */
  words: readonly string[];
  /** Longest text. */
  most?: number;
}

const hours = (title: string, ...words: string[]): FieldOfFile => ({ is: 'hours', title, words });
const count = (title: string, ...words: string[]): FieldOfFile => ({ is: 'count', title, words });
const flag = (title: string, ...words: string[]): FieldOfFile => ({ is: 'flag', title, words });
const text = (title: string, most: number, ...words: string[]): FieldOfFile => ({
  ...{ is: 'text', title, most, words },
});

/** In the order in which they are offered. Words are everyday ones of the trade (common practice, no source). */
export const FIELDS: Readonly<Record<ImportField, FieldOfFile>> = {
  flownOn: {
    ...{ is: 'day', title: 'date' },
    words: ['date', 'day', 'flight date', 'date of flight', 'flown on', 'datum', 'fecha'],
  },
  departedAt: {
    ...{ is: 'when', title: 'off blocks' },
    words: [
      ...['off blocks', 'off block', 'block off', 'blocks off', 'off', 'out', 'departure time', 'dep time'],
      ...['departed', 'departed at', 'time off', 'start time', 'time out', 'off block time', 'departure utc'],
    ],
  },
  arrivedAt: {
    ...{ is: 'when', title: 'on blocks' },
    words: [
      ...['on blocks', 'on block', 'block on', 'blocks on', 'on', 'in', 'arrival time', 'arr time'],
      ...['arrived', 'arrived at', 'time on', 'end time', 'time in', 'on block time', 'arrival utc'],
    ],
  },
  fromAirfield: text(
    'from',
    40,
    'from',
    'departure',
    'dep',
    'origin',
    'departure airfield',
    'departure airport',
    'departure place',
    'von',
  ),
  toAirfield: text(
    'to',
    40,
    'to',
    'arrival',
    'arr',
    'destination',
    'dest',
    'arrival airfield',
    'arrival airport',
    'arrival place',
    'nach',
  ),
  registration: text(
    ...(['registration', 40] as const),
    ...[
      'registration',
      'reg',
      'aircraft reg',
      'aircraft registration',
      'tail',
      'tail number',
      'tail no',
      'ident',
    ],
    ...['aircraft ident', 'aircraft of the club', 'callsign', 'kennzeichen'],
  ),
  makeModel: text(
    ...(['make and model', 120] as const),
    ...[
      'make model',
      'make and model',
      'model',
      'type',
      'aircraft type',
      'aircraft model',
      'aircraft',
      'muster',
    ],
    ...['model of the club', 'type of aircraft'],
  ),
  aircraftWords: text('aircraft in words', 120, 'aircraft in words', 'aircraft description'),
  category: { is: 'category', title: 'category', words: ['category', 'aircraft category'] },
  class: { is: 'class', title: 'class', words: ['class', 'aircraft class', 'category class', 'cat class'] },
  typeRating: text('type rating', 12, 'type rating'),
  tailwheel: flag('tailwheel', 'tailwheel', 'tail wheel', 'conventional gear'),
  device: { is: 'device', title: 'training device', words: ['training device', 'device', 'device kind'] },
  role: { is: 'role', title: 'role', words: ['role', 'function', 'capacity', 'pilot function', 'crew role'] },
  soleManipulator: flag('sole manipulator', 'sole manipulator', 'sole manipulator of the controls'),
  totalH: hours(
    'total hours',
    'total',
    'total time',
    'total flight time',
    'flight time',
    'hours',
    'duration',
    'block',
    'block time',
    'total duration',
    'time',
    'flugzeit',
  ),
  nightH: hours('night hours', 'night', 'night time', 'nacht'),
  crossCountryH: hours('cross-country hours', 'cross country', 'xc', 'x country', 'cross country time'),
  actualInstrumentH: hours(
    'actual instrument hours',
    'actual instrument',
    'actual',
    'actual imc',
    'instrument actual',
    'imc',
  ),
  simulatedInstrumentH: hours(
    'simulated instrument hours',
    'simulated instrument',
    'instrument simulated',
    'hood',
    'simulated',
    'sim instrument',
  ),
  dualGivenH: hours(
    'hours of instruction given',
    'instruction given',
    'dual given',
    'as instructor',
    'instructor',
    'cfi',
    'fi',
  ),
  picH: hours('hours as pilot in command', 'pic', 'pilot in command', 'p1', 'command', 'pic time'),
  sicH: hours(
    'hours as second in command',
    'sic',
    'second in command',
    'co pilot',
    'copilot',
    'p2',
    'sic time',
  ),
  dualReceivedH: hours(
    'hours of dual received',
    'dual',
    'dual received',
    'instruction received',
    'training received',
    'put',
    'student',
  ),
  soloH: hours('solo hours', 'solo', 'solo time'),
  takeoffs: count(
    'take-offs, all',
    'take offs',
    'takeoffs',
    't o',
    'to count',
    'all takeoffs',
    'total takeoffs',
  ),
  dayTakeoffs: count(
    'take-offs by day',
    'day take offs',
    'day takeoffs',
    'takeoffs day',
    'take offs day',
    'day t o',
  ),
  nightTakeoffs: count(
    'take-offs at night',
    'night take offs',
    'night takeoffs',
    'takeoffs night',
    'take offs night',
    'night t o',
  ),
  landings: count('landings, all', 'landings', 'ldg', 'ldgs', 'all landings', 'total landings', 'landungen'),
  dayLandings: count('landings by day', 'day landings', 'landings day', 'day ldg', 'ldg day', 'day ldgs'),
  nightLandings: count(
    'landings at night',
    'night landings',
    'landings night',
    'night ldg',
    'ldg night',
    'night ldgs',
  ),
  fullStopLandings: count(
    'full-stop landings, all',
    'full stop landings',
    'full stops',
    'full stop',
    'landings full stop',
    'all full stop landings',
  ),
  dayFullStopLandings: count(
    'full-stop landings by day',
    'day full stop landings',
    'day full stop',
    'day landings full stop',
    'full stop day',
  ),
  nightFullStopLandings: count(
    'full-stop landings at night',
    'night full stop landings',
    'night full stop',
    'night landings full stop',
    'full stop night',
  ),
  approaches: count(
    'instrument approaches',
    'approaches',
    'instrument approaches',
    'app',
    'iaps',
    'number of approaches',
  ),
  holding: flag('holding', 'holding', 'holds', 'hold', 'holding procedures'),
  interceptTrack: flag(
    'intercepting and tracking',
    'intercepting and tracking',
    'intercept and track',
    'tracking',
    'intercepting tracking',
  ),
  remarks: text(
    'remarks',
    2000,
    'remarks',
    'comments',
    'notes',
    'remarks and endorsements',
    'comment',
    'note',
    'bemerkungen',
  ),
};

export const FIELD_NAMES = Object.keys(FIELDS) as ImportField[];

/** How a column of hours is written. */
export const HOURS_FORMS = ['decimal', 'clock', 'either', 'minutes', 'point-clock'] as const;
export type HoursForm = (typeof HOURS_FORMS)[number];
