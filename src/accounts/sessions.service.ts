import { Injectable } from '@nestjs/common';
import { Clock } from '../platform/clock.js';
import { TenantDb } from '../platform/database/tenant.js';
import { Account } from './account.entity.js';
import { AccessTokens, ACCESS_TOKEN_S } from './access-tokens.js';
import { assertGoodPassword, refreshRefused, signInRefused } from './accounts.problems.js';
import type { TokensView } from './accounts.dto.js';
import { auditSignIn, beginAttempt, forgiveAttempts } from './attempts.js';
import type { SignedIn } from './current-user.js';
import { checkPassword, hashPassword } from './passwords.js';
import { personOfAccount } from './people.js';
import { RefreshTokens } from './refresh-tokens.js';

// No club has this id: a sign-in to an unknown club goes the same way as any other and finds no account.
const NO_CLUB = '00000000-0000-0000-0000-000000000000';

/** Signing in and out, and staying signed in. */
@Injectable()
export class SessionsService {
  constructor(
    private readonly tenants: TenantDb,
    private readonly accessTokens: AccessTokens,
    private readonly refreshTokens: RefreshTokens,
    private readonly clock: Clock,
  ) {}

  /**
   * Who a password belongs to, or null: unknown club, unknown address, wrong password and locked account are all the
   * same to the caller.
   */
  async authenticate(slug: string, email: string, password: string): Promise<SignedIn | null> {
    const clubId = (await this.clubOf(slug)) ?? NO_CLUB;
    const accountId = await this.tryPassword(clubId, email, password);
    if (accountId === null) return null;
    return this.tenants.run(clubId, (em) => personOfAccount(em, clubId, accountId), { readOnly: true });
  }

  /** Tokens for somebody who has just authenticated. */
  async open(person: SignedIn): Promise<TokensView> {
    const { clubId, accountId } = person;
    const refresh = await this.tenants.run(clubId, (em) =>
      this.refreshTokens.issue(em, { clubId, accountId }),
    );
    return this.tokens(person, refresh);
  }

  /** New tokens for a refresh token, with the roles held now. */
  async refresh(token: string): Promise<TokensView> {
    const clubId = this.refreshTokens.clubOf(token);
    if (clubId === null) throw refreshRefused();
    const renewed = await this.tenants.run(clubId, async (em) => {
      const redeemed = await this.refreshTokens.redeem(em, token);
      if (redeemed.outcome === 'refused') return null;
      const person = await personOfAccount(em, clubId, redeemed.accountId);
      if (redeemed.outcome === 'renewed') return person && this.tokens(person, redeemed);
      if (person) await auditSignIn(em, clubId, { ...person, id: person.accountId }, 'refresh-token-reused');
      return null;
    });
    if (renewed === null) throw refreshRefused();
    return renewed;
  }

  /** Ends one sign-in. Silent when the token is unknown: the caller wanted to be out, and is. */
  async close(token: string): Promise<void> {
    const clubId = this.refreshTokens.clubOf(token);
    if (clubId !== null) await this.tenants.run(clubId, (em) => this.refreshTokens.signOut(em, token));
  }

  /**
   * Changes one's own password and ends every other sign-in.
   * @throws 401 `sign-in-refused` when the current password is wrong (which counts as a failed attempt)
   */
  async changePassword(person: SignedIn, current: string, next: string): Promise<TokensView> {
    const { clubId, accountId, memberId } = person;
    const account = await this.tenants.run(clubId, (em) => em.findOneBy(Account, { clubId, id: accountId }), {
      readOnly: true,
    });
    if (account === null) throw signInRefused();
    assertGoodPassword(next, account.email, 'newPassword');
    if ((await this.tryPassword(clubId, account.email, current)) === null) throw signInRefused();
    const passwordHash = await hashPassword(next);
    return this.tenants.run(
      clubId,
      async (em) => {
        await em.update(Account, { clubId, id: accountId }, { passwordHash });
        await this.refreshTokens.revokeAll(em, clubId, accountId);
        return this.tokens(person, await this.refreshTokens.issue(em, { clubId, accountId }));
      },
      { actorId: memberId },
    );
  }

  /** Counts and checks one attempt. No transaction is open while the hash is worked out. */
  private async tryPassword(clubId: string, email: string, password: string): Promise<string | null> {
    const attempt = await this.tenants.run(clubId, (em) =>
      beginAttempt(em, { clubId, email }, this.clock.now()),
    );
    const right = await checkPassword(attempt?.passwordHash ?? null, password);
    if (attempt === null) return null;
    await this.tenants.run(clubId, async (em) => {
      if (right) await forgiveAttempts(em, clubId, attempt.id);
      await auditSignIn(em, clubId, attempt, right ? 'signed-in' : 'wrong-password');
    });
    return right ? attempt.id : null;
  }

  /** The slug, set for the transaction, opens that one club for reading (policy clubs_sign_in). */
  private clubOf(slug: string): Promise<string | undefined> {
    return this.tenants.runWithoutClub(
      slug,
      async (em) =>
        (await em.query<{ id: string }[]>('SELECT club_id AS id FROM clubs WHERE slug = $1', [slug]))[0]?.id,
      { readOnly: true },
    );
  }

  private tokens(person: SignedIn, refresh: { token: string; expiresAt: string }): TokensView {
    return {
      accessToken: this.accessTokens.issue(person),
      tokenType: 'Bearer',
      expiresInS: ACCESS_TOKEN_S,
      refreshToken: refresh.token,
      refreshExpiresAt: refresh.expiresAt,
    };
  }
}
