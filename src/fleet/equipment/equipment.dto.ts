import {
  DayField,
  FlagField,
  NumberField,
  Shown,
  TextField,
  WordField,
  WordsField,
} from '../../platform/http/fields.js';
import { PageShape } from '../../platform/http/pages.js';
import { ChangesOf, RecordHead, ViewOf } from '../../platform/http/views.js';
import type { EquipmentKind } from '../../rules/index.js';
import { EQUIPMENT_KINDS } from '../vocabulary.js';
import { EQUIPMENT_BASES, type EquipmentBasis } from './equipment.entity.js';

/** What a piece of equipment says of itself. */
export class NewEquipment {
  @WordField(EQUIPMENT_KINDS)
  kind: EquipmentKind;

  @TextField({ max: 120 })
  name: string;

  @DayField()
  installedOn: string;

  @DayField({ nullable: true, description: 'First day without it' })
  removedOn?: string | null;

  @WordField(EQUIPMENT_BASES, {
    optional: true,
    description:
      "On what ground it is in the aircraft; 'type-design' unless said otherwise. Portable equipment never satisfies a requirement",
  })
  basis?: EquipmentBasis;

  @FlagField({
    optional: true,
    description:
      'Part of the type certification for VFR by day, or on the required-equipment list; false unless said otherwise',
  })
  requiredByTypeDesign?: boolean;

  @WordsField(EQUIPMENT_KINDS, {
    optional: true,
    description: 'Further kinds it does the work of, as a glass panel does',
  })
  satisfies?: EquipmentKind[];

  @TextField({ max: 80, nullable: true })
  partNumber?: string | null;

  @TextField({ max: 80, nullable: true })
  serialNumber?: string | null;

  @NumberField({ max: 5000, nullable: true, description: 'Pounds' })
  weightLb?: number | null;

  @NumberField({ min: -1000, max: 2000, nullable: true, description: 'Inches aft of the datum' })
  armIn?: number | null;

  @TextField({
    max: 200,
    nullable: true,
    description: 'The paper behind its basis: number of the STC, date of the alteration record',
  })
  document?: string | null;
}

/** PATCH of a piece of equipment. */
export class EquipmentChanges extends ChangesOf(NewEquipment) {}

/** A piece of equipment as an answer. */
export class EquipmentView extends ViewOf(NewEquipment) {
  @Shown({ type: 'boolean' })
  portable: boolean;

  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string', format: 'uuid' })
  aircraftId: string;

  @Shown({ type: 'string', format: 'uuid', nullable: true, description: 'The change that installed it' })
  installedByChange: string | null;

  @Shown({ type: 'string', format: 'uuid', nullable: true, description: 'The change that removed it' })
  removedByChange: string | null;

  @Shown({ type: 'integer' })
  rowVersion: number;

  @Shown({ type: 'string', format: 'date-time' })
  recordedAt: RecordHead['recordedAt'];
}

/** A page of equipment. */
export class EquipmentPage extends PageShape {
  @Shown({ type: () => EquipmentView, isArray: true })
  items: EquipmentView[];
}
