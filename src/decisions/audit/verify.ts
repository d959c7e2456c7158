/**
 * Verifying: every link is made again from the record it seals, and every part of the facts behind it is hashed again.
 * Works through the chain a stretch at a time, so that a long one can be verified over HTTP as well.
 */
import type { EntityManager } from 'typeorm';
import type { TenantDb } from '../../platform/database/tenant.js';
import type { Parts } from '../fact-parts.js';
import { entryOf, linkOf, NO_LINK, type SealedRecord } from './links.js';
import { DECISION, OVERRIDE, PART_WHOLE, SEALED_AT } from './records.sql.js';

/** What can be wrong with a link, in the order in which it is looked for. */
export const FAULTS = [
  'link-missing',
  'link-altered',
  'record-missing',
  'record-altered',
  'facts-missing',
  'facts-altered',
] as const;
export type Fault = (typeof FAULTS)[number];

/** The first link that does not hold. */
export interface Broken {
  seq: number;
  fault: Fault;
  kind: 'decision' | 'override' | null;
  recordId: string | null;
  says: string;
}

/** Up to where the chain is verified. */
export interface Reached {
  seq: number;
  link: string;
}

/** A verified stretch. */
export interface Stretch {
  reached: Reached;
  broken: Broken | null;
  /** The end of the chain was reached. */
  end: boolean;
  /** Links whose record says that it was recorded more than an hour before it was sealed, and the first of them. */
  late: number;
  firstLate: number | null;
}

/** Where every chain begins. */
export const BEGINNING: Reached = { seq: 0, link: NO_LINK };

/** Links verified in one statement. */
const STEP = 500;

interface Row {
  seq: string;
  decisionId: string | null;
  overrideId: string | null;
  entry: string;
  sealedAt: string;
  previous: string;
  link: string;
  record: SealedRecord | null;
  late: boolean;
}

/** Verifies up to `most` links after `from`; stops at the first that does not hold. */
export async function verifyStretch(
  db: TenantDb,
  clubId: string,
  from: Reached,
  most: number,
): Promise<Stretch> {
  let stretch: Stretch = { reached: from, broken: null, end: false, late: 0, firstLate: null };
  for (let done = 0; done < most && !stretch.end && !stretch.broken; done += STEP) {
    const step = await db.run(clubId, (em) => verifyStep(em, clubId, stretch.reached), { readOnly: true });
    stretch = {
      ...step,
      late: stretch.late + step.late,
      firstLate: stretch.firstLate ?? step.firstLate,
    };
  }
  return stretch;
}

async function verifyStep(em: EntityManager, clubId: string, from: Reached): Promise<Stretch> {
  const rows: Row[] = await em.query(
    `SELECT c.seq, c.decision_id AS "decisionId", c.override_id AS "overrideId", c.entry, ${SEALED_AT} AS "sealedAt", c.previous,
        c.link, CASE WHEN d.id IS NOT NULL THEN ${DECISION} WHEN o.id IS NOT NULL THEN ${OVERRIDE} END AS record,
        coalesce(coalesce(d.recorded_at, o.recorded_at) < c.sealed_at - interval '1 hour', false) AS late
       FROM decision_chain c
       LEFT JOIN decisions d ON d.club_id = c.club_id AND d.id = c.decision_id
       LEFT JOIN overrides o ON o.club_id = c.club_id AND o.id = c.override_id
      WHERE c.club_id = bellcrank_club() AND c.seq > $1 ORDER BY c.seq LIMIT ${STEP}`,
    [from.seq],
  );
  const parts = await partsOf(em, rows);
  let reached = from;
  const late = (upTo: number): Pick<Stretch, 'late' | 'firstLate'> => {
    const some = rows.slice(0, upTo).filter((row) => row.late);
    return { late: some.length, firstLate: some[0] ? Number(some[0].seq) : null };
  };
  for (const [index, row] of rows.entries()) {
    const broken = faultOf(clubId, row, reached, parts);
    if (broken) return { reached, broken, end: false, ...late(index) };
    reached = { seq: Number(row.seq), link: row.link };
  }
  return { reached, broken: null, end: rows.length < STEP, ...late(rows.length) };
}

/** Which parts of facts are whole, of those that the records rest on; a part that is not there is not in the map. */
async function partsOf(em: EntityManager, rows: readonly Row[]): Promise<Map<string, boolean>> {
  const digests = new Set(rows.flatMap(({ record }) => digestsIn(record)));
  const found: { digest: string; whole: boolean }[] = await em.query(
    `SELECT f.digest, ${PART_WHOLE} AS whole FROM fact_parts f
      WHERE f.club_id = bellcrank_club() AND f.digest = ANY ($1::text[])`,
    [[...digests]],
  );
  return new Map(found.map(({ digest, whole }) => [digest, whole]));
}

function digestsIn(record: SealedRecord | null): string[] {
  if (record?.kind !== 'decision') return [];
  // Whatever somebody wrote there: its entry will not fit, but it must be got past.
  const { people, ...parts } = (record.parts ?? {}) as Parts;
  return [...Object.values(people ?? {}), ...Object.values<string>(parts)];
}

function faultOf(
  club: string,
  row: Row,
  before: Reached,
  parts: ReadonlyMap<string, boolean>,
): Broken | null {
  const seq = Number(row.seq);
  const recordId = row.decisionId ?? row.overrideId;
  const kind = row.decisionId ? 'decision' : row.overrideId ? 'override' : null;
  const at = (fault: Fault, says: string): Broken => ({ ...{ seq, fault, kind, recordId }, says });
  const what = `${kind ?? 'record'} ${recordId ?? '?'}`;
  if (seq !== before.seq + 1)
    return {
      ...{ seq: before.seq + 1, fault: 'link-missing', kind: null, recordId: null },
      says: `Link ${before.seq + 1} is not there; the next one is ${seq}.`,
    };
  const { sealedAt, previous, entry } = row;
  if (previous !== before.link || row.link !== linkOf({ club, seq, sealedAt, previous, entry }))
    return at('link-altered', `Link ${seq} is not made of its entry and the link before.`);
  if (row.record === null) return at('record-missing', `The ${what} sealed by link ${seq} is not there.`);
  if (entryOf(row.record) !== entry)
    return at('record-altered', `The ${what} is not as link ${seq} sealed it.`);
  for (const digest of digestsIn(row.record)) {
    const whole = parts.get(digest);
    const part = `the part ${digest} of the facts behind ${what}`;
    if (whole === undefined) return at('facts-missing', `A part of the facts is not there: ${part}.`);
    if (!whole) return at('facts-altered', `A part of the facts is not what its digest says: ${part}.`);
  }
  return null;
}
