import { Entity, PrimaryColumn } from 'typeorm';
import type { Role } from '../accounts/roles.js';
import { DateColumn, FactRow, TextColumn } from '../platform/database/columns.js';

/** Where a member may stand with the club. */
export const STANDINGS = ['good', 'arrears', 'suspended'] as const;
export type Standing = (typeof STANDINGS)[number];

/** A person of the club. */
@Entity('members')
export class Member extends FactRow {
  @TextColumn('name')
  name: string;

  /** Lower case, one per club. */
  @TextColumn('email')
  email: string;

  @DateColumn('birth_date', { nullable: true })
  birthDate: string | null;

  @TextColumn('standing')
  standing: Standing;

  @DateColumn('standing_since')
  standingSince: string;

  @DateColumn('membership_from')
  membershipFrom: string;

  /** Last day of membership; null while open-ended. */
  @DateColumn('membership_through', { nullable: true })
  membershipThrough: string | null;
}

/** A role given to a member. */
@Entity('member_roles')
export class MemberRole {
  @PrimaryColumn({ name: 'club_id', type: 'uuid' })
  clubId: string;

  @PrimaryColumn({ name: 'member_id', type: 'uuid' })
  memberId: string;

  @PrimaryColumn({ name: 'role', type: 'text' })
  role: Role;
}
