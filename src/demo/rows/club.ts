/** Rows of the club itself: airfields, policy and rules of its own. */
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
  slope_percent: number;
}
export interface PolicyRow extends Recorded {
  parameter_id: string;
  valid_from: LocalDate;
  value: number | boolean | string;
  reference: string;
}
export interface ClubRuleRow extends Recorded {
  code: string;
  version: number;
  title: string;
  weight: 'club' | 'advice';
  applies_when: string;
  requirement: string;
  message: string;
  condition: string | null;
  document: string;
  state: 'draft' | 'active';
  in_force_from: LocalDate | null;
  created_by: string;
  activated_by: string | null;
  activated_at: Instant | null;
}
