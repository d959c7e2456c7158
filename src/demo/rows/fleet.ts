/** Rows about models, aircraft and what is in them. */
import type { DistanceFact, EnvelopeFact, LocalDate, StationFact } from '../../rules/index.js';
import type { Recorded } from './row.js';

/** A row about one aircraft. */
export interface OfAircraft extends Recorded {
  aircraft_id: string;
}

export interface ModelRow extends Recorded {
  make_model: string;
  type_designator: string;
  category: 'airplane';
  class: 'single-engine-land' | 'multi-engine-land';
  type_rating: string | null;
  engines: number;
  power_per_engine_hp: number;
  retractable_gear: boolean;
  flaps: boolean;
  controllable_propeller: boolean;
  tailwheel: boolean;
  pressurised: boolean;
  turbine: boolean;
  transport_category: boolean;
  service_ceiling_ft: number;
  max_operating_altitude_ft: number;
  max_takeoff_lb: number;
  vs1_kcas: number;
  demonstrated_crosswind_kt: number;
  usable_fuel_us_gal: number;
  fuel_burn_us_gal_per_hour: number;
  kinds_of_operation: ('day-vfr' | 'night-vfr' | 'ifr')[];
}
export interface AircraftRow extends Recorded {
  registration: string;
  model_id: string;
  home_airfield_id: string;
  seats: number;
  occupants_certificated: number;
  empty_weight_lb: number;
  certificated_after_1996_03_11: boolean;
  altitude_engine: boolean;
  manufactured_on: LocalDate;
  engine_driven_electrical: boolean;
  approved_equipment_list: boolean;
  status: 'in-service' | 'out-of-service';
  instruction_for_hire: boolean;
  carries_for_hire: boolean;
  inspection_meter: 'tachometer';
}
export interface RegistrationRow extends OfAircraft {
  issued_on: LocalDate;
  printed_expiry_on: LocalDate;
  ended_on: LocalDate | null;
}
export interface EquipmentRow extends OfAircraft {
  kind: string;
  name: string;
  installed_on: LocalDate;
  removed_on: LocalDate | null;
  portable: boolean;
  required_by_type_design: boolean;
  satisfies: string[];
  basis: 'type-design' | 'stc' | 'alteration-record' | 'portable';
}

export interface WeighingRow extends OfAircraft {
  effective_on: LocalDate;
  empty_weight_lb: number;
  empty_arm_in: number;
  source: string;
  note: string;
}

/** A sheet of a model. */
interface SheetRow extends Recorded {
  model_id: string;
  aircraft_id: null;
  source: string;
}
export interface LoadingSheetRow extends SheetRow {
  fuel_kind: string;
  max_takeoff_lb: null;
  max_landing_lb: null;
  max_zero_fuel_lb: null;
  stations: StationFact[];
  envelopes: EnvelopeFact[];
}
export interface PerformanceSheetRow extends SheetRow {
  lift_off_kias: number;
  takeoff: DistanceFact;
  landing: DistanceFact;
}
