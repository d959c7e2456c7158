/** Rows about what flying costs. */
import type { LocalDate } from '../../rules/index.js';
import type { Recorded } from './row.js';

export interface ChargeRateRow extends Recorded {
  aircraft_id: string | null;
  instructor_id: string | null;
  valid_from: LocalDate;
  per_hour_minor: number;
  currency: string;
  basis: 'hobbs' | 'tachometer' | 'clock' | null;
  fuel: 'wet' | 'dry' | null;
  fuel_per_us_gal_minor: number | null;
  set_by: string;
}
