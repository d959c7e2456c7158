import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { TenantDb } from '../platform/database/tenant.js';
import { requireVersion } from '../platform/http/versions.js';
import { newId } from '../platform/ids.js';
import { ProblemException } from '../platform/problems/problem-exception.js';
import { Account } from './account.entity.js';
import type { AccountView, MeView } from './accounts.dto.js';
import { assertGoodPassword } from './accounts.problems.js';
import type { SignedIn } from './current-user.js';
import { hashPassword } from './passwords.js';
import { RefreshTokens } from './refresh-tokens.js';

const notFound = (): ProblemException =>
  new ProblemException('not-found', { detail: 'The club has no such member, or the member has no account.' });

/** Accounts as the club's administrators keep them. */
@Injectable()
export class AccountsService {
  constructor(
    private readonly tenants: TenantDb,
    private readonly refreshTokens: RefreshTokens,
  ) {}

  /** The signed-in person and club. */
  me({ clubId, memberId, accountId }: SignedIn): Promise<MeView> {
    return this.tenants.run(
      clubId,
      async (em) => {
        const rows = await em.query<MeView[]>(
          `SELECT m.id AS "memberId", $3::uuid AS "accountId", m.name, m.email,
                  ARRAY(SELECT r.role FROM member_roles r
                         WHERE r.club_id = m.club_id AND r.member_id = m.id ORDER BY r.role) AS roles,
                  json_build_object('id', c.club_id, 'slug', c.slug, 'name', c.name, 'zone', c.zone,
                                    'jurisdiction', c.jurisdiction) AS club
             FROM members m JOIN clubs c ON c.club_id = m.club_id
            WHERE m.club_id = $1 AND m.id = $2`,
          [clubId, memberId, accountId],
        );
        if (rows[0] === undefined) throw notFound();
        return rows[0];
      },
      { readOnly: true },
    );
  }

  /** A member's account. @throws 404 */
  get({ clubId }: SignedIn, memberId: string): Promise<AccountView> {
    return this.tenants.run(clubId, async (em) => view(await find(em, clubId, memberId)), { readOnly: true });
  }

  /** Gives a member an account. @throws 404, 409 when there is one, 400 `weak-password` */
  async create(by: SignedIn, memberId: string, password: string): Promise<AccountView> {
    const { clubId } = by;
    const email = await this.emailOf(by, memberId);
    assertGoodPassword(password, email, 'password');
    const passwordHash = await hashPassword(password);
    return this.tenants.run(
      clubId,
      async (em) => {
        await em.query(
          `INSERT INTO accounts (club_id, id, member_id, email, password_hash)
           SELECT club_id, $3, id, email, $4 FROM members WHERE club_id = $1 AND id = $2`,
          [clubId, memberId, newId(), passwordHash],
        );
        return view(await find(em, clubId, memberId));
      },
      { actorId: by.memberId },
    );
  }

  /** Gives a new password, unlocks, and ends every sign-in of the account. @throws 404, 400 `weak-password` */
  async resetPassword(by: SignedIn, memberId: string, password: string): Promise<AccountView> {
    assertGoodPassword(password, await this.emailOf(by, memberId), 'password');
    const passwordHash = await hashPassword(password);
    return this.tenants.run(
      by.clubId,
      async (em) => {
        const { clubId, id } = await find(em, by.clubId, memberId);
        await em.update(Account, { clubId, id }, { passwordHash, failedAttempts: 0, lockedUntil: null });
        await this.refreshTokens.revokeAll(em, clubId, id);
        return view(await find(em, clubId, memberId));
      },
      { actorId: by.memberId },
    );
  }

  /** Takes an account away; access tokens in hand last up to 15 minutes more. @throws 404, 412, 409 for one's own */
  remove(by: SignedIn, memberId: string, version: number): Promise<void> {
    if (memberId === by.memberId) {
      throw new ProblemException('own-account', {
        detail: 'Ask another administrator to remove your own account.',
      });
    }
    return this.tenants.run(
      by.clubId,
      async (em) => {
        const { clubId, id, rowVersion } = await find(em, by.clubId, memberId);
        requireVersion(rowVersion, version);
        await em.delete(Account, { clubId, id });
      },
      { actorId: by.memberId },
    );
  }

  private emailOf({ clubId }: SignedIn, memberId: string): Promise<string> {
    return this.tenants.run(
      clubId,
      async (em) => {
        const rows = await em.query<{ email: string }[]>(
          'SELECT email FROM members WHERE club_id = $1 AND id = $2',
          [clubId, memberId],
        );
        if (rows[0] === undefined) throw notFound();
        return rows[0].email;
      },
      { readOnly: true },
    );
  }
}

async function find(em: EntityManager, clubId: string, memberId: string): Promise<Account> {
  const account = await em.findOneBy(Account, { clubId, memberId });
  if (account === null) throw notFound();
  return account;
}

const view = ({ id, memberId, email, lockedUntil, rowVersion }: Account): AccountView => ({
  id,
  memberId,
  email,
  lockedUntil,
  rowVersion,
});
