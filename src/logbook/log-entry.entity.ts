import { Column, Entity } from 'typeorm';
import {
  DateColumn,
  FactRow,
  FlagColumn,
  InstantColumn,
  IntegerColumn,
  TextColumn,
} from '../platform/database/columns.js';
import type { AircraftCategory, AircraftClass, LogFact } from '../rules/facts/person.js';

/** One flight of one person. Hours in tenths. */
@Entity('log_entries')
export class LogEntry extends FactRow {
  @Column({ name: 'member_id', type: 'uuid', update: false })
  memberId: string;

  @Column({ name: 'aircraft_id', type: 'uuid', nullable: true })
  aircraftId: string | null;

  @Column({ name: 'model_id', type: 'uuid', nullable: true })
  modelId: string | null;

  /** The aircraft in words as flown, so that a later change of the aircraft does not rewrite the log. */
  @TextColumn('aircraft_words')
  aircraftWords: string;

  @TextColumn('category')
  category: AircraftCategory;

  @TextColumn('class')
  class: AircraftClass;

  @TextColumn('type_rating', { nullable: true })
  typeRating: string | null;

  @FlagColumn('tailwheel')
  tailwheel: boolean;

  @InstantColumn('departed_at')
  departedAt: string;

  @InstantColumn('arrived_at')
  arrivedAt: string;

  /** False: only the day is known, and the times are the latest it allows. Files without times give such entries. */
  @FlagColumn('times_known', { default: true })
  timesKnown: boolean;

  /** The file it was taken over from. */
  @Column({ name: 'import_id', type: 'uuid', nullable: true, update: false })
  importId: string | null;

  /** The flight of the club that it came from when the aircraft was returned. */
  @Column({ name: 'booking_id', type: 'uuid', nullable: true, update: false })
  bookingId: string | null;

  /** The date at the place where the flight began. */
  @DateColumn('flown_on')
  flownOn: string;

  @TextColumn('from_airfield')
  fromAirfield: string;

  @TextColumn('to_airfield')
  toAirfield: string;

  @TextColumn('role')
  role: LogFact['role'];

  @FlagColumn('sole_manipulator')
  soleManipulator: boolean;

  @IntegerColumn('takeoffs')
  takeoffs: number;

  @IntegerColumn('landings')
  landings: number;

  @IntegerColumn('full_stop_landings')
  fullStopLandings: number;

  @IntegerColumn('night_takeoffs')
  nightTakeoffs: number;

  @IntegerColumn('night_full_stop_landings')
  nightFullStopLandings: number;

  @IntegerColumn('approaches')
  approaches: number;

  @FlagColumn('holding')
  holding: boolean;

  @FlagColumn('intercept_track')
  interceptTrack: boolean;

  @TextColumn('device', { nullable: true })
  device: LogFact['device'];

  @IntegerColumn('total_tenths')
  totalTenths: number;

  @IntegerColumn('night_tenths')
  nightTenths: number;

  @IntegerColumn('dual_given_tenths')
  dualGivenTenths: number;

  @IntegerColumn('cross_country_tenths')
  crossCountryTenths: number;

  @IntegerColumn('actual_instrument_tenths')
  actualInstrumentTenths: number;

  @IntegerColumn('simulated_instrument_tenths')
  simulatedInstrumentTenths: number;

  @TextColumn('remarks')
  remarks: string;

  /** Set when the entry no longer counts; it stays on record. */
  @InstantColumn('voided_at', { nullable: true })
  voidedAt: string | null;
}
