import { Column, Entity } from 'typeorm';
import {
  DateColumn,
  FactRow,
  InstantColumn,
  RealColumn,
  TextColumn,
} from '../../platform/database/columns.js';

/** How an empty weight was found. */
export const WEIGHING_SOURCES = ['weighing', 'computed', 'equipment-change'] as const;
export type WeighingSource = (typeof WEIGHING_SOURCES)[number];

/** Empty weight and its arm from a day on; of one day the newest entry that is not void counts. */
@Entity('weighings')
export class Weighing extends FactRow {
  @Column({ name: 'aircraft_id', type: 'uuid' })
  aircraftId: string;

  @DateColumn('effective_on')
  effectiveOn: string;

  @RealColumn('empty_weight_lb')
  emptyWeightLb: number;

  /** Inches aft of the datum; null while the club does not know it. */
  @RealColumn('empty_arm_in', { nullable: true })
  emptyArmIn: number | null;

  @TextColumn('source')
  source: WeighingSource;

  @Column({ name: 'change_id', type: 'uuid', nullable: true })
  changeId: string | null;

  @TextColumn('note')
  note: string;

  @InstantColumn('voided_at', { nullable: true })
  voidedAt: string | null;
}
