import { Column, Entity } from 'typeorm';
import { InstantColumn, IntegerColumn, RecordedRow, TextColumn } from '../../platform/database/columns.js';
import type { MeterKind } from '../../rules/index.js';

/** Who wrote a reading, and whether it is the first one of a new meter. */
export type ReadingSource = 'dispatch' | 'coordinator' | 'replacement';

/** One reading of one meter, in tenths of an hour. Append-only. */
@Entity('meter_readings')
export class MeterReading extends RecordedRow {
  @Column({ name: 'aircraft_id', type: 'uuid' })
  aircraftId: string;

  @TextColumn('kind')
  kind: MeterKind;

  /** What the meter shows. */
  @IntegerColumn('shown_tenths')
  shownTenths: number;

  /** What to add for the meters before this one; negative when the new meter already showed more. */
  @IntegerColumn('offset_tenths')
  offsetTenths: number;

  /** Running total, made by the database: shown plus offset. */
  @IntegerColumn('total_tenths', { insert: false, update: false })
  totalTenths: number;

  @InstantColumn('read_at')
  readAt: string;

  @TextColumn('source')
  source: ReadingSource;

  @TextColumn('note', { nullable: true })
  note: string | null;
}
