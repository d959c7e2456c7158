import type { EntityManager } from 'typeorm';
import { SNAPSHOT } from '../as-of.js';
import type { Marks } from './memory.js';

/** More subjects than this since a snapshot, and gathering anew costs no more than looking through them. */
const MOST_SUBJECTS = 2000;

/**
 * What the running transaction sees changed since each snapshot, its own changes among it: marks of transactions that the snapshot
 * does not show.
 */
export async function readMarks(em: EntityManager, snapshots: readonly string[]): Promise<Marks> {
  const [row]: [{ snapshot: string; startedAt: string; changed: (string[] | null)[] }] = await em.query(
    `SELECT ${SNAPSHOT} AS snapshot, pg_postmaster_start_time()::text AS "startedAt",
        (SELECT coalesce(jsonb_agg(CASE WHEN s.n <= $2 THEN s.subjects END ORDER BY s.at), '[]'::jsonb) FROM (
           SELECT w.at, count(m.subject) AS n, coalesce(jsonb_agg(DISTINCT m.subject) FILTER (WHERE m.subject IS NOT NULL), '[]'::jsonb) AS subjects
             FROM unnest($1::text[]) WITH ORDINALITY w (snapshot, at)
             LEFT JOIN LATERAL (SELECT k.subject FROM fact_marks k WHERE k.club_id = bellcrank_club()
               AND k.noted_by >= pg_snapshot_xmin(w.snapshot::pg_snapshot)
               AND NOT pg_visible_in_snapshot(k.noted_by, w.snapshot::pg_snapshot) LIMIT $2 + 1) m ON true
            GROUP BY w.at) s) AS changed`,
    [snapshots, MOST_SUBJECTS],
  );
  const { snapshot, startedAt, changed } = row;
  const known = snapshots.flatMap((of, at): [string, string[]][] => {
    const subjects = changed[at];
    return subjects ? [[of, subjects]] : [];
  });
  return { snapshot, startedAt, changed: new Map(known) };
}
