import { Injectable } from '@nestjs/common';
import { randomBytes } from 'node:crypto';
import { type EntityManager, LessThan } from 'typeorm';
import { Clock } from '../platform/clock.js';
import { newId, UUID } from '../platform/ids.js';
import { sha256 } from '../platform/sha256.js';
import { plusSeconds } from '../rules/calendar/instants.js';
import { RefreshToken } from './account.entity.js';

/** How long a refresh token lasts unused, in seconds. */
export const REFRESH_TOKEN_S = 30 * 24 * 60 * 60;

const SHAPE = new RegExp(`^(${UUID})\\.(${UUID})\\.[\\w-]{43}$`);

/** What came of showing a refresh token. */
export type Redeemed =
  | { outcome: 'renewed'; accountId: string; token: string; expiresAt: string }
  | { outcome: 'reused'; accountId: string }
  | { outcome: 'refused' };

/** Opaque tokens `<club>.<token id>.<secret>` that buy a new access token once; only their hash is stored. */
@Injectable()
export class RefreshTokens {
  constructor(private readonly clock: Clock) {}

  /** The club a token names, without looking whether it is genuine; null when it is no token at all. */
  clubOf(token: string): string | null {
    return SHAPE.exec(token)?.[1] ?? null;
  }

  /** A new token; a new family unless one is continued. Tokens of the account that have run out are cleared away. */
  async issue(
    em: EntityManager,
    of: { clubId: string; accountId: string; familyId?: string },
  ): Promise<{ token: string; expiresAt: string }> {
    const id = newId();
    const token = `${of.clubId}.${id}.${randomBytes(32).toString('base64url')}`;
    const issuedAt = this.clock.now();
    const expiresAt = plusSeconds(issuedAt, REFRESH_TOKEN_S);
    const { clubId, accountId } = of;
    await em.delete(RefreshToken, { clubId, accountId, expiresAt: LessThan(issuedAt) });
    await em.insert(RefreshToken, {
      clubId: of.clubId,
      id,
      accountId: of.accountId,
      familyId: of.familyId ?? newId(),
      tokenHash: sha256(token),
      issuedAt,
      expiresAt,
    });
    return { token, expiresAt };
  }

  /**
   * Trades a token for the next of its family. One that was used before has been copied by somebody, so its whole
   * family is revoked: the thief's tokens and the owner's.
   */
  async redeem(em: EntityManager, token: string): Promise<Redeemed> {
    const row = await this.find(em, token);
    if (row === null) return { outcome: 'refused' };
    const { clubId, id, accountId, familyId } = row;
    if (row.usedAt !== null && row.revokedAt === null) {
      await this.revokeFamily(em, clubId, familyId);
      return { outcome: 'reused', accountId };
    }
    const now = this.clock.now();
    if (row.revokedAt !== null || row.expiresAt <= now) return { outcome: 'refused' };
    await em.update(RefreshToken, { clubId, id }, { usedAt: now });
    return { outcome: 'renewed', accountId, ...(await this.issue(em, { clubId, accountId, familyId })) };
  }

  /** Ends the sign-in a token belongs to; does nothing for a token that is not on record. */
  async signOut(em: EntityManager, token: string): Promise<void> {
    const row = await this.find(em, token);
    if (row !== null) await this.revokeFamily(em, row.clubId, row.familyId);
  }

  /** Ends every sign-in of an account. */
  async revokeAll(em: EntityManager, clubId: string, accountId: string): Promise<void> {
    await em.query(
      'UPDATE refresh_tokens SET revoked_at = $3 WHERE club_id = $1 AND account_id = $2 AND revoked_at IS NULL',
      [clubId, accountId, this.clock.now()],
    );
  }

  private async revokeFamily(em: EntityManager, clubId: string, familyId: string): Promise<void> {
    await em.query(
      'UPDATE refresh_tokens SET revoked_at = $3 WHERE club_id = $1 AND family_id = $2 AND revoked_at IS NULL',
      [clubId, familyId, this.clock.now()],
    );
  }

  /** Found by the hash of the whole token and locked, so that two uses at once cannot both be the first. */
  private async find(em: EntityManager, token: string): Promise<RefreshToken | null> {
    const [, clubId, id] = SHAPE.exec(token) ?? [];
    // TypeORM leaves undefined conditions out, so a token without ids must not get there.
    if (clubId === undefined || id === undefined) return null;
    return em.findOne(RefreshToken, {
      where: { clubId, id, tokenHash: sha256(token) },
      lock: { mode: 'pessimistic_write' },
    });
  }
}
