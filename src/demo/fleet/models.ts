import type { Instant } from '../../rules/index.js';
import { DEMO_CLUB_ID, demoId } from '../ids.js';
import type { ModelRow } from '../rows.js';

/** The six invented models of the fleet. */
export type ModelKey = 'sprig' | 'wicket' | 'almanac' | 'traverse' | 'lindle' | 'gemel';

/** What the club's flying needs to know of a model beyond its row. */
export interface Model {
  key: ModelKey;
  id: string;
  makeModel: string;
  /** Endorsements a pilot in command needs (14 CFR 61.31). */
  endorsements: ('complex' | 'high-performance' | 'tailwheel')[];
  multiEngine: boolean;
  tailwheel: boolean;
  night: boolean;
  ifr: boolean;
  seats: number;
  fuelUsGal: number;
  /** Tachometer hours in an hour between the blocks. */
  tachRatio: number;
  row: Omit<ModelRow, 'club_id' | 'id' | 'recorded_at'>;
}

const BASE: Model['row'] = {
  make_model: '',
  type_designator: '',
  category: 'airplane',
  class: 'single-engine-land',
  type_rating: null,
  engines: 1,
  power_per_engine_hp: 112,
  retractable_gear: false,
  flaps: true,
  controllable_propeller: false,
  tailwheel: false,
  pressurised: false,
  turbine: false,
  transport_category: false,
  service_ceiling_ft: 14_000,
  max_operating_altitude_ft: 14_000,
  max_takeoff_lb: 1670,
  vs1_kcas: 47,
  demonstrated_crosswind_kt: 14,
  usable_fuel_us_gal: 26,
  fuel_burn_us_gal_per_hour: 5.8,
  kinds_of_operation: ['day-vfr', 'night-vfr'],
};

const model = (key: ModelKey, seats: number, tachRatio: number, fields: Partial<Model['row']>): Model => {
  const row = { ...BASE, ...fields };
  const complex = row.retractable_gear && row.flaps && row.controllable_propeller;
  return {
    key,
    id: demoId('model', key),
    makeModel: row.make_model,
    endorsements: [
      ...(complex ? (['complex'] as const) : []),
      ...(row.power_per_engine_hp > 200 ? (['high-performance'] as const) : []),
      ...(row.tailwheel ? (['tailwheel'] as const) : []),
    ],
    multiEngine: row.engines > 1,
    tailwheel: row.tailwheel,
    night: row.kinds_of_operation.includes('night-vfr'),
    ifr: row.kinds_of_operation.includes('ifr'),
    seats,
    fuelUsGal: row.usable_fuel_us_gal,
    tachRatio,
    row,
  };
};

export const MODELS: Record<ModelKey, Model> = {
  sprig: model('sprig', 2, 0.86, { make_model: 'Corvane Sprig 112', type_designator: 'CVS1' }),
  wicket: model('wicket', 2, 0.88, {
    make_model: 'Pellin Wicket 115',
    type_designator: 'PLW1',
    power_per_engine_hp: 115,
    flaps: false,
    tailwheel: true,
    max_takeoff_lb: 1550,
    vs1_kcas: 42,
    demonstrated_crosswind_kt: 10,
    usable_fuel_us_gal: 24,
    fuel_burn_us_gal_per_hour: 5.6,
    kinds_of_operation: ['day-vfr'],
  }),
  almanac: model('almanac', 4, 0.87, {
    make_model: 'Ostrander Almanac 180',
    type_designator: 'OSA8',
    power_per_engine_hp: 180,
    max_takeoff_lb: 2550,
    vs1_kcas: 51,
    demonstrated_crosswind_kt: 15,
    usable_fuel_us_gal: 50,
    fuel_burn_us_gal_per_hour: 9.4,
    kinds_of_operation: ['day-vfr', 'night-vfr', 'ifr'],
  }),
  traverse: model('traverse', 4, 0.88, {
    make_model: 'Ostrander Traverse 230',
    type_designator: 'OST3',
    power_per_engine_hp: 230,
    controllable_propeller: true,
    max_takeoff_lb: 3100,
    vs1_kcas: 56,
    demonstrated_crosswind_kt: 18,
    usable_fuel_us_gal: 84,
    fuel_burn_us_gal_per_hour: 13.2,
    service_ceiling_ft: 18_000,
    max_operating_altitude_ft: 18_000,
    kinds_of_operation: ['day-vfr', 'night-vfr', 'ifr'],
  }),
  // Exactly 200 hp: complex, yet not high performance.
  lindle: model('lindle', 4, 0.87, {
    make_model: 'Corvane Lindle 200R',
    type_designator: 'CVL2',
    power_per_engine_hp: 200,
    retractable_gear: true,
    controllable_propeller: true,
    max_takeoff_lb: 2750,
    vs1_kcas: 55,
    demonstrated_crosswind_kt: 16,
    usable_fuel_us_gal: 60,
    fuel_burn_us_gal_per_hour: 10.4,
    service_ceiling_ft: 16_000,
    max_operating_altitude_ft: 16_000,
    kinds_of_operation: ['day-vfr', 'night-vfr', 'ifr'],
  }),
  gemel: model('gemel', 4, 0.9, {
    make_model: 'Ostrander Gemel 2x180',
    type_designator: 'OSG2',
    class: 'multi-engine-land',
    engines: 2,
    power_per_engine_hp: 180,
    retractable_gear: true,
    controllable_propeller: true,
    max_takeoff_lb: 3800,
    vs1_kcas: 57,
    demonstrated_crosswind_kt: 17,
    usable_fuel_us_gal: 108,
    fuel_burn_us_gal_per_hour: 19,
    service_ceiling_ft: 17_000,
    max_operating_altitude_ft: 17_000,
    kinds_of_operation: ['day-vfr', 'night-vfr', 'ifr'],
  }),
};

/** Rows of the models. */
export const modelRows = (recordedAt: Instant): ModelRow[] =>
  Object.values(MODELS).map(({ id, row }) => ({
    club_id: DEMO_CLUB_ID,
    id,
    ...row,
    recorded_at: recordedAt,
  }));
