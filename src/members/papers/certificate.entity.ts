import { Column, Entity } from 'typeorm';
import { ClubRow, DateColumn, TextColumn, TextListColumn } from '../../platform/database/columns.js';
import type { AircraftCategory, AircraftClass, CertificateLevel } from '../../rules/facts/person.js';
import { Paper } from './paper.entity.js';

/** A pilot certificate. */
@Entity('certificates')
export class Certificate extends Paper {
  @TextColumn('level')
  level: CertificateLevel;

  @DateColumn('issued_on')
  issuedOn: string;

  @DateColumn('valid_through', { nullable: true })
  validThrough: string | null;

  @TextListColumn('limitations')
  limitations: string[];
}

/** A rating on a pilot certificate. Which of the last three is set depends on the kind. */
@Entity('certificate_ratings')
export class CertificateRating extends ClubRow {
  @Column({ name: 'certificate_id', type: 'uuid' })
  certificateId: string;

  @TextColumn('kind')
  kind: 'category-class' | 'instrument' | 'type';

  @TextColumn('category', { nullable: true })
  category: AircraftCategory | null;

  @TextColumn('class', { nullable: true })
  class: AircraftClass | null;

  @TextColumn('type_designator', { nullable: true })
  typeDesignator: string | null;
}
