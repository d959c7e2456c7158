import { Column, Entity } from 'typeorm';
import {
  DateColumn,
  FactRow,
  FlagColumn,
  RealColumn,
  TextColumn,
  TextListColumn,
} from '../../platform/database/columns.js';
import type { EquipmentKind } from '../../rules/index.js';

/** On what ground a piece of equipment is in the aircraft. */
export const EQUIPMENT_BASES = ['type-design', 'stc', 'alteration-record', 'portable'] as const;
export type EquipmentBasis = (typeof EQUIPMENT_BASES)[number];

/** A piece of equipment, from the day it was installed to the day it was removed. */
@Entity('equipment')
export class Equipment extends FactRow {
  @Column({ name: 'aircraft_id', type: 'uuid' })
  aircraftId: string;

  @TextColumn('kind')
  kind: EquipmentKind;

  @TextColumn('name')
  name: string;

  @DateColumn('installed_on')
  installedOn: string;

  @DateColumn('removed_on', { nullable: true })
  removedOn: string | null;

  /** Portable equipment never satisfies a requirement. */
  @FlagColumn('portable')
  portable: boolean;

  @FlagColumn('required_by_type_design')
  requiredByTypeDesign: boolean;

  /** Further kinds it does the work of: a glass panel is airspeed indicator, altimeter and more. */
  @TextListColumn('satisfies')
  satisfies: EquipmentKind[];

  @TextColumn('basis')
  basis: EquipmentBasis;

  @TextColumn('part_number', { nullable: true })
  partNumber: string | null;

  @TextColumn('serial_number', { nullable: true })
  serialNumber: string | null;

  @RealColumn('weight_lb', { nullable: true })
  weightLb: number | null;

  /** Inches aft of the datum. */
  @RealColumn('arm_in', { nullable: true })
  armIn: number | null;

  /** The paper behind its basis: number of the STC, date of the alteration record. */
  @TextColumn('document', { nullable: true })
  document: string | null;

  @Column({ name: 'installed_by_change', type: 'uuid', nullable: true })
  installedByChange: string | null;

  @Column({ name: 'removed_by_change', type: 'uuid', nullable: true })
  removedByChange: string | null;
}
