import {
  DayField,
  FlagField,
  HoursField,
  IdField,
  InstantField,
  NoteField,
  Shown,
  TextField,
  WholeField,
  WordField,
} from '../platform/http/fields.js';
import { ChangesOf, ViewOf } from '../platform/http/views.js';
import type { AircraftCategory, AircraftClass, LogFact } from '../rules/facts/person.js';
import { DEVICES, LOG_ROLES } from './words.js';
import { AIRCRAFT_CATEGORIES, AIRCRAFT_CLASSES } from '../members/vocabulary.js';

const FROM_AIRCRAFT = 'Comes from the aircraft or model when one is named; otherwise needed';
const CODE = { max: 40, example: 'XLF' };
const COUNT = { max: 200 };

/** One flight of one person. */
export class LogEntryDto {
  @IdField({ nullable: true, description: "The club's aircraft, for flights in one" })
  aircraftId?: string | null;

  @IdField({ nullable: true, description: "The club's model, for flights in another aircraft of it" })
  modelId?: string | null;

  @TextField({ optional: true, max: 120, description: FROM_AIRCRAFT, example: 'Wren 180, N-0001' })
  aircraftWords?: string;

  @WordField(AIRCRAFT_CATEGORIES, { optional: true, description: FROM_AIRCRAFT })
  category?: AircraftCategory;

  @WordField(AIRCRAFT_CLASSES, { optional: true, description: FROM_AIRCRAFT })
  class?: AircraftClass;

  @TextField({ nullable: true, max: 12, description: 'Type designator where a type rating is required' })
  typeRating?: string | null;

  @FlagField({ optional: true, description: FROM_AIRCRAFT })
  tailwheel?: boolean;

  @InstantField({ description: 'Off blocks' })
  departedAt: string;

  @InstantField({ description: 'On blocks' })
  arrivedAt: string;

  @DayField({
    optional: true,
    description: 'Date at the place of departure; worked out when the club knows the airfield',
  })
  flownOn?: string;

  @TextField(CODE)
  fromAirfield: string;

  @TextField(CODE)
  toAirfield: string;

  @WordField(LOG_ROLES)
  role: LogFact['role'];

  @FlagField({ description: 'Sole manipulator of the controls (14 CFR 61.57)' })
  soleManipulator: boolean;

  @WholeField(COUNT)
  takeoffs: number;

  @WholeField({ ...COUNT, description: 'All landings, full stop or not' })
  landings: number;

  @WholeField({ ...COUNT, description: 'Of the landings, those to a full stop' })
  fullStopLandings: number;

  @WholeField({
    ...COUNT,
    description: 'Of the take-offs, from one hour after sunset to one hour before sunrise',
  })
  nightTakeoffs: number;

  @WholeField({
    ...COUNT,
    description: 'Of the full-stop landings, from one hour after sunset to one hour before sunrise',
  })
  nightFullStopLandings: number;

  @WholeField({ ...COUNT, optional: true, description: 'Instrument approaches' })
  approaches?: number;

  @FlagField({ optional: true, description: 'Holding procedures flown' })
  holding?: boolean;

  @FlagField({ optional: true, description: 'Courses intercepted and tracked by electronic navigation' })
  interceptTrack?: boolean;

  @WordField(DEVICES, {
    nullable: true,
    description: 'For time in a simulator or training device instead of an aircraft',
  })
  device?: LogFact['device'];

  @HoursField()
  totalH: number;

  @HoursField({ optional: true })
  nightH?: number;

  @HoursField({ optional: true, description: 'Instruction given' })
  dualGivenH?: number;

  @HoursField({
    optional: true,
    description: 'Of the total, in a flight that includes a landing elsewhere (14 CFR 61.1(b))',
  })
  crossCountryH?: number;

  @HoursField({ optional: true, description: 'Of the total, by instruments in actual conditions' })
  actualInstrumentH?: number;

  @HoursField({
    optional: true,
    description: 'Of the total, by instruments under a view-limiting device or in a training device',
  })
  simulatedInstrumentH?: number;

  @NoteField({ optional: true, max: 2000 })
  remarks?: string;
}

/** Changes to an entry; what is left out stays. */
export class LogEntryChanges extends ChangesOf(LogEntryDto) {}

/** An entry as the API shows it. */
export class LogEntryView extends ViewOf(LogEntryDto) {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string', format: 'uuid' })
  memberId: string;

  @Shown({
    type: 'boolean',
    description:
      'false: the file it came from gave no times; those here are the latest the day allows, and giving both replaces them',
  })
  timesKnown: boolean;

  @Shown({ type: 'string', format: 'uuid', nullable: true, description: 'The import it came with' })
  importId: string | null;

  @Shown({
    type: 'string',
    format: 'uuid',
    nullable: true,
    description: 'The flight whose return wrote it; null for an entry made by hand or out of a file',
  })
  bookingId: string | null;

  @Shown({ type: 'string', format: 'date-time', nullable: true, description: 'Set when it no longer counts' })
  voidedAt: string | null;

  @Shown({ type: 'string', format: 'date-time' })
  recordedAt: string;

  @Shown({ type: 'integer' })
  rowVersion: number;
}
