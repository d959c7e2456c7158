import type { EntityManager } from 'typeorm';
import {
  canonicalJson,
  rulesetFor,
  sha256,
  versionsOf,
  type AircraftFacts,
  type Decision,
  type FactSheet,
  type PersonFacts,
  type Policy,
} from '../rules/index.js';

/** A decision with the sheet and policy it rests on. */
export interface Decided {
  id: string;
  sheet: FactSheet;
  decision: Decision;
}

/** Where the parts of a sheet lie in fact_parts. */
interface Parts {
  head: string;
  people: Record<string, string>;
  aircraft: string;
  policy: string;
}

/** A stored decision, and all that is needed to judge it again. */
export interface StoredDecision {
  id: string;
  memberId: string;
  aircraftId: string;
  recordedAt: string;
  body: string;
  rules: Record<string, number[]>;
  sheet: FactSheet;
  policy: Policy;
}

/** Stores decisions and their facts: two statements, whatever the number. Parts that are already there are not repeated. */
export async function storeDecisions(
  em: EntityManager,
  decided: readonly Decided[],
  policy: Policy,
  askedBy: string,
): Promise<void> {
  const bodies = new Map<string, string>();
  // The decisions of one question share people and policy as the same objects: each is written out and hashed once.
  const kept = new Map<object, string>();
  const keep = (part: object): string => {
    const known = kept.get(part);
    if (known !== undefined) return known;
    const body = canonicalJson(part);
    const digest = sha256(body);
    kept.set(part, digest);
    bodies.set(digest, body);
    return digest;
  };
  const rows = decided.map(({ id, sheet, decision }) => {
    const { people, aircraft, ...head } = sheet;
    const parts: Parts = {
      head: keep(head),
      people: Object.fromEntries(
        Object.entries(people).map(([personId, person]) => [personId, keep(person)]),
      ),
      aircraft: keep(aircraft),
      policy: keep(policy),
    };
    return {
      id,
      member_id: sheet.flight.memberId,
      aircraft_id: aircraft.id,
      known_at: sheet.knownAt,
      as_of: decision.asOf,
      answer: decision.answer,
      horizon_until: decision.horizon.until,
      fact_keys: [...new Set(decision.findings.flatMap((finding) => finding.reads))].sort(),
      parts,
      rules: versionsOf(rulesetFor(sheet.jurisdiction, policy)),
      digest: decision.digest,
      body: canonicalJson(decision),
    };
  });
  const digests = [...bodies.keys()].sort();
  await em.query(
    `INSERT INTO fact_parts (club_id, digest, body)
     SELECT bellcrank_club(), p.digest, p.body FROM unnest($1::text[], $2::text[]) AS p (digest, body)
     ON CONFLICT DO NOTHING`,
    [digests, digests.map((digest) => bodies.get(digest))],
  );
  await em.query(
    `INSERT INTO decisions (club_id, id, member_id, aircraft_id, asked_by, known_at, as_of, answer, horizon_until, fact_keys,
       parts, rules, digest, body)
     SELECT bellcrank_club(), d.id, d.member_id, d.aircraft_id, $2, d.known_at, d.as_of, d.answer, d.horizon_until, d.fact_keys,
       d.parts, d.rules, d.digest, d.body
     FROM jsonb_to_recordset($1::jsonb) AS d (id uuid, member_id uuid, aircraft_id uuid, known_at timestamptz, as_of timestamptz,
       answer text, horizon_until timestamptz, fact_keys text[], parts jsonb, rules jsonb, digest text, body text)`,
    [JSON.stringify(rows), askedBy],
  );
}

/** Finds a stored decision with its facts put together again; null when the club has none of that id. */
export async function findDecision(em: EntityManager, id: string): Promise<StoredDecision | null> {
  const rows: {
    member_id: string;
    aircraft_id: string;
    recorded_at: string;
    body: string;
    rules: Record<string, number[]>;
    parts: Parts;
  }[] = await em.query(
    `SELECT member_id, aircraft_id, body, rules, parts,
         to_char(recorded_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"') AS recorded_at
       FROM decisions WHERE club_id = bellcrank_club() AND id = $1`,
    [id],
  );
  const row = rows[0];
  if (!row) return null;
  const { parts } = row;
  const digests = [parts.head, parts.aircraft, parts.policy, ...Object.values(parts.people)];
  const bodies: { digest: string; body: string }[] = await em.query(
    'SELECT digest, body FROM fact_parts WHERE club_id = bellcrank_club() AND digest = ANY ($1::text[])',
    [digests],
  );
  const read = <T>(digest: string): T => {
    const part = bodies.find((body) => body.digest === digest);
    if (!part) throw new Error(`fact part ${digest} of decision ${id} is missing`);
    return JSON.parse(part.body) as T;
  };
  const sheet: FactSheet = {
    ...read<Omit<FactSheet, 'people' | 'aircraft'>>(parts.head),
    people: Object.fromEntries(
      Object.entries(parts.people).map(([personId, digest]) => [personId, read<PersonFacts>(digest)]),
    ),
    aircraft: read<AircraftFacts>(parts.aircraft),
  };
  return {
    id,
    memberId: row.member_id,
    aircraftId: row.aircraft_id,
    recordedAt: row.recorded_at,
    body: row.body,
    rules: row.rules,
    sheet,
    policy: read<Policy>(parts.policy),
  };
}
