import type { EntityManager } from 'typeorm';
import type { Instant } from '../rules/index.js';
import { CLUB_NOTICES } from '../rules/parameters/club/notices.js';

/** A value of the club's policy as of an instant; what a club starts with where it has none. */
async function valueOf(em: Pick<EntityManager, 'query'>, id: string, at: Instant): Promise<unknown> {
  const [row]: { value: unknown }[] = await em.query(
    `SELECT p.value FROM policy_values p JOIN clubs c ON c.club_id = p.club_id
      WHERE p.club_id = bellcrank_club() AND p.parameter_id = $1 AND p.valid_from <= ($2::timestamptz AT TIME ZONE c.zone)::date
      ORDER BY p.valid_from DESC LIMIT 1`,
    [id, at],
  );
  return row?.value ?? CLUB_NOTICES.find((one) => one.id === id)!.values[0]!.value;
}

/** Minutes in which what one event does is gathered into one notice. */
export async function gatherMinutes(em: Pick<EntityManager, 'query'>, at: Instant): Promise<number> {
  return Number(await valueOf(em, 'club.notices.gather-minutes', at));
}

/** How long before a lapse or an inspection people are told; smallest first. */
export interface LeadTimes {
  lapseDays: number[];
  maintenanceDays: number[];
  maintenanceHours: number[];
}

export async function leadTimes(em: Pick<EntityManager, 'query'>, at: Instant): Promise<LeadTimes> {
  const list = async (name: string) => readLeads(String(await valueOf(em, `club.notices.${name}`, at)));
  return {
    lapseDays: await list('lapse-lead-days'),
    maintenanceDays: await list('maintenance-lead-days'),
    maintenanceHours: await list('maintenance-lead-hours'),
  };
}

/** '30, 7, 1' as numbers, smallest first, each once; what is no whole number of up to four figures is left out. */
export function readLeads(text: string): number[] {
  const parts = text.split(/[\s,;]+/).filter((part) => /^\d{1,4}$/.test(part));
  return [...new Set(parts.map(Number))].sort((a, b) => a - b);
}

/** The lead time that is reached with so much left: the smallest that is not less. Null: none is reached yet. */
export const leadReached = (leads: readonly number[], left: number): number | null =>
  leads.find((lead) => lead >= left) ?? null;
