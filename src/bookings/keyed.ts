/** Acts under an Idempotency-Key: done once, answered the same however often they are sent. */
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../accounts/current-user.js';
import { EXCLUSION_VIOLATION, sqlStateOf } from '../platform/database/constraint-problems.js';
import type { TenantDb } from '../platform/database/tenant.js';
import type { ProblemException } from '../platform/problems/index.js';
import { answerOnce, type Answer, type Refused, type StoredAnswer } from './idempotency.js';

/** What became of an act: its answer, or a refusal that commits, so that the decision behind it is kept. */
export type Done = Answer | Refused;

/** An act under a key. */
export interface KeyedAct {
  /** What the key stands for: the request, with what it is about. */
  request: object;
  work: (em: EntityManager) => Promise<Done>;
  /** Looks for the conflict that the database refused an overlap for; without it, the database's refusal passes. */
  conflict?: (em: EntityManager) => Promise<ProblemException | null>;
}

/** Runs the act in one transaction, or gives the stored answer of an earlier request with the same key. */
export async function underKey(
  db: TenantDb,
  user: SignedIn,
  key: string,
  act: KeyedAct,
): Promise<StoredAnswer> {
  const { clubId, memberId } = user;
  let outcome: StoredAnswer | Refused;
  try {
    outcome = await db.run(
      clubId,
      (em) => answerOnce(em, { memberId, key, request: act.request }, () => act.work(em)),
      { actorId: memberId },
    );
  } catch (error) {
    // The database refused an overlap that was not there when we looked: tell it as the conflict it is.
    if (!act.conflict || sqlStateOf(error) !== EXCLUSION_VIOLATION) throw error;
    throw (await db.run(clubId, act.conflict, { readOnly: true })) ?? error;
  }
  if ('refused' in outcome) throw outcome.refused;
  return outcome;
}
