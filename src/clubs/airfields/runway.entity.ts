import { Column, Entity } from 'typeorm';
import {
  FactRow,
  FlagColumn,
  IntegerColumn,
  RealColumn,
  TextColumn,
} from '../../platform/database/columns.js';

/** What a runway is made of. */
export const SURFACES = ['paved', 'grass', 'gravel', 'water'] as const;
export type Surface = (typeof SURFACES)[number];

/** One direction of a runway; the other end is a row of its own. */
@Entity('runways')
export class Runway extends FactRow {
  @Column({ name: 'airfield_id', type: 'uuid' })
  airfieldId: string;

  /** As painted: '09', '27L'. */
  @TextColumn('designator')
  designator: string;

  @RealColumn('true_heading_deg')
  trueHeadingDeg: number;

  @IntegerColumn('length_ft')
  lengthFt: number;

  @TextColumn('surface')
  surface: Surface;

  @FlagColumn('lit')
  lit: boolean;

  /** Percent, up in the runway's direction positive; null: not known. */
  @RealColumn('slope_percent', { nullable: true })
  slopePercent: number | null;
}
