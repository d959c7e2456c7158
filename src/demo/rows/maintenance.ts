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
  directive_id: string | null;
  since: LocalDate | null;
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
export interface DirectiveRow extends Recorded {
  issuer: string;
  number: string;
  title: string;
  effective_on: LocalDate;
  applies_to: 'aircraft';
  part_numbers: string[];
  serials: [];
  scope: 'all';
  calendar_months: number | null;
  plain_months: number | null;
  days: null;
  interval_tenths: number | null;
  recurring: boolean;
  within_days: number | null;
  ferry_prohibited: boolean;
}
export interface DirectiveModelRow {
  club_id: string;
  directive_id: string;
  model_id: string;
}
export interface SignerRow extends Recorded {
  name: string;
  certificate: string;
  holds: 'mechanic' | 'inspection-authorization' | 'repair-station';
  valid_from: LocalDate;
  valid_through: LocalDate | null;
}
export interface WorkOrderRow extends OfAircraft {
  title: string;
  shop: string;
  state: 'planned';
  booking_id: string;
  made_by: string;
}
export interface WorkLineRow extends Recorded {
  order_id: string;
  aircraft_id: string;
  kind: 'item' | 'squawk' | 'wish';
  item_id: string | null;
  squawk_id: string | null;
  wish_id: string | null;
  title: string;
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
