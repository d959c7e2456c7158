import type { EntityManager } from 'typeorm';
import type { ProblemException } from '../platform/problems/index.js';
import { digestOf } from '../rules/index.js';
import { keyReused } from './bookings.problems.js';

/** The stored answer of an earlier request with the same key. */
export interface StoredAnswer {
  status: number;
  body: string;
}

/** What was done, to be told again to whoever sends the same. */
export interface Answer {
  status: number;
  body: object;
}

/** A refusal that commits, so that the decision behind it is kept. */
export interface Refused {
  refused: ProblemException;
}

/**
 * Does something once under a key, in the running transaction with the key and the answer: whoever lost the answer sends the
 * same again and gets the same. A refusal gives the key back.
 * @throws ProblemException 422 when the key was used for a different request.
 */
export async function answerOnce<Done extends Answer | Refused>(
  em: EntityManager,
  of: { memberId: string; key: string; request: object },
  work: () => Promise<Done>,
): Promise<StoredAnswer | Extract<Done, Refused>> {
  const { memberId, key, request } = of;
  const earlier = await claimKey(em, memberId, key, request);
  if (earlier) return earlier;
  const done = await work();
  if ('refused' in done) {
    await releaseKey(em, memberId, key);
    return done as Extract<Done, Refused>;
  }
  const answer = { status: done.status, body: JSON.stringify(done.body) };
  await keepAnswer(em, memberId, key, answer);
  return answer;
}

/**
 * Claims a key inside the running transaction. A second request with the same key waits here until the first has
 * committed, then gets its answer; when the first rolled back, the second goes on as the first.
 *
 * @returns the stored answer, or null when the key is claimed and the work is to be done.
 * @throws ProblemException 422 when the key was used for a different request.
 */
export async function claimKey(
  em: EntityManager,
  memberId: string,
  key: string,
  request: object,
): Promise<StoredAnswer | null> {
  const digest = digestOf(request);
  const claimed: unknown[] = await em.query(
    `INSERT INTO idempotency_keys (club_id, member_id, key, request_digest, status, body)
     VALUES (bellcrank_club(), $1, $2, $3, 0, '') ON CONFLICT DO NOTHING RETURNING 1`,
    [memberId, key, digest],
  );
  if (claimed.length > 0) return null;
  const rows: { request_digest: string; status: number; body: string }[] = await em.query(
    'SELECT request_digest, status, body FROM idempotency_keys WHERE club_id = bellcrank_club() AND member_id = $1 AND key = $2',
    [memberId, key],
  );
  const row = rows[0]!;
  if (row.request_digest !== digest) throw keyReused();
  return { status: row.status, body: row.body };
}

/** Keeps the answer under the claimed key. */
async function keepAnswer(
  em: EntityManager,
  memberId: string,
  key: string,
  answer: StoredAnswer,
): Promise<void> {
  await em.query(
    'UPDATE idempotency_keys SET status = $3, body = $4 WHERE club_id = bellcrank_club() AND member_id = $1 AND key = $2',
    [memberId, key, answer.status, answer.body],
  );
}

/** Gives a claimed key back: a refusal may be tried again with the same key once the facts have changed. */
async function releaseKey(em: EntityManager, memberId: string, key: string): Promise<void> {
  await em.query(
    'DELETE FROM idempotency_keys WHERE club_id = bellcrank_club() AND member_id = $1 AND key = $2',
    [memberId, key],
  );
}
