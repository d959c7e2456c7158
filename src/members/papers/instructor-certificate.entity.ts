import { Entity } from 'typeorm';
import { DateColumn, TextListColumn } from '../../platform/database/columns.js';
import type { InstructorFact } from '../../rules/facts/person.js';
import { Paper } from './paper.entity.js';

/** A flight instructor certificate. */
@Entity('instructor_certificates')
export class InstructorCertificate extends Paper {
  @DateColumn('issued_on')
  issuedOn: string;

  @TextListColumn('ratings')
  ratings: InstructorFact['ratings'];

  /** Newest recent-experience event (14 CFR 61.197). */
  @DateColumn('recent_experience_on', { nullable: true })
  recentExperienceOn: string | null;

  /** End date printed on certificates issued before 2024-12-01. */
  @DateColumn('printed_end_on', { nullable: true })
  printedEndOn: string | null;
}
