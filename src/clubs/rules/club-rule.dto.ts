import { ApiPropertyOptional } from '@nestjs/swagger';
import { IsIn } from 'class-validator';
import { DayField, NoteField, TextField, WordField } from '../../platform/http/fields.js';
import { Optional } from '../../platform/http/optional.js';
import { PageQuery } from '../../platform/http/pages.js';
import { ChangesOf } from '../../platform/http/views.js';
import { MOST } from '../../rules/index.js';
import type { ClubRuleState } from './club-rule.entity.js';

/** What a version may be. */
export const STATES: readonly ClubRuleState[] = ['draft', 'active', 'ended'];
/** The texts of a rule. */
export class ClubRuleBody {
  @TextField({ max: 120, example: 'First flight after 60 days with an instructor' })
  title: string;

  @WordField(['club', 'advice'], {
    description: '`club` refuses, and an officer may set it aside with a reason; `advice` only tells',
  })
  weight: 'club' | 'advice';

  @NoteField({
    max: MOST.characters,
    optional: true,
    description: "CEL, true or false: flights of which the rule asks something. 'true' unless given",
    example: '!flight.instruction',
  })
  appliesWhen?: string;

  @NoteField({
    max: MOST.characters,
    description: 'CEL, true or false: what the rule asks',
    example: 'flight.daysSince(pilot.lastFlightInModelOn) <= 60',
  })
  requirement: string;

  @NoteField({
    max: MOST.message,
    description:
      'What a member reads when the rule is not met. Expressions in braces are filled in: texts or numbers',
    example:
      'Your last flight in this model was on {string(pilot.lastFlightInModelOn)}: take an instructor along.',
  })
  message: string;

  @TextField({
    max: 300,
    nullable: true,
    description:
      'Told as a condition, instead of refusing, while the rule hangs on nothing but weather or loading that is not told yet',
    example: 'Go only with a crosswind of 10 kt or less.',
  })
  condition?: string | null;

  @TextField({ max: 300, description: 'The club paper that says so', example: 'Handbook 2026, section 4.2' })
  document: string;
}

/** POST /club-rules. */
export class NewClubRule extends ClubRuleBody {
  @TextField({
    max: 71,
    pattern: /^[a-z0-9]+(-[a-z0-9]+)*$/,
    says: 'lower-case words and digits joined by single hyphens',
    description:
      "Short name; decisions name the rule by 'club.own.' and it, so it is never given to another rule",
    example: 'first-flight',
  })
  slug: string;
}

/** PATCH of a draft. */
export class ClubRuleChanges extends ChangesOf(ClubRuleBody) {}

/** POST /club-rules/check: the texts that are checked. */
export class CheckBody {
  @NoteField({ max: MOST.characters, optional: true, description: "'true' unless given" })
  appliesWhen?: string;

  @NoteField({ max: MOST.characters })
  requirement: string;

  @NoteField({ max: MOST.message, optional: true })
  message?: string;

  @TextField({ max: 300, nullable: true })
  condition?: string | null;
}

/** From when on. */
export class ActivateBody {
  @DayField({ description: "First day in force, in the club's zone; today or later" })
  from: string;
}

/** Until when. */
export class EndBody {
  @DayField({
    description:
      "First day no longer in force, in the club's zone; today or later. The first day in force takes back a version to come",
  })
  to: string;
}

/** Which rules to list. */
export class ClubRulesQuery extends PageQuery {
  @ApiPropertyOptional({ enum: STATES })
  @Optional()
  @IsIn([...STATES])
  state?: ClubRuleState;

  @TextField({
    max: 80,
    optional: true,
    description: 'All versions of one rule',
    example: 'club.own.first-flight',
  })
  code?: string;
}
