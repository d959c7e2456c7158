/** What each statement that gathers facts says of itself, so that its facts can be remembered. */
import { instant } from './sql.js';

/** As of when facts were gathered, and how long the same question gives them again while nothing is written. */
export interface AsOf {
  /** The snapshot of the statement (pg_snapshot as text), as SNAPSHOT gives it. */
  snapshot: string;
  /** Nothing of what it read was changed by its own transaction, which may still be rolled back. */
  settled: boolean;
  /** From this instant on the same question gives something else though nothing is written. */
  standsUntil: string;
}

/** The transaction that asks. A snapshot lists who else is running, never who asks. */
const OWN = 'pg_current_xact_id_if_assigned()';

/**
 * The snapshot of the running statement with its own transaction among those still running: what that one writes from here on is not
 * shown by it. Left out, it would be taken for one that was over as soon as a later transaction is.
 */
export const SNAPSHOT = `(SELECT CASE WHEN ${OWN} IS NULL OR ${OWN} >= pg_snapshot_xmax(w.s) THEN w.s::text
    ELSE pg_snapshot_xmin(w.s) || ':' || pg_snapshot_xmax(w.s) || ':' || (SELECT string_agg(r.x::text, ',' ORDER BY r.x)
      FROM (SELECT pg_snapshot_xip(w.s) UNION SELECT ${OWN}) r (x)) END
  FROM pg_current_snapshot() w (s))`;

/**
 * Columns of `AsOf`.
 *
 * @param knownAt parameter with the instant of the question, which days are counted from; null where no instant was asked for
 * @param ends    SQL of rows with a column `ends`, at which something drops out of the facts or comes into them
 */
export const asOf = (knownAt: string, ends: string): string => `${SNAPSHOT} AS snapshot,
  NOT EXISTS (SELECT 1 FROM fact_marks k WHERE k.club_id = bellcrank_club() AND k.noted_by = ${OWN}) AS settled,
  coalesce(${instant(`least(date_trunc('day', ${knownAt}::timestamptz) + interval '1 day',
    (SELECT min(x.ends) FROM (${ends}) x WHERE x.ends > ${knownAt}::timestamptz))`)}, '') AS "standsUntil"`;
