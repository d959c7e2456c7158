import { Column, Entity, PrimaryColumn } from 'typeorm';
import { DateColumn, InstantColumn, RecordedRow, TextColumn } from '../../platform/database/columns.js';
import type { CheckFact } from '../../rules/facts/person.js';

/** That an officer saw or looked into something about a member: written once, never edited. */
@Entity('member_checks')
export class MemberCheck extends RecordedRow {
  @Column({ name: 'member_id', type: 'uuid' })
  memberId: string;

  @TextColumn('kind')
  kind: CheckFact['kind'];

  @DateColumn('seen_on')
  seenOn: string;

  @DateColumn('expires_on', { nullable: true })
  expiresOn: string | null;

  @Column({ name: 'seen_by', type: 'uuid' })
  seenBy: string;
}

/** Takes a check back. */
@Entity('member_check_voids')
export class MemberCheckVoid {
  @PrimaryColumn({ name: 'club_id', type: 'uuid' })
  clubId: string;

  @PrimaryColumn({ name: 'check_id', type: 'uuid' })
  checkId: string;

  @Column({ name: 'voided_by', type: 'uuid' })
  voidedBy: string;

  @TextColumn('reason')
  reason: string;

  @InstantColumn('recorded_at', { insert: false, update: false })
  recordedAt: string;
}
