import type { EntityManager } from 'typeorm';
import { clubToday } from '../clubs/club-time.js';
import { ProblemException } from '../platform/problems/problem-exception.js';

/** @throws ProblemException 422 for a day that is still to come in the club's zone. */
export async function notToCome(
  em: EntityManager,
  clubId: string,
  of: { field: string; on: string; now: string },
): Promise<void> {
  const today = await clubToday(em, clubId, of.now);
  if (of.on <= today) return;
  const detail = `${of.on} is still to come; today is ${today}. Record the work once it is done.`;
  throw new ProblemException('value-refused', { field: of.field, detail });
}
