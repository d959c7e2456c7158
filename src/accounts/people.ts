import type { EntityManager } from 'typeorm';
import type { SignedIn } from './current-user.js';
import type { Role } from './roles.js';

/** The person behind an account, with the roles held now; null when the account is gone. */
export async function personOfAccount(
  em: EntityManager,
  clubId: string,
  accountId: string,
): Promise<SignedIn | null> {
  const rows = await em.query<{ memberId: string; roles: Role[] }[]>(
    `SELECT a.member_id AS "memberId",
            ARRAY(SELECT r.role FROM member_roles r
                   WHERE r.club_id = a.club_id AND r.member_id = a.member_id ORDER BY r.role) AS roles
       FROM accounts a WHERE a.club_id = $1 AND a.id = $2`,
    [clubId, accountId],
  );
  return rows[0] === undefined ? null : { clubId, accountId, ...rows[0] };
}
