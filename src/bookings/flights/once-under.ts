import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import type { TenantDb } from '../../platform/database/tenant.js';
import type { ProblemException } from '../../platform/problems/index.js';
import { claimKey, keepAnswer, releaseKey, type StoredAnswer } from '../idempotency.js';

/** What was done, or a refusal whose record (the decision behind it) is to be kept. */
export type KeyedOutcome = { status: number; body: object } | { refused: ProblemException };

/**
 * Does something once under a key, in one transaction with the key and the answer: whoever lost the answer sends the same
 * again and gets the same. A refusal gives the key back.
 */
export async function onceUnder(
  db: TenantDb,
  of: { user: SignedIn; key: string; request: object },
  work: (em: EntityManager) => Promise<KeyedOutcome>,
): Promise<StoredAnswer> {
  const { user, key, request } = of;
  const outcome = await db.run(
    user.clubId,
    async (em): Promise<StoredAnswer | { refused: ProblemException }> => {
      const earlier = await claimKey(em, user.memberId, key, request);
      if (earlier) return earlier;
      const done = await work(em);
      if ('refused' in done) {
        await releaseKey(em, user.memberId, key);
        return done;
      }
      const answer = { status: done.status, body: JSON.stringify(done.body) };
      await keepAnswer(em, user.memberId, key, answer);
      return answer;
    },
    { actorId: user.memberId },
  );
  if ('refused' in outcome) throw outcome.refused;
  return outcome;
}
