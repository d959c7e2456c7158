import type { EntityManager } from 'typeorm';

/**
 * How long the answer to an act under an Idempotency-Key is kept to be told again. A page that lay without a network for a month has
 * to look first: common practice, no source.
 */
export const KEYS_KEPT_DAYS = 30;

/** Forgets the running club's keys that are older; the key may then be used for something else. */
export async function forgetOldKeys(em: EntityManager): Promise<void> {
  await em.query(
    `DELETE FROM idempotency_keys WHERE club_id = bellcrank_club() AND recorded_at < now() - make_interval(days => $1)`,
    [KEYS_KEPT_DAYS],
  );
}
