import { Column, Entity, PrimaryColumn } from 'typeorm';
import { InstantColumn, TextColumn } from '../../platform/database/columns.js';

/** Takes a wrong reading back. Append-only, as readings are: nothing is deleted. */
@Entity('meter_reading_voids')
export class MeterReadingVoid {
  @PrimaryColumn({ name: 'club_id', type: 'uuid' })
  clubId: string;

  @PrimaryColumn({ name: 'reading_id', type: 'uuid' })
  readingId: string;

  @TextColumn('reason')
  reason: string;

  @Column({ name: 'voided_by', type: 'uuid' })
  voidedBy: string;

  @InstantColumn('recorded_at', { insert: false, update: false })
  recordedAt: string;
}
