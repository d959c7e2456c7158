import type { EntityManager } from 'typeorm';
import type { Instant } from '../rules/calendar/instants.js';

/** Wrong passwords in a row that lock an account, and for how long the first time; each further one doubles it. */
export const LOCK_AFTER = 5;
export const FIRST_LOCK_MINUTES = 15;
const MOST_DOUBLINGS = 6;

/** An account that may be tried now. */
export interface Attempt {
  id: string;
  memberId: string;
  passwordHash: string;
}

/**
 * Counts an attempt before the password is looked at and hands out the hash; null while the account is locked or when
 * there is none. Counting first means that many attempts at once get no more tries than one after the other;
 * `forgiveAttempts` takes the count back when the password was right.
 */
export async function beginAttempt(
  em: EntityManager,
  account: { clubId: string; email: string },
  now: Instant,
): Promise<Attempt | null> {
  const [rows] = await em.query<[Attempt[], number]>(
    `UPDATE accounts
        SET failed_attempts = failed_attempts + 1,
            locked_until = CASE WHEN failed_attempts + 1 >= $4
              THEN $3::timestamptz + make_interval(mins => $5 * (2 ^ least(failed_attempts + 1 - $4, $6))::int) END
      WHERE club_id = $1 AND email = $2 AND (locked_until IS NULL OR locked_until <= $3::timestamptz)
      RETURNING id, member_id AS "memberId", password_hash AS "passwordHash"`,
    [account.clubId, account.email, now, LOCK_AFTER, FIRST_LOCK_MINUTES, MOST_DOUBLINGS],
  );
  return rows[0] ?? null;
}

/** Clears the count after a right password. */
export async function forgiveAttempts(em: EntityManager, clubId: string, accountId: string): Promise<void> {
  await em.query(
    'UPDATE accounts SET failed_attempts = 0, locked_until = NULL WHERE club_id = $1 AND id = $2',
    [clubId, accountId],
  );
}

/** Puts a sign-in, or a failed one, into the audit log. */
export async function auditSignIn(
  em: EntityManager,
  clubId: string,
  attempt: Pick<Attempt, 'id' | 'memberId'>,
  outcome: 'signed-in' | 'wrong-password' | 'refresh-token-reused',
): Promise<void> {
  await em.query(
    `INSERT INTO audit_log (club_id, actor_id, action, table_name, row_id, after)
     VALUES ($1, $2, 'sign-in', 'accounts', $3, jsonb_build_object('outcome', $4::text))`,
    [clubId, outcome === 'signed-in' ? attempt.memberId : null, attempt.id, outcome],
  );
}
