import { Column, Entity } from 'typeorm';
import { FactRow, TextColumn } from '../../platform/database/columns.js';

export const LINE_KINDS = ['item', 'squawk', 'wish', 'weighing', 'other'] as const;
export type LineKind = (typeof LINE_KINDS)[number];
export const OUTCOMES = ['done', 'not-done'] as const;
export type Outcome = (typeof OUTCOMES)[number];

/** One thing to be done on a visit to the shop. */
@Entity('work_lines')
export class WorkLine extends FactRow {
  @Column({ name: 'order_id', type: 'uuid' })
  orderId: string;

  @Column({ name: 'aircraft_id', type: 'uuid' })
  aircraftId: string;

  @TextColumn('kind')
  kind: LineKind;

  @Column({ name: 'item_id', type: 'uuid', nullable: true })
  itemId: string | null;

  @Column({ name: 'squawk_id', type: 'uuid', nullable: true })
  squawkId: string | null;

  @Column({ name: 'wish_id', type: 'uuid', nullable: true })
  wishId: string | null;

  @TextColumn('title')
  title: string;

  /** Null until the work is signed. */
  @TextColumn('outcome', { nullable: true })
  outcome: Outcome | null;

  @TextColumn('note')
  note: string;
}
