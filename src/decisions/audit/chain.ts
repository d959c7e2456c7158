/** How far a club's chain goes, and whether it still holds a receipt. */
import type { EntityManager } from 'typeorm';
import { receiptOf, type Receipt } from './receipt.js';
import { UNSEALED_DECISIONS, UNSEALED_OVERRIDES } from './records.sql.js';
import { headOf, type Head } from './seal.js';

/** How far the chain goes. */
export interface ChainState {
  /** The last link; null for a chain not begun. */
  head: Head | null;
  /** Links; more or fewer than `head.seq` only when somebody tampered with them. */
  links: number;
  /** Records not sealed yet. The service seals within a minute of a decision. */
  unsealed: number;
  /** Of those, recorded more than ten minutes ago. */
  overdue: number;
  /** One line to keep where the service cannot reach it. */
  receipt: string | null;
}

/** What became of a receipt's link. */
export interface ReceiptCheck {
  holds: boolean;
  says: string;
}

export async function chainState(em: EntityManager, clubId: string): Promise<ChainState> {
  const head = await headOf(em);
  const [counts]: [Pick<ChainState, 'links' | 'unsealed' | 'overdue'>] = await em.query(
    `WITH waiting AS (SELECT d.recorded_at ${UNSEALED_DECISIONS} UNION ALL SELECT o.recorded_at ${UNSEALED_OVERRIDES})
     SELECT (SELECT count(*)::int FROM decision_chain c WHERE c.club_id = bellcrank_club()) AS links,
       (SELECT count(*)::int FROM waiting) AS unsealed,
       (SELECT count(*)::int FROM waiting w WHERE w.recorded_at < now() - interval '10 minutes') AS overdue`,
  );
  return { head, ...counts, receipt: head === null ? null : receiptOf(clubId, head) };
}

/** Holds a receipt against the links as they are stored; whether those hold among themselves, verify.ts tells. */
export async function checkReceipt(em: EntityManager, { seq, link }: Receipt): Promise<ReceiptCheck> {
  const rows: { link: string }[] = await em.query(
    'SELECT link FROM decision_chain WHERE club_id = bellcrank_club() AND seq = $1',
    [seq],
  );
  const [stored] = rows;
  if (stored?.link === link) return { holds: true, says: `Link ${seq} is the one of the receipt.` };
  if (stored)
    return {
      holds: false,
      says: `Link ${seq} is not the one of the receipt: the chain was written anew from there or from before.`,
    };
  const head = await headOf(em);
  return {
    holds: false,
    says: `The chain ends with link ${head?.seq ?? 0}, and the receipt is of link ${seq}: its end was cut off.`,
  };
}
