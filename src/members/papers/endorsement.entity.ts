import { Column, Entity } from 'typeorm';
import { DateColumn, TextColumn, TextListColumn } from '../../platform/database/columns.js';
import type { EndorsementKind } from '../../rules/facts/person.js';
import { Paper } from './paper.entity.js';

/** An instructor's endorsement in a member's log. */
@Entity('endorsements')
export class Endorsement extends Paper {
  @TextColumn('kind')
  kind: EndorsementKind;

  @DateColumn('endorsed_on')
  endorsedOn: string;

  @TextColumn('make_model', { nullable: true })
  makeModel: string | null;

  @TextListColumn('airfields')
  airfields: string[];

  @DateColumn('expires_on', { nullable: true })
  expiresOn: string | null;

  /** The club's instructor who gave it; null when someone outside the club did. */
  @Column({ name: 'given_by', type: 'uuid', nullable: true })
  givenBy: string | null;
}
