import { Column, Entity } from 'typeorm';
import {
  DateColumn,
  FactRow,
  FlagColumn,
  InstantColumn,
  TextColumn,
} from '../../platform/database/columns.js';

export const REPORT_KINDS = ['hazard', 'occurrence'] as const;
export const REPORT_STATES = ['open', 'closed'] as const;

/** A hazard somebody saw, or something that happened. What was told never changes. */
@Entity('safety_reports')
export class SafetyReport extends FactRow {
  @TextColumn('kind')
  kind: (typeof REPORT_KINDS)[number];

  @DateColumn('happened_on')
  happenedOn: string;

  @Column({ name: 'aircraft_id', type: 'uuid', nullable: true })
  aircraftId: string | null;

  @TextColumn('place', { nullable: true })
  place: string | null;

  @TextColumn('title')
  title: string;

  @TextColumn('narrative')
  narrative: string;

  @FlagColumn('confidential')
  confidential: boolean;

  /** Null of a confidential report: nobody can read what is not there. */
  @Column({ name: 'reporter_id', type: 'uuid', nullable: true })
  reporterId: string | null;

  @TextColumn('receipt_digest', { nullable: true, select: false })
  receiptDigest: string | null;

  @TextColumn('state')
  state: (typeof REPORT_STATES)[number];

  @TextColumn('finding', { nullable: true })
  finding: string | null;

  @InstantColumn('closed_at', { nullable: true })
  closedAt: string | null;

  @Column({ name: 'closed_by', type: 'uuid', nullable: true })
  closedBy: string | null;
}
