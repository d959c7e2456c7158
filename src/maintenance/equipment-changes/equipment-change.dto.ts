import {
  DayField,
  FlagField,
  HoursField,
  IdField,
  IdsField,
  InstantField,
  NumberField,
  PartField,
  PartsField,
  TextField,
  TextsField,
  WholeField,
  WordField,
  WordsField,
} from '../../platform/http/fields.js';
import { EQUIPMENT_BASES, type EquipmentBasis } from '../../fleet/equipment/equipment.entity.js';
import { EQUIPMENT_KINDS, ITEM_KINDS, ITEM_SCOPES, METER_KINDS } from '../../fleet/vocabulary.js';
import type { EquipmentKind, ItemFact, ItemKind, MeterKind } from '../../rules/index.js';

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
export class BegunItem {
  @WordField(ITEM_KINDS)
  kind: ItemKind;

  @TextField({ max: 200 })
  title: string;

  @TextField({ max: 200, nullable: true })
  reference?: string | null;

  @WordField(ITEM_SCOPES, { description: 'Flights it binds' })
  scope: ItemFact['scope'];

  @WholeField({ min: 1, max: 600, nullable: true, description: 'To the end of the month' })
  calendarMonths?: number | null;

  @WholeField({ min: 1, max: 600, nullable: true, description: 'To the same day of the month' })
  plainMonths?: number | null;

  @WholeField({ min: 1, max: 20_000, nullable: true })
  days?: number | null;

  @HoursField({ nullable: true, description: 'Hours of the inspection meter, more than 0' })
  intervalH?: number | null;

  @FlagField({
    optional: true,
    description:
      'Its first interval runs from the installation; otherwise it is due until it is done. True unless said otherwise',
  })
  countsFromInstallation?: boolean;
}

/** A piece that is put in. */
export class InstalledPart {
  @WordField(EQUIPMENT_KINDS)
  kind: EquipmentKind;

  @TextField({ max: 120 })
  name: string;

  @WordField(EQUIPMENT_BASES, {
    description: 'Portable things are carried, not installed: they never satisfy a requirement',
  })
  basis: EquipmentBasis;

  @TextField({ max: 200, nullable: true, description: 'Number of the STC, date of the alteration record' })
  document?: string | null;

  @TextField({ max: 80, nullable: true })
  partNumber?: string | null;

  @TextField({ max: 80, nullable: true })
  serialNumber?: string | null;

  @FlagField({ optional: true })
  requiredByTypeDesign?: boolean;

  @WordsField(EQUIPMENT_KINDS, { optional: true, description: 'Further kinds it does the work of' })
  satisfies?: EquipmentKind[];

  @NumberField({ max: 5000, nullable: true, description: 'Pounds' })
  weightLb?: number | null;

  @NumberField({ min: -1000, max: 2000, nullable: true, description: 'Inches aft of the datum' })
  armIn?: number | null;

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
export class ChangeReading {
  @WordField(METER_KINDS)
  kind: MeterKind;

  @HoursField()
  shownH: number;

  @InstantField({ optional: true, description: 'Now unless given' })
  readAt?: string;
}

/** Scales instead of sums. */
export class ChangeWeighing {
  @NumberField({ min: 1, max: 1_000_000, description: 'Pounds' })
  emptyWeightLb: number;

  @NumberField({ min: -1000, max: 2000, nullable: true, description: 'Inches aft of the datum' })
  emptyArmIn?: number | null;
}

/** What a member has to be shown. */
export class ChangeDifference {
  @TextField({ max: 200 })
  title: string;

  @TextField({ max: 120, description: "What kind of equipment changed, in words: 'electronic panel'" })
  equipmentGroup: string;
}

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
