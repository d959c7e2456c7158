import { Column, Entity } from 'typeorm';
import { DateColumn, FlagColumn, IntegerColumn, TextColumn } from '../../platform/database/columns.js';
import type { ItemKind } from '../../rules/index.js';
import { RecurringRow } from './recurring-row.js';

/** Something that has to be done to an aircraft again and again, or once. Whichever interval comes first counts. */
@Entity('airworthiness_items')
export class AirworthinessItem extends RecurringRow {
  @Column({ name: 'aircraft_id', type: 'uuid' })
  aircraftId: string;

  @TextColumn('kind')
  kind: ItemKind;

  @TextColumn('title')
  title: string;

  @TextColumn('reference', { nullable: true })
  reference: string | null;

  @DateColumn('fixed_due_on', { nullable: true })
  fixedDueOn: string | null;

  /** Hours at which it is due whatever was done before: a directive's first compliance. */
  @IntegerColumn('fixed_due_tenths', { nullable: true })
  fixedDueTenths: number | null;

  @IntegerColumn('tolerance_tenths')
  toleranceTenths: number;

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
