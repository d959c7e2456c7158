import { PickType } from '@nestjs/swagger';
import { NewItem } from '../../fleet/airworthiness/item.dto.js';
import { NewDifference } from '../../fleet/differences/differences.dto.js';
import { NewEquipment } from '../../fleet/equipment/equipment.dto.js';
import { NewReading } from '../../fleet/meters/meter.dto.js';
import { WeighingFigures } from '../../fleet/weighings/weighing.dto.js';
import {
  DayField,
  FlagField,
  IdField,
  IdsField,
  NumberField,
  PartField,
  PartsField,
  TextField,
  TextsField,
  WordField,
} from '../../platform/http/fields.js';
import { EQUIPMENT_BASES, type EquipmentBasis } from '../../fleet/equipment/equipment.entity.js';

/** A piece that is taken out. */
export class RemovedPart {
  @IdField()
  equipmentId: string;

  @NumberField({ max: 5000, nullable: true, description: 'Pounds; as recorded with the piece unless given' })
  weightLb?: number | null;

  @NumberField({
    min: -1000,
    max: 2000,
    nullable: true,
    description: 'Inches aft of the datum; as recorded unless given',
  })
  armIn?: number | null;

  @FlagField({ optional: true, description: 'A mechanic found its weight negligible' })
  negligible?: boolean;
}

/** Something to be done again and again because a piece is there. */
export class BegunItem extends PickType(NewItem, [
  ...(['kind', 'title', 'reference', 'scope', 'calendarMonths', 'plainMonths', 'days', 'intervalH'] as const),
]) {
  @FlagField({
    optional: true,
    description:
      'Its first interval runs from the installation; otherwise it is due until it is done. True unless said otherwise',
  })
  countsFromInstallation?: boolean;
}

/** A piece that is put in. */
export class InstalledPart extends PickType(NewEquipment, [
  ...(['kind', 'name', 'document', 'partNumber', 'serialNumber'] as const),
  ...(['requiredByTypeDesign', 'satisfies', 'weightLb', 'armIn'] as const),
]) {
  @WordField(EQUIPMENT_BASES, {
    description: 'Portable things are carried, not installed: they never satisfy a requirement',
  })
  basis: EquipmentBasis;

  @FlagField({ optional: true, description: 'A mechanic found its weight negligible' })
  negligible?: boolean;

  @PartsField(() => BegunItem, {
    optional: true,
    max: 10,
    description: 'What has to be done because it is there',
  })
  items?: BegunItem[];
}

/** What a meter showed when the work was done. */
export class ChangeReading extends PickType(NewReading, ['kind', 'shownH', 'readAt'] as const) {}

/** Scales instead of sums. */
export class ChangeWeighing extends PickType(WeighingFigures, ['emptyWeightLb', 'emptyArmIn'] as const) {}

/** What a member has to be shown. */
export class ChangeDifference extends PickType(NewDifference, ['title', 'equipmentGroup'] as const) {}

/** A change of equipment, as it was done. */
export class NewEquipmentChange {
  @TextField({ max: 200 })
  title: string;

  @DayField({ description: 'Today or earlier' })
  doneOn: string;

  @TextField({ max: 4000, description: 'The entry in the maintenance record' })
  statement: string;

  @TextField({
    max: 200,
    description: 'Name and certificate of who signed; kept as entered, it grants no authority',
  })
  signedBy: string;

  @TextsField({ optional: true, description: 'Papers: alteration record, STC, invoice numbers' })
  documents?: string[];

  @PartsField(() => RemovedPart, { max: 40 })
  removes: RemovedPart[];

  @PartsField(() => InstalledPart, { max: 40 })
  installs: InstalledPart[];

  @IdsField({ optional: true, description: 'Items that end besides those that hang on what is removed' })
  endsItems?: string[];

  @PartsField(() => ChangeReading, { optional: true, max: 3 })
  readings?: ChangeReading[];

  @PartField(() => ChangeWeighing, { nullable: true, description: 'The aircraft was weighed afterwards' })
  weighing?: ChangeWeighing | null;

  @PartField(() => ChangeDifference, { nullable: true, description: 'Members have to be shown it' })
  difference?: ChangeDifference | null;

  @TextField({
    optional: true,
    max: 64,
    description: 'Of the preview that was looked at: refused when the change would do something else by now',
  })
  preview?: string;
}

/** Why a change is taken back. */
export class TakeBack {
  @TextField({ max: 500, pattern: /\S.{8,}\S/s, says: 'at least 10 characters' })
  reason: string;
}
