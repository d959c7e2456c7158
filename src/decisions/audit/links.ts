/**
 * The chain of a club's decisions: how a record becomes an entry, and an entry a link.
 *
 *   entry = SHA-256 of the canonical JSON (RFC 8785) of the whole record: every column, its body by digest
 *   link  = SHA-256 of 'bellcrank.chain-link/1', club, number, second of sealing, the link before, entry; line by line
 *
 * Each kind of text begins with its own name, so that no entry can be passed off as a link. Whoever changes a record, or
 * takes one out, must make every later link anew; whoever keeps one later link (receipt.ts) then sees it.
 */
import { canonicalJson, sha256 } from '../../rules/index.js';

/** What stands before the first link. */
export const NO_LINK = '0'.repeat(64);

/** A record to be sealed, as its SQL gives it (records.sql.ts). */
export type SealedRecord = Record<string, unknown>;

/** One link, without its record. */
export interface Link {
  club: string;
  seq: number;
  /** RFC 3339, UTC, whole seconds. */
  sealedAt: string;
  previous: string;
  entry: string;
}

export const entryOf = (record: SealedRecord): string =>
  sha256(canonicalJson({ schema: 'bellcrank.chain-entry/1', ...record }));

/** The same text as the table's check makes (decision_chain_link_chk). */
export const linkOf = ({ club, seq, sealedAt, previous, entry }: Link): string =>
  sha256(['bellcrank.chain-link/1', club, String(seq), sealedAt, previous, entry].join('\n'));
