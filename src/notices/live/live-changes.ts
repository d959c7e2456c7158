/**
 * Changes by the transactions that made them. Ids are given out before a transaction is committed, so going by ids would
 * miss those committed late. From one snapshot to the next, every change that was committed is seen once, as soon as it is
 * committed: a long transaction, of this club or of another database of the server, holds up nobody else's.
 */
import type { EntityManager } from 'typeorm';

/** A snapshot as PostgreSQL writes it: its xmin, its xmax, and what ran between them. */
export type Mark = string;

/** Stands for every topic there is. */
export const EVERYTHING = 'everything';

export interface LiveChange {
  clubId: string;
  topic: string;
  memberId: string | null;
}

/** What of `live_changes l` was committed after one snapshot and before another. The first line is for the index. */
const between = (since: string, until: string): string => `
  l.noted_by >= pg_snapshot_xmin(${since}) AND l.noted_by < pg_snapshot_xmax(${until})
  AND NOT pg_visible_in_snapshot(l.noted_by, ${since}) AND pg_visible_in_snapshot(l.noted_by, ${until})`;

export async function presentMark(em: EntityManager): Promise<Mark> {
  const [row]: { mark: Mark }[] = await em.query('SELECT pg_current_snapshot()::text AS mark');
  return row!.mark;
}

/** Every club's changes since a mark, and the mark up to which they go. */
export async function changesBetween(
  em: EntityManager,
  from: Mark,
): Promise<{ mark: Mark; changes: LiveChange[] }> {
  const [row]: { mark: Mark; changes: LiveChange[] }[] = await em.query(
    `SELECT pg_current_snapshot()::text AS mark, (SELECT coalesce(jsonb_agg(DISTINCT jsonb_build_object(
         'clubId', l.club_id, 'topic', l.topic, 'memberId', l.member_id)), '[]')
       FROM live_changes l WHERE ${between('$1::text::pg_snapshot', 'pg_current_snapshot()')}) AS changes`,
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
    `SELECT DISTINCT l.topic FROM live_changes l WHERE l.club_id = bellcrank_club()
        AND (l.member_id IS NULL OR l.member_id = $3)
        AND ${between('$1::text::pg_snapshot', '$2::text::pg_snapshot')} ORDER BY l.topic`,
    [of.since, of.until, of.memberId],
  );
  return rows.map(({ topic }) => topic);
}
