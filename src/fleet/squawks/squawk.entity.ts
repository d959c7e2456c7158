import { Column, Entity } from 'typeorm';
import { FactRow, InstantColumn, TextColumn } from '../../platform/database/columns.js';
import type { SquawkFact } from '../../rules/index.js';

export type SquawkState = SquawkFact['state'];

/** Something reported wrong with an aircraft. */
@Entity('squawks')
export class Squawk extends FactRow {
  @Column({ name: 'aircraft_id', type: 'uuid' })
  aircraftId: string;

  @InstantColumn('reported_at')
  reportedAt: string;

  @Column({ name: 'reported_by', type: 'uuid' })
  reportedBy: string;

  @TextColumn('title')
  title: string;

  @TextColumn('detail')
  detail: string;

  @TextColumn('state')
  state: SquawkState;

  @InstantColumn('closed_at', { nullable: true })
  closedAt: string | null;

  @Column({ name: 'equipment_id', type: 'uuid', nullable: true })
  equipmentId: string | null;

  @TextColumn('corrective_action', { nullable: true })
  correctiveAction: string | null;

  @TextColumn('signed_by', { nullable: true })
  signedBy: string | null;
}
