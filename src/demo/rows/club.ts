/** Rows of the club itself: airfields and policy. */
import type { Instant, LocalDate } from '../../rules/index.js';
import type { Recorded, Row } from './row.js';

export interface ClubRow extends Row {
  slug: string;
  name: string;
  zone: string;
  jurisdiction: 'US';
  recorded_at: Instant;
}
export interface AirfieldRow extends Recorded {
  code: string;
  name: string;
  latitude_deg: number;
  longitude_deg: number;
  elevation_ft: number;
  zone: string;
}
export interface RunwayRow extends Recorded {
  airfield_id: string;
  designator: string;
  true_heading_deg: number;
  length_ft: number;
  surface: 'paved' | 'grass' | 'gravel' | 'water';
  lit: boolean;
}
export interface PolicyRow extends Recorded {
  parameter_id: string;
  valid_from: LocalDate;
  value: number | boolean | string;
  reference: string;
}
