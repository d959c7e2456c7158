import { Column, Entity } from 'typeorm';
import { DateColumn, FactRow } from '../../platform/database/columns.js';

/** A time when a pilot or an instructor certificate gave no privileges; exactly one of the two ids is set. */
@Entity('suspensions')
export class SuspensionRow extends FactRow {
  @Column({ name: 'certificate_id', type: 'uuid', nullable: true, update: false })
  certificateId: string | null;

  @Column({ name: 'instructor_certificate_id', type: 'uuid', nullable: true, update: false })
  instructorCertificateId: string | null;

  @DateColumn('suspended_from')
  suspendedFrom: string;

  /** Last day of the suspension; null while it is open. */
  @DateColumn('suspended_to', { nullable: true })
  suspendedTo: string | null;
}
