/**
 * Changes by the transactions that made them. Ids are given out before a transaction is committed, so going by ids would
 * miss those committed late. All transactions before a snapshot's xmin are over: from one xmin to the next, every change
 * that was committed is seen once.
 */
import type { EntityManager } from 'typeorm';

/** A transaction id as text: it has 64 bits. */
export type Mark = string;

/** Stands for every topic there is. */
export const EVERYTHING = 'everything';

export interface LiveChange {
  clubId: string;
  topic: string;
  memberId: string | null;
}

const PRESENT = 'pg_snapshot_xmin(pg_current_snapshot())';

export async function presentMark(em: EntityManager): Promise<Mark> {
  const [row]: { mark: Mark }[] = await em.query(`SELECT ${PRESENT}::text AS mark`);
  return row!.mark;
}

/** Every club's changes since a mark, and the mark up to which they go. */
export async function changesBetween(
  em: EntityManager,
  from: Mark,
): Promise<{ mark: Mark; changes: LiveChange[] }> {
  const [row]: { mark: Mark; changes: LiveChange[] }[] = await em.query(
    `SELECT ${PRESENT}::text AS mark, (SELECT coalesce(jsonb_agg(DISTINCT jsonb_build_object(
         'clubId', l.club_id, 'topic', l.topic, 'memberId', l.member_id)), '[]')
       FROM live_changes l WHERE l.noted_by >= $1::text::xid8 AND l.noted_by < ${PRESENT}) AS changes`,
    [from],
  );
  return row!;
}

/** Topics of one club that a person missed between two marks. */
export async function topicsBetween(
  em: EntityManager,
  of: { since: Mark; until: Mark; memberId: string },
): Promise<string[]> {
  const rows: { topic: string }[] = await em.query(
    `SELECT DISTINCT topic FROM live_changes WHERE club_id = bellcrank_club() AND noted_by >= $1::text::xid8
        AND noted_by < $2::text::xid8 AND (member_id IS NULL OR member_id = $3) ORDER BY topic`,
    [of.since, of.until, of.memberId],
  );
  return rows.map(({ topic }) => topic);
}
