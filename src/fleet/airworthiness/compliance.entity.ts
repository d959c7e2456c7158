import { Column, Entity } from 'typeorm';
import {
  DateColumn,
  FactRow,
  InstantColumn,
  IntegerColumn,
  TextColumn,
} from '../../platform/database/columns.js';
import type { ItemDetail } from '../../rules/index.js';

/** An item done once: signed, never edited; a wrong one is voided and stays. */
@Entity('compliances')
export class Compliance extends FactRow {
  @Column({ name: 'item_id', type: 'uuid' })
  itemId: string;

  @DateColumn('done_on')
  doneOn: string;

  /** Hours of the inspection meter, in tenths. */
  @IntegerColumn('done_tenths', { nullable: true })
  doneTenths: number | null;

  /** Hours at which it had been due, when it was done late. */
  @IntegerColumn('due_tenths', { nullable: true })
  dueTenths: number | null;

  @Column({ name: 'detail', type: 'jsonb', nullable: true })
  detail: ItemDetail | null;

  /** The statement in the maintenance record. */
  @TextColumn('statement')
  statement: string;

  @TextColumn('signed_by')
  signedBy: string;

  @InstantColumn('voided_at', { nullable: true })
  voidedAt: string | null;
}
