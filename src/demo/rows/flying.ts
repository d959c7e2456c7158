/** Rows about flights, sign-offs and what is booked. */
import type { Instant, LocalDate } from '../../rules/index.js';
import type { Recorded } from './row.js';

export interface LogEntryRow extends Recorded {
  member_id: string;
  aircraft_id: string | null;
  model_id: string | null;
  aircraft_words: string;
  category: 'airplane';
  class: string;
  type_rating: string | null;
  tailwheel: boolean;
  departed_at: Instant;
  arrived_at: Instant;
  flown_on: LocalDate;
  from_airfield: string;
  to_airfield: string;
  role: 'pilot-in-command' | 'dual-received' | 'instructor' | 'solo';
  sole_manipulator: boolean;
  takeoffs: number;
  landings: number;
  full_stop_landings: number;
  night_takeoffs: number;
  night_full_stop_landings: number;
  approaches: number;
  holding: boolean;
  intercept_track: boolean;
  device: null;
  total_tenths: number;
  night_tenths: number;
  dual_given_tenths: number;
  cross_country_tenths: number;
  actual_instrument_tenths: number;
  simulated_instrument_tenths: number;
  remarks: string;
}
export interface CheckoutRow extends Recorded {
  member_id: string;
  kind: 'model' | 'differences' | 'annual-check';
  model_id: string | null;
  aircraft_id: string | null;
  signed_on: LocalDate;
  expires_on: LocalDate | null;
  signed_by: string;
  remarks: string;
}
/** Maintenance blocks and club days; flights are proposed apart, since each needs a decision. */
export interface BlockRow extends Recorded {
  kind: 'maintenance' | 'club';
  aircraft_id: string;
  member_id: string;
  during: string;
  status: 'booked';
  expected_tenths: number;
  request: Record<string, unknown>;
  note: string;
}
/** A manoeuvre practised, as judged. */
export interface PracticeRow extends Recorded {
  member_id: string;
  flown_on: LocalDate;
  manoeuvre: string;
  level: 'private';
  seen_by: 'self' | 'instructor';
  instructor_id: string | null;
  recorded_by: string;
  crosswind_kt: number | null;
  night: boolean;
  measured: Record<string, unknown>;
  to_standard: boolean | null;
  verdict: object;
  within: boolean | null;
  note: string;
}
