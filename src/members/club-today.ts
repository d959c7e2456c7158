import type { EntityManager } from 'typeorm';
import { notThere } from '../platform/database/records.js';
import type { LocalDate } from '../rules/calendar/dates.js';
import { type Instant, localDateOf, toSeconds } from '../rules/calendar/instants.js';

/** The date in the club's zone at an instant. */
export async function clubToday(em: EntityManager, clubId: string, now: Instant): Promise<LocalDate> {
  const [club] = await em.query<{ zone: string }[]>('SELECT zone FROM clubs WHERE club_id = $1', [clubId]);
  if (club === undefined) throw notThere('club');
  return localDateOf(toSeconds(now), club.zone);
}
