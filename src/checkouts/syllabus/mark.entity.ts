import { Column, Entity } from 'typeorm';
import { DateColumn, FlagColumn, RecordedRow, TextColumn } from '../../platform/database/columns.js';

export const OUTCOMES = ['signed', 'not-yet'] as const;

/** An item as an instructor saw it. Never edited; a correction is another record. */
@Entity('checkout_marks')
export class CheckoutMark extends RecordedRow {
  @Column({ name: 'member_id', type: 'uuid' })
  memberId: string;

  @Column({ name: 'item_id', type: 'uuid' })
  itemId: string;

  /** The change of an aircraft it is for. */
  @Column({ name: 'difference_id', type: 'uuid', nullable: true })
  differenceId: string | null;

  @TextColumn('outcome')
  outcome: (typeof OUTCOMES)[number];

  @DateColumn('marked_on')
  markedOn: string;

  @Column({ name: 'signed_by', type: 'uuid' })
  signedBy: string;

  @TextColumn('note')
  note: string;

  @Column({ name: 'corrects', type: 'uuid', nullable: true })
  corrects: string | null;

  @TextColumn('because', { nullable: true })
  because: string | null;

  @FlagColumn('withdraws')
  withdraws: boolean;
}
