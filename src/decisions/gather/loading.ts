import type { AircraftFacts } from '../../rules/index.js';
import { MISSING } from '../../rules/explain/record-words.js';
import { date, newestFact, object } from './sql.js';

/** An aircraft's own sheet before its model's. */
const ownOrModels = (table: string): string =>
  `${table} t WHERE t.club_id = a.club_id AND (t.aircraft_id = a.id OR t.model_id = a.model_id)
     ORDER BY t.aircraft_id NULLS LAST LIMIT 1`;

/** The greatest take-off weight: of the aircraft's own sheet, of its model's sheet, of its model. Over `aircraft_models k`. */
export const MAX_TAKEOFF_LB = `coalesce((SELECT t.max_takeoff_lb FROM ${ownOrModels('loading_sheets')}), k.max_takeoff_lb)`;

/** How the aircraft is loaded and what runway it needs, over `aircraft a`. */
export const LOADING_SUBJECTS: Record<'weighing' | 'loading' | 'performance', string> = {
  weighing: newestFact(
    object({
      id: 't.id',
      on: date('t.effective_on'),
      emptyWeightLb: 't.empty_weight_lb',
      emptyArmIn: 't.empty_arm_in',
      source: 't.source',
    }),
    `weighings t WHERE t.club_id = a.club_id AND t.aircraft_id = a.id AND t.voided_at IS NULL
       ORDER BY t.effective_on DESC, t.id DESC LIMIT 1`,
    MISSING.weighing,
  ),
  loading: newestFact(
    object({
      id: 't.id',
      source: 't.source',
      fuelKind: 't.fuel_kind',
      maxLandingLb: 't.max_landing_lb',
      maxZeroFuelLb: 't.max_zero_fuel_lb',
      stations: 't.stations',
      envelopes: 't.envelopes',
    }),
    ownOrModels('loading_sheets'),
    MISSING.loading,
  ),
  performance: newestFact(
    object({
      id: 't.id',
      source: 't.source',
      liftOffKias: 't.lift_off_kias',
      takeoff: 't.takeoff',
      landing: 't.landing',
    }),
    ownOrModels('performance_sheets'),
    MISSING.performance,
  ),
} satisfies Partial<Record<keyof AircraftFacts, string>>;
