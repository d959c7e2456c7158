import { Injectable } from '@nestjs/common';
import { JwtService } from '@nestjs/jwt';
import { createHmac, createSecretKey, type KeyObject } from 'node:crypto';
import { Clock } from '../platform/clock.js';
import { AppConfig } from '../platform/config.js';
import { toSeconds } from '../rules/calendar/instants.js';
import type { SignedIn } from './current-user.js';
import { ROLES, type Role } from './roles.js';

/** How long an access token lasts, in seconds. Roles taken away keep their effect for at most this long. */
export const ACCESS_TOKEN_S = 15 * 60;

const ISSUER = 'bellcrank';

interface Claims {
  sub: string;
  club: string;
  account: string;
  roles: Role[];
}

/** Makes and reads access tokens: JSON Web Tokens (RFC 7519), HS256, with times from the injected clock. */
@Injectable()
export class AccessTokens {
  private readonly key: Buffer;

  constructor(
    config: AppConfig,
    private readonly jwt: JwtService,
    private readonly clock: Clock,
  ) {
    // The secret also derives passwords, so tokens get a key of their own.
    const key = createHmac('sha256', config.secret).update('bellcrank access token').digest('base64url');
    // jsonwebtoken makes a key object of anything else with each token it reads. Its types know of key objects, those of the wrapper do not.
    this.key = createSecretKey(Buffer.from(key)) satisfies KeyObject as unknown as Buffer;
  }

  /** A token for the person, valid from now for `ACCESS_TOKEN_S`. */
  issue(person: SignedIn): string {
    const iat = toSeconds(this.clock.now());
    const claims: Claims = {
      sub: person.memberId,
      club: person.clubId,
      account: person.accountId,
      roles: person.roles,
    };
    return this.jwt.sign(
      { ...claims, iat, exp: iat + ACCESS_TOKEN_S },
      { secret: this.key, algorithm: 'HS256', issuer: ISSUER },
    );
  }

  /** The person a token speaks for, or null when it is forged, damaged, expired or not ours. */
  async read(token: string): Promise<SignedIn | null> {
    try {
      const claims = await this.jwt.verifyAsync<Claims>(token, {
        secret: this.key,
        algorithms: ['HS256'],
        issuer: ISSUER,
        clockTimestamp: toSeconds(this.clock.now()),
      });
      const roles = claims.roles.filter((role) => ROLES.includes(role));
      return { clubId: claims.club, memberId: claims.sub, accountId: claims.account, roles };
    } catch {
      return null;
    }
  }
}
