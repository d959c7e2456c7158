import { PickType } from '@nestjs/swagger';
import { ComplianceDetail } from '../../fleet/airworthiness/compliance.dto.js';
import { NewReading } from '../../fleet/meters/meter.dto.js';
import { PartUsed } from '../../fleet/squawks/parts.dto.js';
import {
  DayField,
  FlagField,
  HoursField,
  IdField,
  NoteField,
  PartField,
  PartsField,
  TextField,
  WordField,
} from '../../platform/http/fields.js';
import { ChangeWeighing, NewEquipmentChange } from '../equipment-changes/equipment-change.dto.js';
import { OUTCOMES, type Outcome } from './work-line.entity.js';

/** How one line ended. */
export class LineResult {
  @IdField()
  lineId: string;

  @WordField(OUTCOMES)
  outcome: Outcome;

  @NoteField({ optional: true, max: 2000, description: 'What was found; why it was not done' })
  note?: string;

  @TextField({
    max: 2000,
    nullable: true,
    description:
      'Of an item: its own entry in the maintenance record; the statement of the visit unless given',
  })
  statement?: string | null;

  @DayField({
    nullable: true,
    description: 'Of an item: the day it was done; the day of the signature unless given',
  })
  doneOn?: string | null;

  @HoursField({
    nullable: true,
    description: 'Of an item: what the inspection meter stood at; as read at the end unless given',
  })
  doneH?: number | null;

  @PartField(() => ComplianceDetail, { nullable: true })
  detail?: ComplianceDetail | null;

  @TextField({ max: 2000, nullable: true, description: 'Of a squawk: what was done about it' })
  correctiveAction?: string | null;

  @PartsField(() => PartUsed, { optional: true, max: 40, description: 'Of a squawk: parts used' })
  parts?: PartUsed[];
}

/** What the meters show at the end. */
export class ClosingReading extends PickType(NewReading, [
  'kind',
  'shownH',
  'readAt',
  'confirmJump',
] as const) {}

/** Equipment taken out and put in on the visit; signed with it. */
export class VisitChange extends PickType(NewEquipmentChange, [
  ...(['title', 'documents', 'removes', 'installs', 'endsItems', 'difference'] as const),
]) {}

/** The approval for return to service, and all that is recorded with it. */
export class ReturnToService {
  @IdField({ description: 'Of those on record as entitled to sign' })
  signerId: string;

  @DayField({ nullable: true, description: 'The day the signature bears; today unless given' })
  signedOn?: string | null;

  @TextField({ max: 4000, description: 'The statement in the maintenance record' })
  statement: string;

  @PartsField(() => ClosingReading, { max: 3, description: 'The meter that inspections count by among them' })
  readings: ClosingReading[];

  @PartsField(() => LineResult, { max: 60, description: 'Each line of the visit, once' })
  lines: LineResult[];

  @PartField(() => VisitChange, { nullable: true })
  equipmentChange?: VisitChange | null;

  @PartField(() => ChangeWeighing, { nullable: true, description: 'The aircraft was weighed' })
  weighing?: ChangeWeighing | null;

  @FlagField({
    description:
      'The work may have changed how it flies or works in flight (14 CFR 91.407(b)): nobody but required crew until a check flight',
  })
  checkFlightNeeded: boolean;

  @TextField({ max: 500, nullable: true, description: 'What makes it necessary' })
  checkFlightBecause?: string | null;

  @TextField({
    optional: true,
    max: 64,
    description: 'Of the preview that was looked at: refused when it would do something else by now',
  })
  preview?: string;
}
