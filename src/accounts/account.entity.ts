import { Column, Entity } from 'typeorm';
import { ClubRow, FactRow, InstantColumn, IntegerColumn, TextColumn } from '../platform/database/columns.js';

/** A member's way to sign in. */
@Entity('accounts')
export class Account extends FactRow {
  @Column({ name: 'member_id', type: 'uuid', update: false })
  memberId: string;

  /** The member's address, kept in step with it. */
  @TextColumn('email')
  email: string;

  @TextColumn('password_hash')
  passwordHash: string;

  /** Wrong passwords since the last right one. */
  @IntegerColumn('failed_attempts')
  failedAttempts: number;

  @InstantColumn('locked_until', { nullable: true })
  lockedUntil: string | null;
}

/** A refresh token as the database knows it: by its hash. One family is one sign-in. */
@Entity('refresh_tokens')
export class RefreshToken extends ClubRow {
  @Column({ name: 'account_id', type: 'uuid' })
  accountId: string;

  @Column({ name: 'family_id', type: 'uuid' })
  familyId: string;

  @TextColumn('token_hash')
  tokenHash: string;

  @InstantColumn('issued_at')
  issuedAt: string;

  @InstantColumn('expires_at')
  expiresAt: string;

  @InstantColumn('used_at', { nullable: true })
  usedAt: string | null;

  @InstantColumn('revoked_at', { nullable: true })
  revokedAt: string | null;
}
