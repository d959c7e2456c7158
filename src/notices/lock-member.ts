import type { EntityManager } from 'typeorm';

/** What a person sets for themselves comes one after another. @returns false if there is no such person. */
export async function lockMember(em: EntityManager, memberId: string): Promise<boolean> {
  const rows: unknown[] = await em.query(
    'SELECT 1 FROM members WHERE club_id = bellcrank_club() AND id = $1 FOR NO KEY UPDATE',
    [memberId],
  );
  return rows.length > 0;
}
