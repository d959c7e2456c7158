/**
 * Sealing: appending to a club's chain what was recorded since.
 *
 * Decisions are not chained as they are stored: the bookings of different aircraft run side by side, and one chain would
 * make them queue. They are sealed shortly after, in batches, in the order in which they were recorded; what is not sealed
 * yet is told as such. One sealer of a club works at a time (an advisory lock); the key of the table and the reference to
 * the link before refuse a fork, whatever happens to the lock.
 */
import type { EntityManager } from 'typeorm';
import type { TenantDb } from '../../platform/database/tenant.js';
import { entryOf, linkOf, NO_LINK, type SealedRecord } from './links.js';
import { DECISION, OVERRIDE, SEALED_AT, UNSEALED_DECISIONS, UNSEALED_OVERRIDES } from './records.sql.js';

/** Records sealed in one transaction. */
const BATCH = 500;
/** A transaction that was open when the last link was sealed has ended an hour later: limits of TenantDb see to it. */
const LOOK_BACK = "interval '1 hour'";

/** Where to look for records: among the latest, or among all that were ever recorded. */
export type Reach = 'latest' | 'all';

/** Seals everything that is committed; returns how many records. */
export async function sealClub(db: TenantDb, clubId: string, reach: Reach): Promise<number> {
  for (let sealed = 0; ;) {
    const batch = await db.run(clubId, (em) => sealBatch(em, clubId, reach));
    sealed += batch;
    if (batch < BATCH) return sealed;
  }
}

async function sealBatch(em: EntityManager, clubId: string, reach: Reach): Promise<number> {
  // Held to the end of the transaction. What follows sees what the sealer before has committed.
  await em.query("SELECT pg_advisory_xact_lock(hashtextextended('decision_chain/' || bellcrank_club(), 0))");
  const head = await headOf(em);
  const records = await unsealed(em, reach === 'all' ? null : head);
  if (records.length === 0) return 0;
  const [{ now }]: [{ now: string }] = await em.query(
    `SELECT to_char(clock_timestamp() AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"') AS now`,
  );
  let [seq, previous] = [head?.seq ?? 0, head?.link ?? NO_LINK];
  const links = records.map((record) => {
    seq += 1;
    const of = { club: clubId, seq, sealedAt: now, previous, entry: entryOf(record) };
    const link = linkOf(of);
    previous = link;
    return {
      ...{ seq, entry: of.entry, previous: of.previous, link, sealed_at: now },
      decision_id: record.kind === 'decision' ? record.id : null,
      override_id: record.kind === 'override' ? record.id : null,
    };
  });
  await em.query(
    `INSERT INTO decision_chain (club_id, seq, decision_id, override_id, entry, sealed_at, previous, link)
     SELECT bellcrank_club(), l.seq, l.decision_id, l.override_id, l.entry, l.sealed_at, l.previous, l.link
       FROM jsonb_to_recordset($1::jsonb) AS l (seq bigint, decision_id uuid, override_id uuid, entry text,
         sealed_at timestamptz, previous text, link text)`,
    [JSON.stringify(links)],
  );
  return links.length;
}

/** The last link of a club's chain. */
export interface Head {
  seq: number;
  link: string;
  sealedAt: string;
}

/** The last link; null for a chain not begun. */
export async function headOf(em: EntityManager): Promise<Head | null> {
  const rows: { seq: string; link: string; sealedAt: string }[] = await em.query(
    `SELECT c.seq, c.link, ${SEALED_AT} AS "sealedAt" FROM decision_chain c
      WHERE c.club_id = bellcrank_club() ORDER BY c.seq DESC LIMIT 1`,
  );
  const [row] = rows;
  return row ? { ...row, seq: Number(row.seq) } : null;
}

/** Records without a link, oldest first; only such as can have been committed since `head`, when it is given. */
async function unsealed(em: EntityManager, head: Head | null): Promise<SealedRecord[]> {
  const since = (alias: string): string =>
    head === null ? '' : `AND ${alias}.recorded_at >= $1::timestamptz - ${LOOK_BACK}`;
  const rows: { record: SealedRecord }[] = await em.query(
    `SELECT r.record FROM (
       (SELECT ${DECISION} AS record, d.recorded_at, 1 AS kind, d.id ${UNSEALED_DECISIONS} ${since('d')}
         ORDER BY d.recorded_at, d.id LIMIT ${BATCH})
       UNION ALL
       (SELECT ${OVERRIDE}, o.recorded_at, 2, o.id ${UNSEALED_OVERRIDES} ${since('o')}
         ORDER BY o.recorded_at, o.id LIMIT ${BATCH})
     ) r ORDER BY r.recorded_at, r.kind, r.id LIMIT ${BATCH}`,
    head === null ? [] : [head.sealedAt],
  );
  return rows.map((row) => row.record);
}
