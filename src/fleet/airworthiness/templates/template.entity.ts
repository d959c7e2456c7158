import { Entity } from 'typeorm';
import { IntegerColumn, TextColumn } from '../../../platform/database/columns.js';
import type { EquipmentKind, ItemKind } from '../../../rules/index.js';
import { RecurringRow } from '../recurring-row.js';

/** An item a club puts on aircraft after aircraft. */
@Entity('item_templates')
export class ItemTemplate extends RecurringRow {
  @TextColumn('kind')
  kind: Exclude<ItemKind, 'directive'>;

  @TextColumn('title')
  title: string;

  @TextColumn('reference', { nullable: true })
  reference: string | null;

  @IntegerColumn('tolerance_tenths')
  toleranceTenths: number;

  /** It hangs on a piece of this kind, where the aircraft has one. */
  @TextColumn('hangs_on', { nullable: true })
  hangsOn: EquipmentKind | null;
}
