import { Column, Entity } from 'typeorm';
import { FactRow, InstantColumn, IntegerColumn, TextColumn } from '../../platform/database/columns.js';
import type { SquawkFact } from '../../rules/index.js';

/** A duplicate is closed, and lives on in the squawk it is kept in: the rules never see it. */
export type SquawkState = SquawkFact['state'] | 'duplicate';

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

  /** Certificate of who signed, as entered. */
  @TextColumn('signed_certificate', { nullable: true })
  signedCertificate: string | null;

  @Column({ name: 'booking_id', type: 'uuid', nullable: true })
  bookingId: string | null;

  @Column({ name: 'duplicate_of', type: 'uuid', nullable: true })
  duplicateOf: string | null;

  /** How often it was closed: parts used belong to one closing. */
  @IntegerColumn('closings')
  closings: number;

  /** What it was when it was closed. */
  @TextColumn('closed_from', { nullable: true })
  closedFrom: 'reported' | 'grounding' | 'deferred' | null;

  @TextColumn('reopened_because', { nullable: true })
  reopenedBecause: string | null;
}
