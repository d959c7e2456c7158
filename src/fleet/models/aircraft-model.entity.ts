import { Entity } from 'typeorm';
import {
  FactRow,
  FlagColumn,
  IntegerColumn,
  RealColumn,
  TextColumn,
  TextListColumn,
} from '../../platform/database/columns.js';
import type { AircraftCategory, AircraftClass, AircraftType } from '../../rules/index.js';

/** A make and model, as its type design says. Null means the club has not entered it, never "none". */
@Entity('aircraft_models')
export class AircraftModel extends FactRow {
  @TextColumn('make_model')
  makeModel: string;

  @TextColumn('type_designator')
  typeDesignator: string;

  @TextColumn('category')
  category: AircraftCategory;

  @TextColumn('class')
  class: AircraftClass;

  @TextColumn('type_rating', { nullable: true })
  typeRating: string | null;

  @IntegerColumn('engines')
  engines: number;

  @IntegerColumn('power_per_engine_hp', { nullable: true })
  powerPerEngineHp: number | null;

  @FlagColumn('retractable_gear')
  retractableGear: boolean;

  @FlagColumn('flaps')
  flaps: boolean;

  @FlagColumn('controllable_propeller')
  controllablePropeller: boolean;

  @FlagColumn('tailwheel')
  tailwheel: boolean;

  @FlagColumn('pressurised')
  pressurised: boolean;

  @FlagColumn('turbine')
  turbine: boolean;

  @FlagColumn('transport_category')
  transportCategory: boolean;

  @IntegerColumn('service_ceiling_ft', { nullable: true })
  serviceCeilingFt: number | null;

  @IntegerColumn('max_operating_altitude_ft', { nullable: true })
  maxOperatingAltitudeFt: number | null;

  @IntegerColumn('max_takeoff_lb', { nullable: true })
  maxTakeoffLb: number | null;

  /** Stall speed, clean, calibrated. */
  @RealColumn('vs1_kcas', { nullable: true })
  vs1Kcas: number | null;

  @RealColumn('demonstrated_crosswind_kt', { nullable: true })
  demonstratedCrosswindKt: number | null;

  @RealColumn('usable_fuel_us_gal', { nullable: true })
  usableFuelUsGal: number | null;

  @RealColumn('fuel_burn_us_gal_per_hour', { nullable: true })
  fuelBurnUsGalPerHour: number | null;

  @TextListColumn('kinds_of_operation')
  kindsOfOperation: AircraftType['kindsOfOperation'];
}
