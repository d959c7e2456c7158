import type { EntityManager } from 'typeorm';
import type { Role } from '../accounts/roles.js';
import type { PagePosition } from '../platform/http/pages.js';
import { Member, MemberRole } from './member.entity.js';
import type { MemberNameView, MemberView } from './members.dto.js';

/** Members as `Records`. */
export const MEMBERS = { entity: Member, noun: 'member' };

const ROLES_OF = `ARRAY(SELECT r.role FROM member_roles r WHERE r.club_id = m.club_id AND r.member_id = m.id ORDER BY r.role)`;
// By name as people read it; the id parts namesakes. Byte order, so that cursors do not depend on the server's locale.
const AFTER = `($2::text IS NULL OR (lower(m.name) COLLATE "C", m.id) > ($2::text COLLATE "C", $3::uuid))`;
const ORDER = `ORDER BY lower(m.name) COLLATE "C", m.id LIMIT $4`;

/** A row with the key that lists are sorted by. */
export type Sorted<T> = T & { sortKey: string };

/** Members from a position on, one statement. */
export function listMembers(
  em: EntityManager,
  clubId: string,
  after: PagePosition | null,
  count: number,
): Promise<Sorted<MemberView>[]> {
  return em.query(
    `SELECT m.id, m.name, m.email, m.birth_date::text AS "birthDate", m.standing, m.standing_since::text AS "standingSince",
            m.membership_from::text AS "membershipFrom", m.membership_through::text AS "membershipThrough",
            ${ROLES_OF} AS roles, m.row_version AS "rowVersion", lower(m.name) AS "sortKey"
       FROM members m WHERE m.club_id = $1 AND ${AFTER} ${ORDER}`,
    [clubId, after?.key ?? null, after?.id ?? null, count],
  );
}

/** Names from a position on. @param instructor true or false narrows to them, null does not */
export function listNames(
  em: EntityManager,
  clubId: string,
  after: PagePosition | null,
  count: number,
  instructor: boolean | null,
): Promise<Sorted<MemberNameView>[]> {
  return em.query(
    `SELECT m.id, m.name, i.instructor, lower(m.name) AS "sortKey"
       FROM members m
      CROSS JOIN LATERAL (SELECT EXISTS (SELECT 1 FROM member_roles r
             WHERE r.club_id = m.club_id AND r.member_id = m.id AND r.role = 'instructor') AS instructor) i
      WHERE m.club_id = $1 AND ($5::boolean IS NULL OR i.instructor = $5) AND ${AFTER} ${ORDER}`,
    [clubId, after?.key ?? null, after?.id ?? null, count, instructor],
  );
}

/** The member as the API shows it. */
export async function memberView(em: EntityManager, member: Member): Promise<MemberView> {
  const {
    id,
    name,
    email,
    birthDate,
    standing,
    standingSince,
    membershipFrom,
    membershipThrough,
    rowVersion,
  } = member;
  const roles = await rolesOf(em, member.clubId, id);
  return {
    id,
    name,
    email,
    birthDate,
    standing,
    standingSince,
    membershipFrom,
    membershipThrough,
    roles,
    rowVersion,
  };
}

/** Roles of a member, sorted. */
export async function rolesOf(em: EntityManager, clubId: string, memberId: string): Promise<Role[]> {
  const rows = await em.find(MemberRole, { where: { clubId, memberId }, order: { role: 'ASC' } });
  return rows.map(({ role }) => role);
}

/** Makes the member's roles exactly these. */
export async function setRoles(
  em: EntityManager,
  clubId: string,
  memberId: string,
  roles: Role[],
): Promise<void> {
  await em.query(
    'DELETE FROM member_roles WHERE club_id = $1 AND member_id = $2 AND role <> ALL ($3::text[])',
    [clubId, memberId, roles],
  );
  await em.query(
    'INSERT INTO member_roles (club_id, member_id, role) SELECT $1, $2, unnest($3::text[]) ON CONFLICT DO NOTHING',
    [clubId, memberId, roles],
  );
}
