/** Stored decisions, with the facts they rest on put together again. */
import type { EntityManager } from 'typeorm';
import type { Decision, FactSheet, LawBook, MadeWith, Policy } from '../rules/index.js';
import { readPartTexts, sheetOf, type Parts, type ReadPart } from './fact-parts.js';
import { instant } from './gather/sql.js';

/** A stored decision, and all that is needed to judge it again. */
export interface StoredDecision {
  id: string;
  memberId: string;
  aircraftId: string;
  recordedAt: string;
  /** The decision's canonical bytes. */
  body: string;
  /** What they say. */
  decision: Decision;
  rules: Record<string, number[]>;
  sheet: FactSheet;
  policy: Policy;
  /** Null for a decision stored before the law's numbers were kept with it. */
  law: LawBook | null;
}

/** What a stored decision was made with. */
export const madeWith = ({ decision, sheet, policy, law, rules }: StoredDecision): MadeWith => ({
  ...{ jurisdiction: sheet.jurisdiction, policy, law, rules },
  order: decision.findings.map((finding) => finding.rule),
});

/** A stored decision that cannot be put together again. */
export class DamagedDecision extends Error {
  constructor(
    readonly id: string,
    /** Whose decision it is. */
    readonly memberId: string,
    /** What is wrong, as a clause. */
    readonly because: string,
  ) {
    super(`decision ${id} cannot be read: ${because}`);
    this.name = 'DamagedDecision';
  }
}

interface Row {
  id: string;
  memberId: string;
  aircraftId: string;
  recordedAt: string;
  body: string;
  rules: Record<string, number[]>;
  parts: Parts;
}

const SELECT = `SELECT id, member_id AS "memberId", aircraft_id AS "aircraftId", body, rules, parts,
     ${instant('recorded_at')} AS "recordedAt"
   FROM decisions WHERE club_id = bellcrank_club()`;

/** Finds a stored decision with its facts put together again; null when the club has none of that id. */
export async function findDecision(
  em: EntityManager,
  id: string,
): Promise<StoredDecision | DamagedDecision | null> {
  const [found] = await withFacts(em, await em.query(`${SELECT} AND id = $1`, [id]));
  return found ?? null;
}

/** Stored decisions after an id, in order of id, with their facts; those that cannot be read as what is wrong with them. */
export async function readDecisions(
  em: EntityManager,
  of: { afterId: string | null; limit: number },
): Promise<(StoredDecision | DamagedDecision)[]> {
  return withFacts(
    em,
    await em.query(`${SELECT} AND ($1::uuid IS NULL OR id > $1) ORDER BY id LIMIT $2`, [
      of.afterId,
      of.limit,
    ]),
  );
}

/** Puts facts to decisions in one statement. Decisions that share a part share the object. */
async function withFacts(
  em: EntityManager,
  rows: readonly Row[],
): Promise<(StoredDecision | DamagedDecision)[]> {
  if (rows.length === 0) return [];
  const digests = new Set(rows.flatMap(({ parts }) => digestsOf(parts)));
  const texts = await readPartTexts(em, digests);
  const read = new Map<string, unknown>();
  return rows.map((row) => {
    const part = <T>(digest: string): T => {
      if (!read.has(digest)) {
        const text = texts.get(digest);
        if (text === undefined)
          throw new DamagedDecision(row.id, row.memberId, `the part ${digest} of its facts is missing`);
        read.set(digest, parse(row, text, `the part ${digest} of its facts`));
      }
      return read.get(digest) as T;
    };
    try {
      return assemble(row, part);
    } catch (error) {
      if (error instanceof DamagedDecision) return error;
      throw error;
    }
  });
}

function assemble({ parts, ...row }: Row, part: ReadPart): StoredDecision {
  const sheet = sheetOf(parts, part);
  return {
    ...row,
    decision: parse(row, row.body, 'the decision itself') as Decision,
    sheet,
    policy: part<Policy>(parts.policy),
    law: parts.law === undefined ? null : part<LawBook>(parts.law),
  };
}

const digestsOf = ({ people, ...parts }: Parts): string[] => [
  ...Object.values(people),
  ...Object.values<string>(parts),
];

function parse(of: Pick<Row, 'id' | 'memberId'>, text: string, what: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw new DamagedDecision(of.id, of.memberId, `${what} is not JSON`);
  }
}
