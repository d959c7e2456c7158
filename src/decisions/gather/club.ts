import type { EntityManager } from 'typeorm';
import type { AirfieldFact, Jurisdiction, Policy } from '../../rules/index.js';
import { OLDEST_HOURS } from '../../weather/reports/keep-reports.js';
import type { StoredReport } from '../../weather/reports/stored-report.js';
import { asOf, type AsOf } from './as-of.js';
import { samePolicy } from './same-policy.js';
import { date, instant, object } from './sql.js';

/** What every decision of a club shares. */
export interface ClubFacts extends AsOf {
  name: string;
  zone: string;
  jurisdiction: Jurisdiction;
  policy: Policy;
  airfields: AirfieldFact[];
  /** Weather reports of now, the newest of each kind and airfield; none when the facts of no moment are asked for. */
  reports: StoredReport[];
}

const POLICY = `(SELECT coalesce(jsonb_agg(${object({
  id: 'p.parameter_id',
  from: date('p.valid_from'),
  value: 'p.value',
  reference: 'p.reference',
})} ORDER BY p.parameter_id, p.valid_from), '[]'::jsonb) FROM policy_values p WHERE p.club_id = c.club_id)`;

// The club's own rules, all versions that were not over the day before yesterday: those to come judge flights to come.
const RULES = `(SELECT jsonb_agg(${object({
  code: 'r.code',
  version: 'r.version',
  title: 'r.title',
  weight: 'r.weight',
  appliesWhen: 'r.applies_when',
  requirement: 'r.requirement',
  message: 'r.message',
  condition: 'r.condition',
  document: 'r.document',
  from: date('r.in_force_from'),
  to: date('r.in_force_to'),
})} ORDER BY r.code, r.version)
  FROM club_rules r WHERE r.club_id = c.club_id AND r.state <> 'draft' AND r.in_force_from IS DISTINCT FROM r.in_force_to
    AND ($1::timestamptz IS NULL OR r.in_force_to IS NULL OR r.in_force_to > $1::timestamptz::date - 2))`;

// A club without rules of its own has no list of them, so that its policy is written as it always was.
const POLICY_WITH_RULES = `(SELECT jsonb_build_object('values', ${POLICY})
    || CASE WHEN own.rules IS NULL THEN '{}'::jsonb ELSE jsonb_build_object('rules', own.rules) END
  FROM (SELECT ${RULES} AS rules) own)`;

const RUNWAYS = `(SELECT coalesce(jsonb_agg(${object({
  designator: 'r.designator',
  trueHeadingDeg: 'r.true_heading_deg',
  lengthFt: 'r.length_ft',
  surface: 'r.surface',
  lit: 'r.lit',
  slopePercent: 'r.slope_percent',
})} ORDER BY r.designator), '[]'::jsonb) FROM runways r WHERE r.club_id = f.club_id AND r.airfield_id = f.id)`;

const AIRFIELDS = `(SELECT coalesce(jsonb_agg(${object({
  id: 'f.id',
  code: 'f.code',
  name: 'f.name',
  latitudeDeg: 'f.latitude_deg',
  longitudeDeg: 'f.longitude_deg',
  elevationFt: 'f.elevation_ft',
  zone: 'f.zone',
  runways: RUNWAYS,
})} ORDER BY f.code), '[]'::jsonb) FROM airfields f WHERE f.club_id = c.club_id)`;

const REPORTS = `(SELECT coalesce(jsonb_agg(${object({
  id: 'n.id',
  kind: 'n.kind',
  airfield: 'n.code',
  text: 'n.text',
  issuedAt: instant('n.issued_at'),
  obtainedAt: instant('n.obtained_at'),
  memberId: 'n.member_id',
})} ORDER BY n.code, n.kind, n.issued_at, n.id), '[]'::jsonb)
  FROM (SELECT DISTINCT ON (w.airfield_id, w.kind, w.member_id) w.*, g.code
    FROM weather_reports w JOIN airfields g ON g.club_id = w.club_id AND g.id = w.airfield_id
    WHERE w.club_id = c.club_id AND w.issued_at > $1::timestamptz - interval '${OLDEST_HOURS} hours'
      AND w.issued_at <= $1::timestamptz + interval '15 minutes'
    ORDER BY w.airfield_id, w.kind, w.member_id, w.issued_at DESC, w.obtained_at DESC, w.id DESC) n)`;

// A report comes into the window of those that count, or leaves it, though nothing is written.
const REPORT_ENDS = `SELECT e.ends FROM weather_reports w CROSS JOIN LATERAL (VALUES
      (w.issued_at + interval '${OLDEST_HOURS} hours'), (w.issued_at - interval '15 minutes')) e (ends)
   WHERE w.club_id = c.club_id AND w.issued_at > $1::timestamptz - interval '${OLDEST_HOURS} hours'`;

const SQL = `SELECT c.name, c.zone, c.jurisdiction, ${POLICY_WITH_RULES}::text AS "policyText", ${AIRFIELDS} AS airfields, ${REPORTS} AS reports,
  ${asOf('$1', REPORT_ENDS)}
FROM clubs c WHERE c.club_id = bellcrank_club()`;

/**
 * The running transaction's club: zone, jurisdiction, dated policy, rules of its own and airfields, in one statement. Rules
 * that were over when the facts were known are left out; without `knownAt` none are.
 */
export async function gatherClub(em: EntityManager, knownAt: string | null = null): Promise<ClubFacts> {
  const rows: (Omit<ClubFacts, 'policy'> & { policyText: string })[] = await em.query(SQL, [knownAt]);
  if (!rows[0]) throw new Error('no club is set for this transaction');
  const { policyText, ...club } = rows[0];
  return { ...club, policy: samePolicy(policyText) };
}
