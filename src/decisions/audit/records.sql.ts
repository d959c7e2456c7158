/** The records of the chain as JSON: what their entries are made of. Instants to the microsecond, long texts by digest. */

const instant = (column: string): string =>
  `to_char(${column} AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.US"Z"')`;

const sha256 = (column: string): string => `encode(sha256(convert_to(${column}, 'UTF8')), 'hex')`;

/** A row of decisions, aliased `d`; its facts come in by their digests in `parts`. */
export const DECISION = `jsonb_build_object('kind', 'decision', 'id', d.id, 'member', d.member_id, 'aircraft', d.aircraft_id,
  'askedBy', d.asked_by, 'knownAt', ${instant('d.known_at')}, 'asOf', ${instant('d.as_of')}, 'answer', d.answer,
  'horizonUntil', ${instant('d.horizon_until')}, 'factKeys', to_jsonb(d.fact_keys), 'parts', d.parts, 'rules', d.rules,
  'digest', d.digest, 'body', ${sha256('d.body')}, 'recordedAt', ${instant('d.recorded_at')})`;

/** A row of overrides, aliased `o`. */
export const OVERRIDE = `jsonb_build_object('kind', 'override', 'id', o.id, 'booking', o.booking_id, 'decision', o.decision_id,
  'rule', o.rule_id, 'weight', o.weight, 'officer', o.officer_id, 'reason', o.reason, 'recordedAt', ${instant('o.recorded_at')})`;

/** The first second of a link's sealing, as it is hashed. */
export const SEALED_AT = `to_char(c.sealed_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"')`;

/** Whether a part of the facts, aliased `f`, is what its digest says. */
export const PART_WHOLE = `${sha256('f.body')} = f.digest`;

const notYet = (table: string, alias: string, column: string): string =>
  `FROM ${table} ${alias} WHERE ${alias}.club_id = bellcrank_club() AND NOT EXISTS (
     SELECT 1 FROM decision_chain c WHERE c.club_id = ${alias}.club_id AND c.${column} = ${alias}.id)`;

export const UNSEALED_DECISIONS = notYet('decisions', 'd', 'decision_id');
export const UNSEALED_OVERRIDES = notYet('overrides', 'o', 'override_id');
