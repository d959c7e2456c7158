import type { INestApplication } from '@nestjs/common';
import { AccessTokens } from '../../src/accounts/access-tokens.js';
import type { Role } from '../../src/accounts/roles.js';
import { newId } from '../../src/platform/ids.js';
import { Session } from './session.js';

/** Runs SQL past row-level security. */
export type Sql = <T = Record<string, unknown>>(text: string, params?: unknown[]) => Promise<T[]>;

/** What a new club is made of. */
export interface ClubSeed {
  slug: string;
  name: string;
  zone: string;
  jurisdiction: 'US' | 'EU' | 'CA';
}

/** What a new member is made of. */
export interface MemberSeed {
  name: string;
  email: string;
  birthDate: string | null;
  membershipFrom: string;
}

/** A member made for a test. */
export interface TestMember {
  memberId: string;
  name: string;
  email: string;
}

// A well-formed argon2id hash of a random string nobody kept: these accounts sign in by token only.
const NO_PASSWORD =
  '$argon2id$v=19$m=19456,t=2,p=1$c29tZXNhbHRzb21lc2FsdA$nf65EOgLrQMR/uIPnA4rEsF5h7TKyQwu9U1bMCHGi/4';

/** A club to test in. Two clubs of one `Api` share the database and must never see each other. */
export class TestClub implements ClubSeed {
  slug: string;
  name: string;
  zone: string;
  jurisdiction: 'US' | 'EU' | 'CA';

  private constructor(
    readonly clubId: string,
    seed: ClubSeed,
    private readonly app: INestApplication,
    private readonly sql: Sql,
  ) {
    Object.assign(this, seed);
  }

  /** A new club, empty. */
  static async create(app: INestApplication, sql: Sql, values: Partial<ClubSeed> = {}): Promise<TestClub> {
    const clubId = newId();
    const seed: ClubSeed = {
      slug: `club-${clubId.slice(-12)}`,
      name: 'Larkfield Flying Group',
      zone: 'America/Chicago',
      jurisdiction: 'US',
      ...values,
    };
    await sql('INSERT INTO clubs (club_id, slug, name, zone, jurisdiction) VALUES ($1, $2, $3, $4, $5)', [
      clubId,
      seed.slug,
      seed.name,
      seed.zone,
      seed.jurisdiction,
    ]);
    return new TestClub(clubId, seed, app, sql);
  }

  /** A member with these roles, without an account. */
  async createMember(roles: Role | Role[] = 'member', values: Partial<MemberSeed> = {}): Promise<TestMember> {
    const memberId = newId();
    const name = values.name ?? `Robin Test ${memberId.slice(-6)}`;
    const email = values.email ?? `m-${memberId}@larkfield.example`;
    await this.sql(
      `INSERT INTO members (club_id, id, name, email, birth_date, standing_since, membership_from)
       VALUES ($1, $2, $3, $4, $5, $6, $6)`,
      [
        this.clubId,
        memberId,
        name,
        email,
        values.birthDate === undefined ? '1990-05-17' : values.birthDate,
        values.membershipFrom ?? '2020-01-01',
      ],
    );
    await this.sql('INSERT INTO member_roles (club_id, member_id, role) SELECT $1, $2, unnest($3::text[])', [
      this.clubId,
      memberId,
      [roles].flat(),
    ]);
    return { memberId, name, email };
  }

  /**
   * A new member with an account and access tokens, made directly and not through the sign-in route. The clock may be
   * moved: each request carries a fresh token.
   */
  async signInAs(roles: Role | Role[] = 'member', values: Partial<MemberSeed> = {}): Promise<Session> {
    const member = await this.createMember(roles, values);
    const accountId = newId();
    await this.sql(
      'INSERT INTO accounts (club_id, id, member_id, email, password_hash) VALUES ($1, $2, $3, $4, $5)',
      [this.clubId, accountId, member.memberId, member.email, NO_PASSWORD],
    );
    const person = { ...member, accountId, roles: [roles].flat() };
    const freshToken = () => this.tokenFor(person);
    return new Session(this.app.getHttpServer(), { ...person, token: freshToken() }, freshToken);
  }

  /** A fresh access token for a signed-in member. */
  tokenFor(person: { memberId: string; accountId: string; roles: Role[] }): string {
    return this.app.get(AccessTokens, { strict: false }).issue({ clubId: this.clubId, ...person });
  }
}
