import { Column } from 'typeorm';
import { FactRow, InstantColumn } from '../../platform/database/columns.js';

/** What every paper of a member has: whose it is, and which officer saw the original. */
export abstract class Paper extends FactRow {
  @Column({ name: 'member_id', type: 'uuid', update: false })
  memberId: string;

  /** The member who verified it; null until then, and again after its owner edits it. */
  @Column({ name: 'verified_by', type: 'uuid', nullable: true })
  verifiedBy: string | null;

  @InstantColumn('verified_at', { nullable: true })
  verifiedAt: string | null;
}
