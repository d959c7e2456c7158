import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../../accounts/current-user.js';
import { findRecord } from '../../../platform/database/records.js';
import { TenantDb } from '../../../platform/database/tenant.js';
import { decodeCursor, encodeCursor, type PageQuery } from '../../../platform/http/pages.js';
import { ProblemException } from '../../../platform/problems/problem-exception.js';
import type { PartPlace } from '../../aircraft-records.js';
import { SQUAWKS } from '../squawks.service.js';
import { eventOf, type Logged } from './history.js';
import type { SquawkHistory } from './history.dto.js';

const SQL = `SELECT l.id::text, to_char(l.at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"') AS at,
    l.actor_id AS "actorId", m.name AS "actorName", l.action, l.table_name AS "tableName", l.before, l.after
  FROM audit_log l LEFT JOIN members m ON m.club_id = l.club_id AND m.id = l.actor_id
 WHERE l.club_id = bellcrank_club() AND l.id > $2::bigint
   AND ((l.table_name = 'squawks' AND l.row_id = $1)
     OR (l.table_name IN ('deferrals', 'squawk_parts', 'attachments')
       AND coalesce(l.after, l.before) ->> 'squawk_id' = $1::text))
 ORDER BY l.id LIMIT $3`;

/** Who did what to a squawk and when, out of the audit log, from which nothing is ever deleted. */
@Injectable()
export class HistoryService {
  constructor(private readonly db: TenantDb) {}

  read({ clubId }: SignedIn, place: PartPlace, { cursor, limit }: PageQuery): Promise<SquawkHistory> {
    const after = decodeCursor(cursor);
    const from = after?.key ?? '0';
    if (!/^\d{1,18}$/.test(from) || (after !== null && after.id !== place.id))
      throw new ProblemException('cursor-malformed', { field: 'cursor' });
    const work = async (em: EntityManager) => {
      await findRecord(em, SQUAWKS, { clubId, ...place });
      const rows: Logged[] = await em.query(SQL, [place.id, from, limit + 1]);
      const shown = rows.slice(0, limit);
      const last = rows.length > limit ? shown.at(-1) : undefined;
      return {
        items: shown.map(eventOf),
        nextCursor: last ? encodeCursor({ id: place.id, key: last.id }) : null,
      };
    };
    return this.db.run(clubId, work, { readOnly: true });
  }
}
