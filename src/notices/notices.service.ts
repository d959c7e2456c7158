import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../accounts/current-user.js';
import { Clock } from '../platform/clock.js';
import { notThere } from '../platform/database/records.js';
import { TenantDb } from '../platform/database/tenant.js';
import { instant } from '../platform/database/instant.js';
import { pageOf, readCursor } from '../platform/http/pages.js';
import { CAUTION } from '../rules/index.js';
import type { NoticeDto, NoticesPage, NoticesQuery, ReadDto } from './notices.dto.js';
import { compactItems, type NoticeItem } from './outbox/items.js';
import { headingOf } from './outbox/kinds.js';

interface Row extends Omit<NoticeDto, 'items' | 'heading'> {
  items: NoticeItem[];
}

const SELECT = `SELECT n.id, n.kind, n.items, n.urgent, ${instant('n.occurred_at')} AS "occurredAt", ${instant('n.read_at')} AS "readAt",
    CASE WHEN n.settled_at IS NULL THEN 'gathering' ELSE coalesce(m.state, 'none') END AS mail,
    ${instant('coalesce(m.sent_at, m.due_at)')} AS "mailAt"
  FROM notices n LEFT JOIN notice_mails m ON m.club_id = n.club_id AND m.id = n.mail_id
  WHERE n.club_id = bellcrank_club() AND n.member_id = $1`;

/** One's own notices; nobody else's. */
@Injectable()
export class NoticesService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  list({ clubId, memberId }: SignedIn, query: NoticesQuery): Promise<NoticesPage> {
    const before = readCursor(query.cursor);
    return this.db.run(
      clubId,
      async (em) => {
        const rows: Row[] = await em.query(
          `${SELECT} AND (NOT $2::boolean OR n.read_at IS NULL) AND ($3::uuid IS NULL OR n.id < $3) ORDER BY n.id DESC LIMIT $4`,
          [memberId, query.unread ?? false, before, query.limit + 1],
        );
        const page = pageOf(rows, query.limit);
        return {
          ...page,
          items: page.items.map(shown),
          unread: await unread(em, memberId),
          caution: CAUTION,
        };
      },
      { readOnly: true },
    );
  }

  /** @throws 404 for a notice that is not one's own. */
  async read({ clubId, memberId }: SignedIn, id: string): Promise<void> {
    await this.db.run(clubId, async (em) => {
      const [row]: { id: string }[] = await em.query(`${SELECT} AND n.id = $2 FOR UPDATE OF n`, [
        memberId,
        id,
      ]);
      if (row === undefined) throw notThere('notice of yours');
      await em.query(
        'UPDATE notices SET read_at = coalesce(read_at, $2::timestamptz) WHERE club_id = bellcrank_club() AND id = $1',
        [id, this.clock.now()],
      );
    });
  }

  /** Marks all that there are. */
  readAll({ clubId, memberId }: SignedIn): Promise<ReadDto> {
    return this.db.run(clubId, async (em) => {
      const [, marked]: [unknown, number] = await em.query(
        `UPDATE notices SET read_at = $2::timestamptz
          WHERE club_id = bellcrank_club() AND member_id = $1 AND read_at IS NULL`,
        [memberId, this.clock.now()],
      );
      return { marked };
    });
  }
}

async function unread(em: EntityManager, memberId: string): Promise<number> {
  const [row]: { n: number }[] = await em.query(
    'SELECT count(*)::int AS n FROM notices WHERE club_id = bellcrank_club() AND member_id = $1 AND read_at IS NULL',
    [memberId],
  );
  return row!.n;
}

function shown({ items, ...row }: Row): NoticeDto {
  const left = compactItems(items);
  // What is back where it began stays on the page until the notice is settled.
  const told = left.length > 0 ? left : items.slice(-1);
  return {
    ...row,
    heading: headingOf(row.kind, told.length),
    items: told.map(({ title, says, ways = [], link }) => ({ title, says, ways, link })),
  };
}
