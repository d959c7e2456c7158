import { Column, Entity } from 'typeorm';
import { RealColumn } from '../../platform/database/columns.js';
import type { DistanceFact } from '../../rules/index.js';
import { SheetRow } from './sheet-row.js';

/** Take-off and landing tables with their factors. */
@Entity('performance_sheets')
export class PerformanceSheet extends SheetRow {
  /** Airspeed at lift-off, indicated. */
  @RealColumn('lift_off_kias', { nullable: true })
  liftOffKias: number | null;

  @Column({ name: 'takeoff', type: 'jsonb' })
  takeoff: DistanceFact;

  @Column({ name: 'landing', type: 'jsonb' })
  landing: DistanceFact;
}
