import { Entity } from 'typeorm';
import { DateColumn, FlagColumn, IntegerColumn, TextColumn } from '../../platform/database/columns.js';
import type { AircraftCategory, ReviewKind } from '../../rules/facts/person.js';
import { Paper } from './paper.entity.js';

/** A flight review, or an event that may stand for one. */
@Entity('reviews')
export class Review extends Paper {
  @TextColumn('kind')
  kind: ReviewKind;

  @DateColumn('reviewed_on')
  reviewedOn: string;

  @IntegerColumn('ground_tenths', { nullable: true })
  groundTenths: number | null;

  @IntegerColumn('flight_tenths', { nullable: true })
  flightTenths: number | null;

  @TextColumn('category', { nullable: true })
  category: AircraftCategory | null;

  @FlagColumn('endorsed_as_review')
  endorsedAsReview: boolean;
}
