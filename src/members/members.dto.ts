import { Transform } from 'class-transformer';
import { IsEmail } from 'class-validator';
import { lowerCase } from '../accounts/accounts.dto.js';
import { ROLES, type Role } from '../accounts/roles.js';
import { DayField, Shown, SwitchField, TextField, WordField, WordsField } from '../platform/http/fields.js';
import { PageQuery, PageShape } from '../platform/http/pages.js';
import { ChangesOf, ViewOf } from '../platform/http/views.js';
import { STANDINGS, type Standing } from './member.entity.js';

/** A new member. */
export class CreateMemberDto {
  @TextField({ max: 120, example: 'Robin Sparrow' })
  name: string;

  @Shown({ type: 'string', format: 'email', description: 'Kept in lower case; one per member' })
  @Transform(lowerCase)
  @IsEmail()
  email: string;

  @DayField({ nullable: true, description: 'Medical durations depend on it' })
  birthDate?: string | null;

  @DayField()
  membershipFrom: string;

  @DayField({ nullable: true, description: 'Last day; null while open-ended' })
  membershipThrough?: string | null;

  @WordsField(ROLES, { least: 1 })
  roles: Role[];
}

/** Changes to a member; what is left out stays. Roles are replaced as a whole. */
export class UpdateMemberDto extends ChangesOf(CreateMemberDto) {}

/** A change of standing. */
export class StandingDto {
  @WordField(STANDINGS)
  standing: Standing;

  @DayField({ description: 'First day it holds' })
  since: string;
}

/** Narrows the list of names. */
export class NamesQuery extends PageQuery {
  @SwitchField({ description: 'true: only instructors; false: only the others' })
  instructor?: boolean;
}

/** A member as officers and the member see it. */
export class MemberView extends ViewOf(CreateMemberDto) {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string', enum: [...STANDINGS] })
  standing: Standing;

  @Shown({ type: 'string', format: 'date' })
  standingSince: string;

  @Shown({ type: 'integer' })
  rowVersion: number;
}

/** What every member may know of another: enough to choose an instructor or a second pilot. */
export class MemberNameView {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string' })
  name: string;

  @Shown({ type: 'boolean', description: 'Whether the member is an instructor of the club' })
  instructor: boolean;
}

/** One page of members. */
export class MemberPage extends PageShape {
  @Shown({ type: () => MemberView, isArray: true })
  items: MemberView[];
}

/** One page of names. */
export class MemberNamePage extends PageShape {
  @Shown({ type: () => MemberNameView, isArray: true })
  items: MemberNameView[];
}
