/** Rows about whom the aircraft's insurance covers, and what officers have seen of members. */
import type { CheckFact, LocalDate, PilotMinimums } from '../../rules/index.js';
import type { OfAircraft } from './fleet.js';
import type { Recorded, Row } from './row.js';

export interface InsuranceTermsRow extends OfAircraft {
  source: string;
  valid_from: LocalDate;
  valid_through: LocalDate;
  minimums: PilotMinimums;
  recorded_by: string;
}
export interface InsuranceNamedPilotRow extends Row {
  terms_id: string;
  member_id: string;
  recorded_at: string;
}
export interface MemberCheckRow extends Recorded {
  member_id: string;
  kind: CheckFact['kind'];
  seen_on: LocalDate;
  expires_on: LocalDate | null;
  seen_by: string;
}
