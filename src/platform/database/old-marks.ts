import type { EntityManager } from 'typeorm';

/** How long marks of changed facts are kept: far longer than anything gathered is remembered, or any transaction runs. */
const KEPT = "interval '1 day'";

/** Forgets the running club's marks that nobody asks for any more. */
export async function forgetOldMarks(em: EntityManager): Promise<void> {
  await em.query(`DELETE FROM fact_marks WHERE club_id = bellcrank_club() AND recorded_at < now() - ${KEPT}`);
}
