import { ApiProperty } from '@nestjs/swagger';
import { DayField, WordField } from '../../platform/http/fields.js';
import { ITEM_KINDS, ITEM_SCOPES, METER_KINDS, EQUIPMENT_KINDS } from '../../fleet/vocabulary.js';
import { EQUIPMENT_BASES, type EquipmentBasis } from '../../fleet/equipment/equipment.entity.js';
import type { EquipmentKind, ItemDetail, ItemFact, ItemKind, MeterKind } from '../../rules/index.js';

export const PAPERS = ['a4', 'letter'] as const;
export type Paper = (typeof PAPERS)[number];

/** Of which day. */
export class StatusQuery {
  @DayField({
    optional: true,
    description: 'As of the end of this day in the club’s zone; today unless given, and no day to come',
  })
  on?: string;
}

/** Of which day, and on what. */
export class PrintQuery extends StatusQuery {
  @WordField(PAPERS, { optional: true, description: 'Letter in the United States, else A4, unless given' })
  paper?: Paper;
}

const nullableText = { type: String, nullable: true } as const;
const nullableDay = { type: String, format: 'date', nullable: true } as const;
const nullableNumber = { type: Number, nullable: true } as const;

export class StatusAircraft {
  @ApiProperty({ format: 'uuid' })
  id: string;
  @ApiProperty()
  registration: string;
  @ApiProperty()
  makeModel: string;
  @ApiProperty(nullableText)
  serialNumber: string | null;
  @ApiProperty(nullableDay)
  manufacturedOn: string | null;
  @ApiProperty({ enum: METER_KINDS, description: 'The meter that inspections count by' })
  inspectionMeter: MeterKind;
}

export class StatusTime {
  @ApiProperty({ enum: METER_KINDS })
  kind: MeterKind;
  @ApiProperty({ description: 'What the meter showed' })
  shownH: number;
  @ApiProperty({ description: 'Running total over all meters' })
  totalH: number;
  @ApiProperty({ format: 'date-time' })
  readAt: string;
  @ApiProperty()
  countsForInspections: boolean;
}

export class StatusLast {
  @ApiProperty({ format: 'date' })
  doneOn: string;
  @ApiProperty(nullableNumber)
  doneH: number | null;
  @ApiProperty({ ...nullableNumber, description: 'Hours at which it had been due, when it was done late' })
  dueH: number | null;
  @ApiProperty()
  statement: string;
  @ApiProperty()
  signedBy: string;
  @ApiProperty({ type: 'object', additionalProperties: true, nullable: true })
  detail: ItemDetail | null;
}

export class StatusOnPiece {
  @ApiProperty()
  name: string;
  @ApiProperty(nullableText)
  serialNumber: string | null;
}

export const STATUS_STATES = ['overdue', 'never-done', 'unknown', 'running', 'settled'] as const;

export class StatusItem {
  @ApiProperty({ format: 'uuid' })
  id: string;
  @ApiProperty({ enum: ITEM_KINDS })
  kind: ItemKind;
  @ApiProperty()
  title: string;
  @ApiProperty(nullableText)
  reference: string | null;
  @ApiProperty({ enum: ITEM_SCOPES, description: 'Flights it binds' })
  scope: ItemFact['scope'];
  @ApiProperty({ type: 'integer', nullable: true, description: 'To the end of the month' })
  calendarMonths: number | null;
  @ApiProperty({ type: 'integer', nullable: true, description: 'To the same day of the month' })
  plainMonths: number | null;
  @ApiProperty({ type: 'integer', nullable: true })
  days: number | null;
  @ApiProperty(nullableNumber)
  intervalH: number | null;
  @ApiProperty(nullableDay)
  fixedDueOn: string | null;
  @ApiProperty(nullableNumber)
  fixedDueH: number | null;
  @ApiProperty()
  toleranceH: number;
  @ApiProperty()
  recurring: boolean;
  @ApiProperty()
  ferryProhibited: boolean;
  @ApiProperty(nullableDay)
  since: string | null;
  @ApiProperty(nullableDay)
  retiredOn: string | null;
  @ApiProperty({ type: StatusOnPiece, nullable: true, description: 'The piece of equipment it hangs on' })
  equipment: StatusOnPiece | null;
  @ApiProperty({ type: StatusLast, nullable: true })
  last: StatusLast | null;
  @ApiProperty({ enum: STATUS_STATES })
  state: (typeof STATUS_STATES)[number];
  @ApiProperty({ ...nullableDay, description: 'Last day it is good by its date' })
  nextDueOn: string | null;
  @ApiProperty({ ...nullableNumber, description: 'Hours of the inspection meter up to which it is good' })
  nextDueH: number | null;
  @ApiProperty({ type: 'integer', nullable: true, description: 'Negative: overdue' })
  leftDays: number | null;
  @ApiProperty({ ...nullableNumber, description: 'By the last reading; negative: overdue' })
  leftH: number | null;
}

export class StatusPiece {
  @ApiProperty({ format: 'uuid' })
  id: string;
  @ApiProperty({ enum: EQUIPMENT_KINDS })
  kind: EquipmentKind;
  @ApiProperty()
  name: string;
  @ApiProperty({ enum: EQUIPMENT_BASES })
  basis: EquipmentBasis;
  @ApiProperty(nullableText)
  document: string | null;
  @ApiProperty(nullableText)
  partNumber: string | null;
  @ApiProperty(nullableText)
  serialNumber: string | null;
  @ApiProperty({ ...nullableNumber, description: 'Pounds' })
  weightLb: number | null;
  @ApiProperty({ ...nullableNumber, description: 'Inches aft of the datum' })
  armIn: number | null;
  @ApiProperty()
  requiredByTypeDesign: boolean;
  @ApiProperty({ enum: EQUIPMENT_KINDS, isArray: true })
  satisfies: EquipmentKind[];
  @ApiProperty({ format: 'date' })
  installedOn: string;
  @ApiProperty(nullableDay)
  removedOn: string | null;
}

export class StatusWeight {
  @ApiProperty({ ...nullableDay, description: 'Null: as entered with the aircraft, of no known day' })
  effectiveOn: string | null;
  @ApiProperty({ description: 'Pounds' })
  emptyWeightLb: number;
  @ApiProperty({ ...nullableNumber, description: 'Inches aft of the datum' })
  emptyArmIn: number | null;
  @ApiProperty({ ...nullableNumber, description: 'Pound-inches' })
  emptyMomentLbIn: number | null;
  @ApiProperty({ enum: ['weighing', 'computed', 'as-entered'] })
  source: 'weighing' | 'computed' | 'as-entered';
  @ApiProperty()
  note: string;
  @ApiProperty({ ...nullableNumber, description: 'Pounds, by the type design' })
  maxTakeoffLb: number | null;
  @ApiProperty({ ...nullableNumber, description: 'Maximum take-off weight less empty weight, pounds' })
  usefulLoadLb: number | null;
}

export class StatusSquawk {
  @ApiProperty({ format: 'uuid' })
  id: string;
  @ApiProperty()
  title: string;
  @ApiProperty()
  detail: string;
  @ApiProperty({ enum: ['reported', 'grounding', 'deferred'] })
  state: 'reported' | 'grounding' | 'deferred';
  @ApiProperty({ format: 'date-time' })
  reportedAt: string;
  @ApiProperty(nullableDay)
  deferredOn: string | null;
  @ApiProperty({ ...nullableDay, description: 'By when it has to be mended' })
  deadlineOn: string | null;
  @ApiProperty({ type: [String], description: 'Steps of the deferral not on record yet' })
  openSteps: string[];
}

/** An aircraft's current status on one page. */
export class StatusView {
  @ApiProperty({ format: 'date', description: 'As of the end of this day in the club’s zone' })
  on: string;
  @ApiProperty({ description: 'Zone in which days are counted' })
  zone: string;
  @ApiProperty({ type: StatusAircraft })
  aircraft: StatusAircraft;
  @ApiProperty({ type: [StatusTime] })
  times: StatusTime[];
  @ApiProperty({ type: [StatusItem], description: 'Inspections, checks and the club’s own items' })
  items: StatusItem[];
  @ApiProperty({ type: [StatusItem], description: 'Airworthiness directives' })
  directives: StatusItem[];
  @ApiProperty({ type: [StatusPiece] })
  equipment: StatusPiece[];
  @ApiProperty({ type: StatusWeight, nullable: true })
  weight: StatusWeight | null;
  @ApiProperty({ type: [StatusSquawk], description: 'Open and deferred' })
  squawks: StatusSquawk[];
  @ApiProperty({ type: [String], description: 'What to know before anybody relies on this page' })
  cautions: string[];
  @ApiProperty({ description: 'The usual caution' })
  caution: string;
  @ApiProperty()
  printedBy: string;
  @ApiProperty({ format: 'date-time' })
  printedAt: string;
}
