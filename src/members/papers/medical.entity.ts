import { Column, Entity } from 'typeorm';
import { DateColumn, FlagColumn, TextListColumn } from '../../platform/database/columns.js';
import { Paper } from './paper.entity.js';

/** A medical certificate: class and dates only, nothing medical. */
@Entity('medicals')
export class Medical extends Paper {
  @Column({ name: 'class', type: 'smallint' })
  class: 1 | 2 | 3 | 4;

  @DateColumn('exam_on')
  examOn: string;

  @TextListColumn('limitations')
  limitations: string[];

  @DateColumn('withdrawn_on', { nullable: true })
  withdrawnOn: string | null;
}

/** What stands behind BasicMed; null means not on record. */
@Entity('basic_med')
export class BasicMed extends Paper {
  @DateColumn('exam_on', { nullable: true })
  examOn: string | null;

  @DateColumn('course_on', { nullable: true })
  courseOn: string | null;

  @DateColumn('licence_valid_through', { nullable: true })
  licenceValidThrough: string | null;

  @FlagColumn('held_medical_after_2006_07_14', { nullable: true })
  heldMedicalAfter20060714: boolean | null;

  @FlagColumn('last_application_denied', { nullable: true })
  lastApplicationDenied: boolean | null;

  @FlagColumn('last_certificate_revoked_or_suspended', { nullable: true })
  lastCertificateRevokedOrSuspended: boolean | null;
}
