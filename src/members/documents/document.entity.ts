import { Column, Entity } from 'typeorm';
import { IntegerColumn, RecordedRow, TextColumn } from '../../platform/database/columns.js';
import type { MediaType } from '../../platform/images/image.js';

export type DocumentType = MediaType | 'application/pdf';

/** What is known of a scan of a paper; the scan itself is read by statement only. One of the ids of papers is set. */
@Entity('documents')
export class PaperDocument extends RecordedRow {
  @Column({ name: 'member_id', type: 'uuid' })
  memberId: string;

  @Column({ name: 'certificate_id', type: 'uuid', nullable: true })
  certificateId: string | null;

  @Column({ name: 'instructor_certificate_id', type: 'uuid', nullable: true })
  instructorCertificateId: string | null;

  @Column({ name: 'medical_id', type: 'uuid', nullable: true })
  medicalId: string | null;

  @Column({ name: 'basic_med_id', type: 'uuid', nullable: true })
  basicMedId: string | null;

  @Column({ name: 'review_id', type: 'uuid', nullable: true })
  reviewId: string | null;

  @Column({ name: 'endorsement_id', type: 'uuid', nullable: true })
  endorsementId: string | null;

  @Column({ name: 'rating_id', type: 'uuid', nullable: true })
  ratingId: string | null;

  @Column({ name: 'paper_id', type: 'uuid', insert: false, update: false })
  paperId: string;

  @TextColumn('media_type')
  mediaType: DocumentType;

  @IntegerColumn('size_bytes')
  sizeBytes: number;

  @TextColumn('sha256')
  sha256: string;

  @Column({ name: 'added_by', type: 'uuid' })
  addedBy: string;
}
