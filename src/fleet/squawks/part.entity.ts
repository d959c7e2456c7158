import { Column, Entity } from 'typeorm';
import { IntegerColumn, RealColumn, RecordedRow, TextColumn } from '../../platform/database/columns.js';

/** A part that one repair of a squawk used. */
@Entity('squawk_parts')
export class SquawkPart extends RecordedRow {
  @Column({ name: 'squawk_id', type: 'uuid' })
  squawkId: string;

  /** Which closing of the squawk, from 1. */
  @IntegerColumn('closing')
  closing: number;

  @TextColumn('part_number')
  partNumber: string;

  @TextColumn('serial_number', { nullable: true })
  serialNumber: string | null;

  @TextColumn('name')
  name: string;

  @RealColumn('quantity')
  quantity: number;
}
