/** Acts under an Idempotency-Key: done once, answered the same however often they are sent. */
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../accounts/current-user.js';
import { sqlStateOf } from '../platform/database/constraint-problems.js';
import type { TenantDb } from '../platform/database/tenant.js';
import type { ProblemException } from '../platform/problems/index.js';
import { claimKey, keepAnswer, releaseKey, type StoredAnswer } from './idempotency.js';

/** SQLSTATE of an exclusion constraint's refusal (PostgreSQL manual, appendix A). */
const EXCLUSION_VIOLATION = '23P01';

/** What became of an act: its answer, or a refusal that commits, so that the decision behind it is kept. */
export type Done = { status: number; body: object } | { refused: ProblemException };

/** An act that may be refused by an overlap. */
export interface KeyedAct {
  /** What the key stands for: the request, with what it is about. */
  request: object;
  work: (em: EntityManager) => Promise<Done>;
  /** Looks for the conflict that the database refused an overlap for. */
  conflict: (em: EntityManager) => Promise<ProblemException | null>;
}

/** Runs the act in one transaction, or gives the stored answer of an earlier request with the same key. */
export async function underKey(
  db: TenantDb,
  user: SignedIn,
  key: string,
  act: KeyedAct,
): Promise<StoredAnswer> {
  const { clubId, memberId } = user;
  const once = async (em: EntityManager): Promise<StoredAnswer | { refused: ProblemException }> => {
    const earlier = await claimKey(em, memberId, key, act.request);
    if (earlier) return earlier;
    const done = await act.work(em);
    if ('refused' in done) {
      await releaseKey(em, memberId, key);
      return done;
    }
    const answer = { status: done.status, body: JSON.stringify(done.body) };
    await keepAnswer(em, memberId, key, answer);
    return answer;
  };
  let outcome: StoredAnswer | { refused: ProblemException };
  try {
    outcome = await db.run(clubId, once, { actorId: memberId });
  } catch (error) {
    // The database refused an overlap that was not there when we looked: tell it as the conflict it is.
    if (sqlStateOf(error) !== EXCLUSION_VIOLATION) throw error;
    throw (await db.run(clubId, act.conflict, { readOnly: true })) ?? error;
  }
  if ('refused' in outcome) throw outcome.refused;
  return outcome;
}
