/** Rows about hours, inspections and what is wrong. */
import type { Instant, ItemDetail, LocalDate } from '../../rules/index.js';
import type { OfAircraft } from './fleet.js';
import type { Recorded } from './row.js';

export interface MeterReadingRow extends OfAircraft {
  kind: 'hobbs' | 'tachometer';
  shown_tenths: number;
  read_at: Instant;
  source: 'dispatch' | 'coordinator';
  note: string | null;
}
export interface ItemRow extends OfAircraft {
  kind: string;
  title: string;
  reference: string | null;
  scope: 'all' | 'ifr' | 'hire-or-instruction' | 'night' | 'transponder-use' | 'advice';
  calendar_months: number | null;
  plain_months: number | null;
  days: number | null;
  interval_tenths: number | null;
  fixed_due_on: LocalDate | null;
  fixed_due_tenths: number | null;
  tolerance_tenths: number;
  recurring: boolean;
  ferry_prohibited: boolean;
  equipment_id: string | null;
  retired_on: LocalDate | null;
}
export interface ComplianceRow extends Recorded {
  item_id: string;
  done_on: LocalDate;
  done_tenths: number | null;
  due_tenths: number | null;
  detail: ItemDetail | null;
  statement: string;
  signed_by: string;
}
export interface UpgradeWishRow extends OfAircraft {
  title: string;
  shop_days: number;
  worth_hours: number;
  parts_on: LocalDate | null;
  with_annual: boolean;
  done_on: LocalDate | null;
}
export interface SquawkRow extends OfAircraft {
  reported_at: Instant;
  reported_by: string;
  title: string;
  detail: string;
  state: 'reported' | 'grounding' | 'deferred' | 'fixed' | 'no-fault-found';
  closed_at: Instant | null;
  equipment_id: string | null;
  corrective_action: string | null;
  signed_by: string | null;
}
export interface DeferralRow extends Recorded {
  squawk_id: string;
  deferred_on: LocalDate;
  deadline_on: LocalDate | null;
  required_by_type_design: boolean;
  required_by_equipment_list: boolean;
  required_by_directive: boolean;
  removed_or_deactivated: boolean;
  placarded: boolean;
  recorded: boolean;
  no_hazard_determined_by: string;
  equipment_list_item: string | null;
}
export interface DifferencesRow extends OfAircraft {
  title: string;
  since: LocalDate;
  equipment_group: string;
  ended_on: LocalDate | null;
}
