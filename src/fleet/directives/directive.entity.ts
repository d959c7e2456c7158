import { Column, Entity } from 'typeorm';
import {
  DateColumn,
  FlagColumn,
  IntegerColumn,
  RecordedRow,
  TextColumn,
  TextListColumn,
} from '../../platform/database/columns.js';
import type { EquipmentKind } from '../../rules/index.js';
import { RecurringRow } from '../airworthiness/recurring-row.js';

/** Serial numbers a directive names, both ends within. */
export interface SerialRange {
  from: string;
  through: string;
}

export const APPLIES_TO = ['aircraft', 'equipment'] as const;

/** An airworthiness directive (14 CFR part 39), and what it applies to. */
@Entity('directives')
export class Directive extends RecurringRow {
  @TextColumn('issuer')
  issuer: string;

  @TextColumn('number')
  number: string;

  @TextColumn('title')
  title: string;

  @DateColumn('effective_on')
  effectiveOn: string;

  @TextColumn('applies_to')
  appliesTo: (typeof APPLIES_TO)[number];

  @TextColumn('equipment_kind', { nullable: true })
  equipmentKind: EquipmentKind | null;

  /** Empty: any. */
  @TextListColumn('part_numbers')
  partNumbers: string[];

  /** Empty: any. */
  @Column({ name: 'serials', type: 'jsonb' })
  serials: SerialRange[];

  /** First compliance, days after it took effect. With neither of the two it is due before the next flight. */
  @IntegerColumn('within_days', { nullable: true })
  withinDays: number | null;

  /** The same in hours of the inspection meter, tenths. */
  @IntegerColumn('within_tenths', { nullable: true })
  withinTenths: number | null;

  @FlagColumn('ferry_prohibited')
  ferryProhibited: boolean;

  /** The one it takes the place of. */
  @Column({ name: 'supersedes', type: 'uuid', nullable: true })
  supersedes: string | null;

  @DateColumn('withdrawn_on', { nullable: true })
  withdrawnOn: string | null;
}

/** What somebody looked up: whether a directive applies to one aircraft or piece. The newest counts. */
@Entity('directive_findings')
export class DirectiveFinding extends RecordedRow {
  @Column({ name: 'directive_id', type: 'uuid' })
  directiveId: string;

  @Column({ name: 'aircraft_id', type: 'uuid' })
  aircraftId: string;

  @Column({ name: 'equipment_id', type: 'uuid', nullable: true })
  equipmentId: string | null;

  @FlagColumn('applies')
  applies: boolean;

  @TextColumn('because')
  because: string;

  @TextColumn('signed_by')
  signedBy: string;

  @Column({ name: 'found_by', type: 'uuid' })
  foundBy: string;
}
