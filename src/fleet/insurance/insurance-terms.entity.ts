import { Column, Entity, PrimaryColumn } from 'typeorm';
import { DateColumn, FactRow, InstantColumn, TextColumn } from '../../platform/database/columns.js';
import type { PilotMinimums } from '../../rules/facts/insurance.js';

/** The terms on which an aircraft is insured: entered once, ended early or taken back, never changed. */
@Entity('insurance_terms')
export class InsuranceTerms extends FactRow {
  @Column({ name: 'aircraft_id', type: 'uuid' })
  aircraftId: string;

  @TextColumn('source')
  source: string;

  @DateColumn('valid_from')
  validFrom: string;

  @DateColumn('valid_through')
  validThrough: string;

  /** Null: nobody but the pilots named is covered. */
  @Column({ name: 'minimums', type: 'jsonb', nullable: true })
  minimums: PilotMinimums | null;

  @Column({ name: 'recorded_by', type: 'uuid' })
  recordedBy: string;

  @TextColumn('ended_because', { nullable: true })
  endedBecause: string | null;

  @InstantColumn('voided_at', { nullable: true })
  voidedAt: string | null;
}

/** A pilot named in the terms. */
@Entity('insurance_named_pilots')
export class InsuranceNamedPilot {
  @PrimaryColumn({ name: 'club_id', type: 'uuid' })
  clubId: string;

  @PrimaryColumn({ name: 'terms_id', type: 'uuid' })
  termsId: string;

  @PrimaryColumn({ name: 'member_id', type: 'uuid' })
  memberId: string;
}
