import type { EntityManager } from 'typeorm';
import { notThere } from '../platform/database/records.js';
import { type Instant, type LocalDate, localDateOf, toSeconds } from '../rules/index.js';

/** IANA zone in which the club's days are counted. */
export async function clubZone(em: Pick<EntityManager, 'query'>, clubId: string): Promise<string> {
  const [club] = (await em.query('SELECT zone FROM clubs WHERE club_id = $1', [clubId])) as {
    zone: string;
  }[];
  if (club === undefined) throw notThere('club');
  return club.zone;
}

/** The date in the club's zone at an instant. */
export async function clubToday(
  em: Pick<EntityManager, 'query'>,
  clubId: string,
  now: Instant,
): Promise<LocalDate> {
  return localDateOf(toSeconds(now), await clubZone(em, clubId));
}
