/** Stored decisions as a dry run takes them: their facts, and the rest only where it is needed. */
import type { EntityManager } from 'typeorm';
import type { Answer, Decision, FactSheet, Instant, LawBook, Policy } from '../../rules/index.js';
import { readPartTexts, sheetOf, type Parts, type ReadPart } from '../fact-parts.js';
import { instant } from '../gather/sql.js';

/** A decision to look at. */
export interface CaseRef {
  id: string;
  /** The booking that rests on it, of a flight still to come. */
  bookingId: string | null;
}

/** A decision's facts and answer, without its findings. */
export interface StoredCase extends CaseRef {
  memberId: string;
  memberName: string;
  aircraftId: string;
  registration: string;
  answer: Answer;
  asOf: Instant;
  knownAt: Instant;
  rules: Record<string, number[]>;
  /** Digest of the law's numbers it was made with; null where they were not kept yet. */
  lawDigest: string | null;
  sheet: FactSheet;
  policy: Policy;
}

/** A decision whose facts cannot be read. */
export interface UnreadCase extends CaseRef {
  because: string;
}

/** Decisions of bookings of flights to come, and those asked for since an instant, newest first; and how many there are. */
export async function findCases(
  em: EntityManager,
  of: { since: Instant; now: Instant; limit: number },
): Promise<{ refs: CaseRef[]; bookings: number; decisions: number }> {
  const bookings: { id: string; bookingId: string }[] = await em.query(
    `SELECT b.decision_id AS id, b.id AS "bookingId" FROM bookings b
      WHERE b.club_id = bellcrank_club() AND b.kind = 'flight' AND b.occupies AND upper(b.during) > $1::timestamptz
      ORDER BY lower(b.during), b.id`,
    [of.now],
  );
  const booked = new Map(bookings.map(({ id, bookingId }) => [id, bookingId]));
  const asked: { id: string }[] = await em.query(
    `SELECT d.id FROM decisions d WHERE d.club_id = bellcrank_club() AND d.known_at >= $1::timestamptz
        AND NOT d.id = ANY ($2::uuid[])
      ORDER BY d.known_at DESC, d.id DESC LIMIT $3`,
    [of.since, [...booked.keys()], Math.max(0, of.limit - booked.size)],
  );
  const [count]: { count: number }[] = await em.query(
    `SELECT count(*)::int AS count FROM decisions d
      WHERE d.club_id = bellcrank_club() AND d.known_at >= $1::timestamptz AND NOT d.id = ANY ($2::uuid[])`,
    [of.since, [...booked.keys()]],
  );
  const refs = [
    ...[...booked].map(([id, bookingId]) => ({ id, bookingId })),
    ...asked.map(({ id }) => ({ id, bookingId: null })),
  ].slice(0, of.limit);
  return { refs, bookings: booked.size, decisions: count!.count };
}

interface Row extends Omit<StoredCase, 'bookingId' | 'lawDigest' | 'sheet' | 'policy'> {
  parts: Parts;
}

/** Puts the facts of some decisions together, in two statements; what they share is read once and is one object. */
export async function readCases(
  em: EntityManager,
  refs: readonly CaseRef[],
): Promise<(StoredCase | UnreadCase)[]> {
  const rows: Row[] = await em.query(
    `SELECT d.id, d.member_id AS "memberId", m.name AS "memberName", d.aircraft_id AS "aircraftId", a.registration,
        d.answer, ${instant('d.as_of')} AS "asOf", ${instant('d.known_at')} AS "knownAt", d.rules, d.parts
       FROM decisions d
       JOIN members m ON m.club_id = d.club_id AND m.id = d.member_id
       JOIN aircraft a ON a.club_id = d.club_id AND a.id = d.aircraft_id
      WHERE d.club_id = bellcrank_club() AND d.id = ANY ($1::uuid[])`,
    [refs.map(({ id }) => id)],
  );
  const byId = new Map(rows.map((row) => [row.id, row]));
  const part = partsReader(await readPartTexts(em, new Set(rows.flatMap(({ parts }) => digestsOf(parts)))));
  return refs.map((ref) => {
    const row = byId.get(ref.id);
    if (!row) return { ...ref, because: 'it is not there' };
    try {
      return assemble(ref, row, part);
    } catch (error) {
      return { ...ref, because: (error as Error).message };
    }
  });
}

/** The decisions themselves, by id. One that is no JSON is absent. */
export async function readDecisionsOf(
  em: EntityManager,
  ids: readonly string[],
): Promise<Map<string, Decision>> {
  if (ids.length === 0) return new Map();
  const rows: { id: string; body: string }[] = await em.query(
    'SELECT id, body FROM decisions WHERE club_id = bellcrank_club() AND id = ANY ($1::uuid[])',
    [ids],
  );
  const found = new Map<string, Decision>();
  for (const { id, body } of rows) {
    try {
      found.set(id, JSON.parse(body) as Decision);
    } catch {
      // Told as unread by whoever misses it.
    }
  }
  return found;
}

/** The law's numbers by digest. */
export async function readLaws(
  em: EntityManager,
  digests: readonly (string | null)[],
): Promise<Map<string, LawBook>> {
  const wanted = new Set(digests.filter((digest): digest is string => digest !== null));
  const texts = await readPartTexts(em, wanted);
  return new Map([...texts].map(([digest, text]) => [digest, JSON.parse(text) as LawBook]));
}

function assemble(ref: CaseRef, { parts, ...row }: Row, part: ReadPart): StoredCase {
  return {
    ...row,
    ...ref,
    lawDigest: parts.law ?? null,
    policy: part<Policy>(parts.policy),
    sheet: sheetOf(parts, part),
  };
}

const digestsOf = ({ head, people, aircraft, policy }: Parts): string[] => [
  ...Object.values(people),
  ...[head, aircraft, policy],
];

function partsReader(texts: ReadonlyMap<string, string>): ReadPart {
  const read = new Map<string, unknown>();
  return <T>(digest: string): T => {
    if (!read.has(digest)) {
      const text = texts.get(digest);
      if (text === undefined) throw new Error(`the part ${digest} of its facts is missing`);
      read.set(digest, JSON.parse(text));
    }
    return read.get(digest) as T;
  };
}
