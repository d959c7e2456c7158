import { Entity } from 'typeorm';
import { DateColumn, TextColumn } from '../../platform/database/columns.js';
import type { RatingKind } from '../../rules/facts/person.js';
import { Paper } from './paper.entity.js';

/** A rating as endorsed on a European licence, with the day it ends. */
@Entity('ratings')
export class Rating extends Paper {
  @TextColumn('kind')
  kind: RatingKind;

  /** Which type, or which language. */
  @TextColumn('designator', { nullable: true })
  designator: string | null;

  @DateColumn('issued_on')
  issuedOn: string;

  @DateColumn('valid_through', { nullable: true })
  validThrough: string | null;
}
