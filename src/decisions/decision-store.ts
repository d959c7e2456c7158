import type { EntityManager } from 'typeorm';
import {
  canonicalJson,
  canonicalShared,
  rulesetFor,
  sha256,
  versionsOf,
  writtenLawOf,
  type Decision,
  type FactSheet,
  type Policy,
  type Ruleset,
} from '../rules/index.js';
import type { Parts } from './fact-parts.js';

/** A decision with the sheet and policy it rests on. */
export interface Decided {
  id: string;
  sheet: FactSheet;
  decision: Decision;
}

/** Stores decisions and their facts: three statements at most, whatever the number. Parts that are already there are not repeated. */
export async function storeDecisions(
  em: EntityManager,
  decided: readonly Decided[],
  policy: Policy,
  askedBy: string,
): Promise<void> {
  if (decided.length === 0) return;
  const bodies = new Map<string, string>();
  // The decisions of one question share people, policy and rules as the same objects: each is written out and hashed once.
  const kept = new Map<object, string>();
  const keep = (part: object): string => {
    const known = kept.get(part);
    if (known !== undefined) return known;
    const body = canonicalShared(part);
    return noted(part, sha256(body), body);
  };
  const keepLaw = (ruleset: Ruleset): string => {
    const known = kept.get(ruleset);
    if (known !== undefined) return known;
    const { digest, body } = writtenLawOf(ruleset);
    return noted(ruleset, digest, body);
  };
  const noted = (part: object, digest: string, body: string): string => {
    kept.set(part, digest);
    bodies.set(digest, body);
    return digest;
  };
  const rows = decided.map(({ id, sheet, decision }) => {
    const ruleset = rulesetFor(sheet.jurisdiction, policy);
    const { people, aircraft, ...head } = sheet;
    const parts: Parts = {
      head: keep(head),
      people: Object.fromEntries(
        Object.entries(people).map(([personId, person]) => [personId, keep(person)]),
      ),
      aircraft: keep(aircraft),
      policy: keep(policy),
      law: keepLaw(ruleset),
    };
    const factKeys = [...new Set(decision.findings.flatMap((finding) => finding.reads))].sort();
    return [
      ...[id, sheet.flight.memberId, aircraft.id, askedBy, sheet.knownAt, decision.asOf, decision.answer],
      ...[decision.horizon.until, factKeys, JSON.stringify(parts), JSON.stringify(versionsOf(ruleset))],
      ...[decision.digest, canonicalJson(decision)],
    ];
  });
  // Most parts are there already, and long: only those that are missing are sent.
  const missing: { digest: string }[] = await em.query(
    `SELECT p.digest FROM unnest($1::text[]) AS p (digest)
      WHERE NOT EXISTS (SELECT 1 FROM fact_parts f WHERE f.club_id = bellcrank_club() AND f.digest = p.digest)
      ORDER BY p.digest`,
    [[...bodies.keys()]],
  );
  if (missing.length > 0)
    await em.query(
      `INSERT INTO fact_parts (club_id, digest, body)
       SELECT bellcrank_club(), p.digest, p.body FROM jsonb_to_recordset($1::jsonb) AS p (digest text, body text)
       ON CONFLICT DO NOTHING`,
      [JSON.stringify(missing.map(({ digest }) => ({ digest, body: bodies.get(digest) })))],
    );
  // As parameters of their own: a decision is some 70 kB, and inside another JSON text it would be written and read twice.
  const values = rows.map(
    (row, at) => `(bellcrank_club(), ${row.map((_, n) => `$${at * row.length + n + 1}`).join(', ')})`,
  );
  await em.query(
    `INSERT INTO decisions (club_id, id, member_id, aircraft_id, asked_by, known_at, as_of, answer, horizon_until, fact_keys,
       parts, rules, digest, body)
     VALUES ${values.join(', ')}`,
    rows.flat(),
  );
}
