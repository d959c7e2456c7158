import { Injectable } from '@nestjs/common';
import type { SignedIn } from '../../accounts/current-user.js';
import { Clock } from '../../platform/clock.js';
import { findRecord } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { MEMBERS, memberView } from '../member-rows.js';
import type { MemberExport } from './record.dto.js';
import { RECORDS } from './record-tables.js';

/** A member's own data, taken out. */
@Injectable()
export class ExportService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** Everything on record about the member, as of one moment; the audit log notes that it was taken. */
  export(by: SignedIn): Promise<MemberExport> {
    const { clubId, memberId: id } = by;
    return this.db.run(
      clubId,
      async (em) => {
        const member = await memberView(em, await findRecord(em, MEMBERS, { clubId, id }));
        const [account]: Record<string, unknown>[] = await em.query(
          'SELECT email, recorded_at, locked_until FROM accounts WHERE club_id = $1 AND member_id = $2',
          [clubId, id],
        );
        const records: Record<string, unknown[]> = {};
        for (const [name, rows] of Object.entries(RECORDS)) {
          const found: { row: unknown }[] = await em.query(
            `SELECT to_jsonb(t) - 'club_id' - 'content' AS row FROM (${rows}) t ORDER BY 1`,
            [clubId, id],
          );
          records[name] = found.map(({ row }) => row);
        }
        await em.query(
          `INSERT INTO audit_log (club_id, actor_id, action, table_name, row_id) VALUES ($1, $2, 'export', 'members', $3)`,
          [clubId, by.memberId, id],
        );
        return { exportedAt: this.clock.now(), member: { ...member }, account: account ?? null, records };
      },
      { actorId: by.memberId, isolation: 'REPEATABLE READ' },
    );
  }
}
