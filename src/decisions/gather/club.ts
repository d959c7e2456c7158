import type { EntityManager } from 'typeorm';
import type { AirfieldFact, Jurisdiction, Policy } from '../../rules/index.js';
import { date, object } from './sql.js';

/** What every decision of a club shares. */
export interface ClubFacts {
  name: string;
  zone: string;
  jurisdiction: Jurisdiction;
  policy: Policy;
  airfields: AirfieldFact[];
}

const POLICY = `(SELECT coalesce(jsonb_agg(${object({
  id: 'p.parameter_id',
  from: date('p.valid_from'),
  value: 'p.value',
  reference: 'p.reference',
})} ORDER BY p.parameter_id, p.valid_from), '[]'::jsonb) FROM policy_values p WHERE p.club_id = c.club_id)`;

const RUNWAYS = `(SELECT coalesce(jsonb_agg(${object({
  designator: 'r.designator',
  trueHeadingDeg: 'r.true_heading_deg',
  lengthFt: 'r.length_ft',
  surface: 'r.surface',
  lit: 'r.lit',
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

const SQL = `SELECT c.name, c.zone, c.jurisdiction, jsonb_build_object('values', ${POLICY}) AS policy, ${AIRFIELDS} AS airfields
FROM clubs c WHERE c.club_id = bellcrank_club()`;

/** The running transaction's club: zone, jurisdiction, dated policy and airfields, in one statement. */
export async function gatherClub(em: EntityManager): Promise<ClubFacts> {
  const rows: ClubFacts[] = await em.query(SQL);
  if (!rows[0]) throw new Error('no club is set for this transaction');
  return rows[0];
}
