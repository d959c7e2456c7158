import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../accounts/current-user.js';
import type { Role } from '../accounts/roles.js';
import { Clock } from '../platform/clock.js';
import { addRecord, findRecord } from '../platform/database/records.js';
import { TenantDb } from '../platform/database/tenant.js';
import { decodeCursor, type Page, pageOf, type PageQuery } from '../platform/http/pages.js';
import { requireVersion } from '../platform/http/versions.js';
import { ProblemException } from '../platform/problems/problem-exception.js';
import { clubToday } from '../clubs/club-time.js';
import { Member } from './member.entity.js';
import {
  listMembers,
  listNames,
  MEMBERS,
  memberView,
  rolesOf,
  setRoles,
  type Sorted,
} from './member-rows.js';
import { assertOwnOr, OFFICERS, READERS } from './members.access.js';
import { assertTaughtOr } from './students.js';
import type {
  CreateMemberDto,
  MemberNameView,
  MemberView,
  NamesQuery,
  StandingDto,
  UpdateMemberDto,
} from './members.dto.js';

/** The people of a club. */
@Injectable()
export class MembersService {
  constructor(
    private readonly tenants: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** All members, by name. */
  list({ clubId }: SignedIn, query: PageQuery): Promise<Page<MemberView>> {
    const after = decodeCursor(query.cursor);
    return this.tenants.run(
      clubId,
      async (em) => sortedPage(await listMembers(em, clubId, after, query.limit + 1), query.limit),
      { readOnly: true },
    );
  }

  /** Names of all members, for everyone. */
  names({ clubId }: SignedIn, query: NamesQuery): Promise<Page<MemberNameView>> {
    const after = decodeCursor(query.cursor);
    return this.tenants.run(
      clubId,
      async (em) =>
        sortedPage(
          await listNames(em, clubId, after, query.limit + 1, query.instructor ?? null),
          query.limit,
        ),
      { readOnly: true },
    );
  }

  /** One member: oneself, an instructor's student, or for officers anyone. @throws 403 `not-yours`, 404 */
  get(person: SignedIn, id: string): Promise<MemberView> {
    assertOwnOr(person, id, READERS);
    const { clubId } = person;
    return this.tenants.run(
      clubId,
      async (em) => {
        const member = await findRecord(em, MEMBERS, { clubId, id });
        await assertTaughtOr(em, person, id, { roles: OFFICERS, now: this.clock.now() });
        return memberView(em, member);
      },
      { readOnly: true },
    );
  }

  /** A new member, in good standing from today. @throws 409 when the e-mail address is taken */
  create(by: SignedIn, { roles, ...values }: CreateMemberDto): Promise<MemberView> {
    const { clubId } = by;
    return this.write(by, async (em) => {
      const standingSince = await clubToday(em, clubId, this.clock.now());
      const member = await addRecord(em, MEMBERS, { ...values, clubId, standing: 'good', standingSince });
      await setRoles(em, clubId, member.id, roles);
      return memberView(em, member);
    });
  }

  /** Changes a member, the roles and the address of the account. @throws 404, 412, 409 */
  update(
    by: SignedIn,
    id: string,
    version: number,
    { roles, ...changes }: UpdateMemberDto,
  ): Promise<MemberView> {
    const { clubId } = by;
    return this.write(by, async (em) => {
      if (roles !== undefined) await lockAdministrators(em, clubId);
      const member = await this.edit(em, clubId, id, version, changes);
      if (changes.email !== undefined) {
        await em.query(
          'UPDATE accounts SET email = $3 WHERE club_id = $1 AND member_id = $2 AND email <> $3',
          [clubId, id, member.email],
        );
      }
      if (roles !== undefined) await replaceRoles(em, member, roles);
      return memberView(em, member);
    });
  }

  /** Changes a member's standing. @throws 404, 412 */
  setStanding(
    by: SignedIn,
    id: string,
    version: number,
    { standing, since }: StandingDto,
  ): Promise<MemberView> {
    return this.write(by, async (em) =>
      memberView(em, await this.edit(em, by.clubId, id, version, { standing, standingSince: since })),
    );
  }

  /** Writes even when no column changes, so that a change of roles alone is a new version too. */
  private async edit(
    em: EntityManager,
    clubId: string,
    id: string,
    version: number,
    changes: Partial<Member>,
  ): Promise<Member> {
    const row = await findRecord(em, MEMBERS, { clubId, id }, { lock: true });
    requireVersion(row.rowVersion, version);
    const given = Object.fromEntries(Object.entries(changes).filter(([, value]) => value !== undefined));
    await em.update(Member, { clubId, id }, { name: row.name, ...given });
    return findRecord(em, MEMBERS, { clubId, id });
  }

  private write<T>(by: SignedIn, work: (em: EntityManager) => Promise<T>): Promise<T> {
    return this.tenants.run(by.clubId, work, { actorId: by.memberId });
  }
}

/** Two administrators who demote each other at once queue here. */
async function lockAdministrators(em: EntityManager, clubId: string): Promise<void> {
  await em.query(
    `SELECT 1 FROM member_roles WHERE club_id = $1 AND role = 'administrator' ORDER BY member_id FOR UPDATE`,
    [clubId],
  );
}

async function replaceRoles(em: EntityManager, { clubId, id }: Member, roles: Role[]): Promise<void> {
  const before = await rolesOf(em, clubId, id);
  await setRoles(em, clubId, id, roles);
  if (!before.includes('administrator') || roles.includes('administrator')) return;
  const left = await em.query<unknown[]>(
    `SELECT 1 FROM member_roles WHERE club_id = $1 AND role = 'administrator' LIMIT 1`,
    [clubId],
  );
  if (left.length === 0) throw new ProblemException('last-administrator', { field: 'roles' });
}

function sortedPage<T extends { id: string }>(rows: Sorted<T>[], limit: number): Page<T> {
  const page = pageOf(rows, limit, (row) => row.sortKey);
  return { ...page, items: page.items.map(({ sortKey: _sortKey, ...item }) => item as unknown as T) };
}
