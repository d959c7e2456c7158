import type { EntityManager } from 'typeorm';
import { newId } from '../../platform/ids.js';
import { plusSeconds, type Instant } from '../../rules/index.js';
import { gatherMinutes } from '../notice-policy.js';
import type { NoticeItem } from './items.js';
import type { KindOfNotice } from './kinds.js';

/** Something to tell people of. */
export interface Posting {
  kind: KindOfNotice;
  /**
   * What brought it about, in the poster's own words: 'order:ID'. However often it is posted within the club's minutes of
   * gathering, each person gets one message of it.
   */
  cause: string;
  /** When it happened, by the service's clock. */
  at: Instant;
  to: readonly Recipient[];
}

/** Who is told, and what: nothing that this person may not read. */
export interface Recipient {
  memberId: string;
  items: readonly NoticeItem[];
  /** Goes out in quiet hours too, and is not kept for the day's mail. */
  urgent?: boolean;
}

/**
 * Writes notices in the caller's transaction: they are there if, and only if, what they tell of is. Mail follows from
 * them later. Whoever has been erased is told nothing.
 */
export async function postNotice(em: EntityManager, { kind, cause, at, to }: Posting): Promise<void> {
  const rows = to
    .filter(({ items }) => items.length > 0)
    .map(({ memberId, items, urgent = false }) => ({ id: newId(), memberId, items, urgent }))
    // Always in the same order, or two postings of one cause could each wait for the other.
    .sort((a, b) => (a.memberId < b.memberId ? -1 : 1));
  if (rows.length === 0) return;
  const until = plusSeconds(at, 60 * (await gatherMinutes(em, at)));
  await em.query(
    `INSERT INTO notices (club_id, id, member_id, kind, cause, items, urgent, occurred_at, gathers_until)
     SELECT bellcrank_club(), r.id, r."memberId", $2, $3, r.items, r.urgent, $4::timestamptz, $5::timestamptz
       FROM jsonb_to_recordset($1::jsonb) AS r (id uuid, "memberId" uuid, items jsonb, urgent boolean)
      WHERE NOT EXISTS (SELECT 1 FROM erasures e WHERE e.club_id = bellcrank_club() AND e.member_id = r."memberId")
     ON CONFLICT (club_id, member_id, cause) WHERE settled_at IS NULL
     DO UPDATE SET items = notices.items || excluded.items, urgent = notices.urgent OR excluded.urgent, read_at = NULL`,
    [JSON.stringify(rows), kind, cause, at, until],
  );
  await noteDue(em, 'notices', until);
}

/** Has the club's outbox, or its reminders, looked at from then on. */
export async function noteDue(
  em: EntityManager,
  work: 'notices' | 'reminders',
  dueAt: Instant,
): Promise<void> {
  await em.query(
    'INSERT INTO notice_due (club_id, work, due_at) VALUES (bellcrank_club(), $1, $2::timestamptz)',
    [work, dueAt],
  );
}
