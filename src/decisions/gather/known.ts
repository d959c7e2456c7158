import type { EntityManager } from 'typeorm';
import { ProblemException } from '../../platform/problems/index.js';

/**
 * Refuses what names somebody or something the club does not have; as a filter, an empty list would pass for an answer.
 *
 * @param names what the request calls the two
 * @throws ProblemException 404 naming the field.
 */
export async function requireKnown(
  em: EntityManager,
  of: { memberId?: string | null; aircraftId?: string | null },
  names: Record<'memberId' | 'aircraftId', string> = { memberId: 'memberId', aircraftId: 'aircraftId' },
): Promise<void> {
  const [known]: { memberId: boolean; aircraftId: boolean }[] = await em.query(
    `SELECT $1::uuid IS NULL OR EXISTS (SELECT 1 FROM members WHERE club_id = bellcrank_club() AND id = $1) AS "memberId",
       $2::uuid IS NULL OR EXISTS (SELECT 1 FROM aircraft WHERE club_id = bellcrank_club() AND id = $2) AS "aircraftId"`,
    [of.memberId ?? null, of.aircraftId ?? null],
  );
  for (const field of ['memberId', 'aircraftId'] as const) {
    if (known![field]) continue;
    const noun = field === 'memberId' ? 'member' : 'aircraft';
    throw new ProblemException('not-found', {
      detail: `The club has no ${noun} ${of[field]}. Check the id.`,
      field: names[field],
    });
  }
}
