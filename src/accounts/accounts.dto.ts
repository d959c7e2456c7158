import { ApiProperty } from '@nestjs/swagger';
import { Transform } from 'class-transformer';
import { IsEmail, IsString, Length, MaxLength } from 'class-validator';
import { PASSWORD_MAX, PASSWORD_MIN } from './passwords.js';
import { ROLES, type Role } from './roles.js';

/** E-mail addresses are compared and kept in lower case. */
export const lowerCase = ({ value }: { value: unknown }): unknown =>
  typeof value === 'string' ? value.trim().toLowerCase() : value;

/** Who signs in. */
export class SignInDto {
  @ApiProperty({ description: "The club's short name, as in its address", example: 'larkfield' })
  @IsString()
  @Length(1, 60)
  club: string;

  @ApiProperty({ format: 'email', example: 'robin@larkfield.example' })
  @Transform(lowerCase)
  @IsEmail()
  email: string;

  @ApiProperty({ format: 'password', maxLength: PASSWORD_MAX })
  @IsString()
  @Length(1, PASSWORD_MAX)
  password: string;
}

/** Refreshing and signing out. */
export class RefreshDto {
  @ApiProperty({ description: 'The newest refresh token of this sign-in; each counts once' })
  @IsString()
  @MaxLength(200)
  refreshToken: string;
}

/** Changing one's own password. */
export class ChangePasswordDto {
  @ApiProperty({ format: 'password', maxLength: PASSWORD_MAX })
  @IsString()
  @Length(1, PASSWORD_MAX)
  currentPassword: string;

  @ApiProperty({ format: 'password', minLength: PASSWORD_MIN, maxLength: PASSWORD_MAX })
  @IsString()
  @Length(PASSWORD_MIN, PASSWORD_MAX)
  newPassword: string;
}

/** A password that an administrator gives to a member. */
export class GivenPasswordDto {
  @ApiProperty({ format: 'password', minLength: PASSWORD_MIN, maxLength: PASSWORD_MAX })
  @IsString()
  @Length(PASSWORD_MIN, PASSWORD_MAX)
  password: string;
}

/** What a sign-in gives. */
export class TokensView {
  @ApiProperty({ description: 'JSON Web Token; send it as "Authorization: Bearer …"' })
  accessToken: string;

  @ApiProperty({ enum: ['Bearer'] })
  tokenType: 'Bearer';

  @ApiProperty({ description: 'Seconds until the access token ends', example: 900 })
  expiresInS: number;

  @ApiProperty({ description: 'Buys the next pair of tokens, once' })
  refreshToken: string;

  @ApiProperty({ format: 'date-time' })
  refreshExpiresAt: string;
}

/** The signed-in person's club. */
export class MyClubView {
  @ApiProperty({ format: 'uuid' })
  id: string;

  @ApiProperty()
  slug: string;

  @ApiProperty()
  name: string;

  @ApiProperty({ description: "IANA zone of the club's days", example: 'America/Chicago' })
  zone: string;

  @ApiProperty({ enum: ['US', 'EU', 'CA'] })
  jurisdiction: string;
}

/** The signed-in person. */
export class MeView {
  @ApiProperty({ format: 'uuid' })
  memberId: string;

  @ApiProperty({ format: 'uuid' })
  accountId: string;

  @ApiProperty()
  name: string;

  @ApiProperty({ format: 'email' })
  email: string;

  @ApiProperty({
    enum: ROLES,
    isArray: true,
    description: 'Roles held now; the access token may be up to 15 minutes behind',
  })
  roles: Role[];

  @ApiProperty({ type: () => MyClubView })
  club: MyClubView;
}

/** An account as administrators see it. */
export class AccountView {
  @ApiProperty({ format: 'uuid' })
  id: string;

  @ApiProperty({ format: 'uuid' })
  memberId: string;

  @ApiProperty({ format: 'email', description: "Kept in step with the member's address" })
  email: string;

  @ApiProperty({
    type: String,
    format: 'date-time',
    nullable: true,
    description: 'Locked until then after wrong passwords',
  })
  lockedUntil: string | null;

  @ApiProperty()
  rowVersion: number;
}
