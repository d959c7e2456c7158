import { Entity } from 'typeorm';
import { FactRow, FlagColumn, IntegerColumn, TextColumn } from '../../../platform/database/columns.js';
import type { EquipmentKind, ItemFact, ItemKind } from '../../../rules/index.js';

/** An item a club puts on aircraft after aircraft. */
@Entity('item_templates')
export class ItemTemplate extends FactRow {
  @TextColumn('kind')
  kind: Exclude<ItemKind, 'directive'>;

  @TextColumn('title')
  title: string;

  @TextColumn('reference', { nullable: true })
  reference: string | null;

  @TextColumn('scope')
  scope: ItemFact['scope'];

  @IntegerColumn('calendar_months', { nullable: true })
  calendarMonths: number | null;

  @IntegerColumn('plain_months', { nullable: true })
  plainMonths: number | null;

  @IntegerColumn('days', { nullable: true })
  days: number | null;

  @IntegerColumn('interval_tenths', { nullable: true })
  intervalTenths: number | null;

  @IntegerColumn('tolerance_tenths')
  toleranceTenths: number;

  @FlagColumn('recurring')
  recurring: boolean;

  /** It hangs on a piece of this kind, where the aircraft has one. */
  @TextColumn('hangs_on', { nullable: true })
  hangsOn: EquipmentKind | null;
}
