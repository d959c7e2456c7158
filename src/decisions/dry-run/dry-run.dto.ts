import { ApiProperty } from '@nestjs/swagger';
import { WarningView } from '../../clubs/rules/club-rule-view.dto.js';
import { WholeField } from '../../platform/http/fields.js';
import { PageQuery, PageShape } from '../../platform/http/pages.js';
import type { Answer, Status } from '../../rules/index.js';
import { ANSWERS } from '../decision.dto.js';
import type { AnswerChange, ChangedAnswer } from './tally.js';

/** Decisions looked at unless asked otherwise, and at most. */
export const DEFAULT_LOOKED_AT = 2000;
export const MOST_LOOKED_AT = 10_000;

/** How far to look. */
export class DryRunBody {
  @WholeField({
    min: 1,
    max: MOST_LOOKED_AT,
    optional: true,
    description: `Decisions to look at, newest first; those of bookings to come always come first. ${DEFAULT_LOOKED_AT} unless given`,
  })
  lookAt?: number;
}

/** Which of the changed answers. */
export class ChangesQuery extends PageQuery {}

export class ChangedAnswerDto implements ChangedAnswer {
  @ApiProperty({ format: 'uuid' })
  decisionId: string;
  @ApiProperty({
    type: String,
    format: 'uuid',
    nullable: true,
    description: 'The booking that rests on it, of a flight to come',
  })
  bookingId: string | null;
  @ApiProperty({ format: 'uuid' })
  memberId: string;
  @ApiProperty()
  memberName: string;
  @ApiProperty({ format: 'uuid' })
  aircraftId: string;
  @ApiProperty()
  registration: string;
  @ApiProperty({ format: 'date-time', description: 'Departure of the flight asked about' })
  departs: string;
  @ApiProperty({ format: 'date-time' })
  askedAt: string;
  @ApiProperty({ enum: ANSWERS, description: 'As it was answered' })
  before: Answer;
  @ApiProperty({ enum: ANSWERS, description: 'As it would be with the rule' })
  after: Answer;
  @ApiProperty({ enum: ['met', 'short', 'unknown', 'not-applicable', 'error'] })
  status: Status;
  @ApiProperty({ description: 'What the rule says of the flight' })
  says: string;
}

export class AnswerChangeDto implements AnswerChange {
  @ApiProperty({ enum: ANSWERS })
  before: Answer;
  @ApiProperty({ enum: ANSWERS })
  after: Answer;
  @ApiProperty({ type: 'integer' })
  count: number;
}

export class VerdictCountsDto {
  @ApiProperty({ type: 'integer' })
  met: number;
  @ApiProperty({ type: 'integer' })
  short: number;
  @ApiProperty({ type: 'integer' })
  unknown: number;
  @ApiProperty({ type: 'integer' })
  notApplicable: number;
  @ApiProperty({ type: 'integer' })
  error: number;
}

export class LeftOutDto {
  @ApiProperty({ type: 'integer' })
  count: number;
  @ApiProperty({ description: 'Why, as a sentence' })
  because: string;
}

/** What a dry run found, without the changed answers themselves. */
export class DryRunSummaryDto {
  @ApiProperty({ format: 'uuid' })
  ruleId: string;
  @ApiProperty({ type: 'integer', description: 'Row version of the draft that was tried' })
  draftVersion: number;
  @ApiProperty({ format: 'date-time' })
  at: string;
  @ApiProperty({ format: 'date-time', description: 'Decisions asked for since' })
  since: string;
  @ApiProperty({ type: 'integer', description: 'Decisions looked at, those of bookings to come included' })
  lookedAt: number;
  @ApiProperty({ type: 'integer', description: 'Bookings to come among them' })
  bookingsToCome: number;
  @ApiProperty({ type: [LeftOutDto], description: 'What was not looked at, and why' })
  leftOut: LeftOutDto[];
  @ApiProperty({ type: VerdictCountsDto, description: 'What the rule says of the flights looked at' })
  verdicts: VerdictCountsDto;
  @ApiProperty({ type: 'integer', description: 'Answers that would have been others' })
  changed: number;
  @ApiProperty({ type: 'integer', description: 'Bookings to come among them' })
  changedBookings: number;
  @ApiProperty({ type: [AnswerChangeDto] })
  changes: AnswerChangeDto[];
  @ApiProperty({ type: [WarningView], description: 'From its text, and from the flights looked at' })
  warnings: WarningView[];
  @ApiProperty({ description: 'What the run rests on, for people' })
  basis: string;
  @ApiProperty()
  caution: string;
}

/** A page of changed answers: bookings to come first, then newest first. */
export class ChangedAnswersPage extends PageShape {
  @ApiProperty({ type: [ChangedAnswerDto] })
  items: ChangedAnswerDto[];
}

/** What a dry run found, with the first of the changed answers. */
export class DryRunDto extends DryRunSummaryDto {
  @ApiProperty({
    type: [ChangedAnswerDto],
    description: 'The first of them; the rest at GET .../dry-run/changes',
  })
  items: ChangedAnswerDto[];
  @ApiProperty({
    type: 'string',
    nullable: true,
    description: 'Send it as cursor to .../dry-run/changes; null when these are all',
  })
  nextCursor: string | null;
}
