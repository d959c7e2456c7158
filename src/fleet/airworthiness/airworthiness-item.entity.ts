import { Column, Entity } from 'typeorm';
import {
  DateColumn,
  FactRow,
  FlagColumn,
  IntegerColumn,
  TextColumn,
} from '../../platform/database/columns.js';
import type { ItemFact, ItemKind } from '../../rules/index.js';

/** Something that has to be done to an aircraft again and again, or once. Whichever interval comes first counts. */
@Entity('airworthiness_items')
export class AirworthinessItem extends FactRow {
  @Column({ name: 'aircraft_id', type: 'uuid' })
  aircraftId: string;

  @TextColumn('kind')
  kind: ItemKind;

  @TextColumn('title')
  title: string;

  @TextColumn('reference', { nullable: true })
  reference: string | null;

  /** Flights it binds. */
  @TextColumn('scope')
  scope: ItemFact['scope'];

  /** To the end of the month. */
  @IntegerColumn('calendar_months', { nullable: true })
  calendarMonths: number | null;

  /** To the same day of the month. */
  @IntegerColumn('plain_months', { nullable: true })
  plainMonths: number | null;

  @IntegerColumn('days', { nullable: true })
  days: number | null;

  /** Hours of the inspection meter, in tenths. */
  @IntegerColumn('interval_tenths', { nullable: true })
  intervalTenths: number | null;

  @DateColumn('fixed_due_on', { nullable: true })
  fixedDueOn: string | null;

  /** Hours at which it is due whatever was done before: a directive's first compliance. */
  @IntegerColumn('fixed_due_tenths', { nullable: true })
  fixedDueTenths: number | null;

  @IntegerColumn('tolerance_tenths')
  toleranceTenths: number;

  @FlagColumn('recurring')
  recurring: boolean;

  @FlagColumn('ferry_prohibited')
  ferryProhibited: boolean;

  /** The piece of equipment it hangs on; it goes away with it. */
  @Column({ name: 'equipment_id', type: 'uuid', nullable: true })
  equipmentId: string | null;

  /** The directive it comes from and is kept in step with; null: entered by hand. */
  @Column({ name: 'directive_id', type: 'uuid', nullable: true })
  directiveId: string | null;

  /** First day it is asked for; null: always. */
  @DateColumn('since', { nullable: true })
  since: string | null;

  @DateColumn('retired_on', { nullable: true })
  retiredOn: string | null;
}
