import type { ChangedBooking } from '../parts/changed-bookings.js';

/** Shop visits, wishes, directives, templates, weighings and signers as the page shows them. */
export interface Line {
  id: string;
  kind: 'item' | 'squawk' | 'wish' | 'weighing' | 'other';
  aboutId: string | null;
  title: string;
  outcome: 'done' | 'not-done' | null;
  note: string;
}
export interface WorkOrder {
  id: string;
  aircraftId: string;
  registration: string;
  title: string;
  shop: string;
  state: 'planned' | 'in-work' | 'signed' | 'cancelled';
  from: string | null;
  to: string | null;
  lines: Line[];
  begunAt: string | null;
  cancelledBecause: string | null;
  signedOn: string | null;
  statement: string | null;
  signedBy: string | null;
  checkFlightBecause: string | null;
  checkFlownAt: string | null;
  checkEntry: string | null;
  rowVersion: number;
}
export interface Displaced {
  bookingId: string;
  memberName: string;
  departs: string;
  arrives: string;
}
export interface StepEffects {
  preview: string;
  displaced: Displaced[];
  bookingsJudged: number;
  bookings: ChangedBooking[];
  cautions?: string[];
  caution: string;
}
export interface StepResult extends StepEffects {
  order: WorkOrder;
}
export interface Item {
  id: string;
  title: string;
  kind: string;
  retiredOn: string | null;
}
export interface Wish {
  id: string;
  title: string;
  shopDays: number;
  worthHours: number;
  partsOn: string | null;
  withAnnual: boolean;
  doneOn: string | null;
  rowVersion: number;
}
export interface Signer {
  id: string;
  name: string;
  certificate: string;
  holds: string;
  validFrom: string;
  validThrough: string | null;
}
export interface Standing {
  directiveId: string;
  number: string;
  title: string;
  equipmentId: string | null;
  state: 'applies' | 'unclear' | 'not';
  because: string;
  from: string;
  until: string | null;
  lastDoneOn: string | null;
}
export interface Directive {
  id: string;
  issuer: string;
  number: string;
  title: string;
  effectiveOn: string;
  withdrawnOn: string | null;
  scope: 'all' | 'ifr' | 'night' | 'hire-or-instruction' | 'transponder-use';
  appliesTo: 'aircraft' | 'equipment';
  equipmentKind: string | null;
  modelIds: string[];
  partNumbers: string[];
  serials: { from: string; through: string }[];
  withinDays: number | null;
  withinH: number | null;
  recurring: boolean;
  intervalH: number | null;
  calendarMonths: number | null;
  days: number | null;
  ferryProhibited: boolean;
  supersededBy: string | null;
  rowVersion: number;
}
export interface DirectiveResult extends Omit<StepEffects, 'displaced'> {
  standings: (Standing & { aircraftId: string; registration: string })[];
}
export interface Model {
  id: string;
  makeModel: string;
}
export interface Template {
  code: string;
  id: string | null;
  title: string;
  reference: string | null;
  scope: string;
  calendarMonths: number | null;
  plainMonths: number | null;
  days: number | null;
  intervalH: number | null;
  rowVersion: number | null;
}
export interface Weighing {
  id: string;
  effectiveOn: string;
  emptyWeightLb: number;
  emptyArmIn: number | null;
  source: string;
  voidedAt: string | null;
}
export interface MeterRates {
  stretches: { toReadingId: string; kind: string; from: string; to: string; look: string; says: string }[];
  caution: string;
}

export const STATE_WORDS: Record<WorkOrder['state'], string> = {
  planned: 'Planned',
  'in-work': 'In work',
  signed: 'Signed',
  cancelled: 'Called off',
};
export const HOLDS: Record<string, string> = {
  mechanic: 'mechanic',
  'inspection-authorization': 'mechanic with inspection authorization',
  'repair-station': 'repair station',
  manufacturer: 'manufacturer',
  pilot: 'pilot, preventive maintenance',
};
export const METER_WORDS: Record<string, string> = {
  hobbs: 'Hobbs meter',
  tachometer: 'Tachometer',
  airframe: 'Airframe time',
};
