import { Column, Entity } from 'typeorm';
import { IntegerColumn, RecordedRow, TextColumn } from '../../../platform/database/columns.js';
import type { MediaType } from '../../../platform/images/image.js';

/** What is known of a photo; the photo itself is in the store. */
@Entity('attachments')
export class Attachment extends RecordedRow {
  @Column({ name: 'squawk_id', type: 'uuid' })
  squawkId: string;

  @TextColumn('media_type')
  mediaType: MediaType;

  @IntegerColumn('size_bytes')
  sizeBytes: number;

  @TextColumn('sha256')
  sha256: string;

  @Column({ name: 'added_by', type: 'uuid' })
  addedBy: string;
}
