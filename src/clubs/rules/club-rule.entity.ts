import { Column, Entity } from 'typeorm';
import {
  DateColumn,
  FactRow,
  InstantColumn,
  IntegerColumn,
  RecordedRow,
  TextColumn,
} from '../../platform/database/columns.js';

/** `draft`: may be edited. `active`: in force from its day on. `ended`: in force up to, not including, its last day. */
export type ClubRuleState = 'draft' | 'active' | 'ended';

/** One version of a rule that the club wrote itself. */
@Entity('club_rules')
export class ClubRuleRow extends FactRow {
  @TextColumn('code')
  code: string;

  @IntegerColumn('version')
  version: number;

  @TextColumn('title')
  title: string;

  @TextColumn('weight')
  weight: 'club' | 'advice';

  @TextColumn('applies_when')
  appliesWhen: string;

  @TextColumn('requirement')
  requirement: string;

  @TextColumn('message')
  message: string;

  @TextColumn('condition', { nullable: true })
  condition: string | null;

  @TextColumn('document')
  document: string;

  @TextColumn('state', { default: 'draft' })
  state: ClubRuleState;

  @DateColumn('in_force_from', { nullable: true })
  inForceFrom: string | null;

  @DateColumn('in_force_to', { nullable: true })
  inForceTo: string | null;

  @Column({ name: 'created_by', type: 'uuid' })
  createdBy: string;

  @Column({ name: 'activated_by', type: 'uuid', nullable: true })
  activatedBy: string | null;

  @InstantColumn('activated_at', { nullable: true })
  activatedAt: string | null;

  @Column({ name: 'ended_by', type: 'uuid', nullable: true })
  endedBy: string | null;

  @InstantColumn('ended_at', { nullable: true })
  endedAt: string | null;
}

/** What a draft would have changed. Written by decisions/dry-run. */
@Entity('club_rule_dry_runs')
export class ClubRuleDryRunRow extends RecordedRow {
  @Column({ name: 'rule_id', type: 'uuid' })
  ruleId: string;

  /** The draft's row version when it was tried. */
  @IntegerColumn('draft_version')
  draftVersion: number;

  @Column({ name: 'run_by', type: 'uuid' })
  runBy: string;

  @IntegerColumn('looked_at')
  lookedAt: number;

  @IntegerColumn('changed')
  changed: number;

  @Column({ name: 'result', type: 'jsonb' })
  result: object;
}
