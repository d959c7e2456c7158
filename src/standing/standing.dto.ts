import { ApiPropertyOptional } from '@nestjs/swagger';
import { ANSWERS } from '../decisions/decision.dto.js';
import { IsId, Optional, PageQuery } from '../platform/http/index.js';
import { Shown, SwitchField } from '../platform/http/fields.js';
import { PageShape } from '../platform/http/pages.js';
import type { Answer } from '../rules/index.js';

const ANSWER = { type: 'string', enum: ANSWERS } as const;

/** Whose standing answers to list. */
export class StandingQuery extends PageQuery {
  @ApiPropertyOptional({
    format: 'uuid',
    description: 'Flights that take this person up; your own unless you may read others',
  })
  @Optional()
  @IsId()
  memberId?: string;

  @SwitchField({
    default: false,
    description: 'true: only flights answered otherwise than when booked',
  })
  changed?: boolean;

  @SwitchField({
    default: false,
    description: "true: the whole club's, for officers",
  })
  everybody?: boolean;
}

/** What stands in the way, a sentence a rule. */
export class StandingReasonDto {
  @Shown({ type: 'string' })
  rule: string;

  @Shown({ type: 'string' })
  title: string;

  @Shown({ type: 'string', description: 'For whoever may read the record behind it; else what it is about' })
  says: string;
}

/** A booked flight, and the answer it stands at. */
export class StandingAnswerDto {
  @Shown({ type: 'string', format: 'uuid' })
  bookingId: string;

  @Shown({ type: 'string', format: 'uuid' })
  aircraftId: string;

  @Shown({ type: 'string' })
  registration: string;

  @Shown({ type: 'string', format: 'uuid' })
  memberId: string;

  @Shown({ type: 'string' })
  memberName: string;

  @Shown({ type: 'string', format: 'date-time' })
  departs: string;

  @Shown({ type: 'string', format: 'date-time' })
  arrives: string;

  @Shown({ ...ANSWER, description: 'When it was booked' })
  bookedAt: Answer;

  @Shown({ ...ANSWER, nullable: true, description: 'Now; null until it has been judged again after booking' })
  now: Answer | null;

  @Shown({ type: () => StandingReasonDto, isArray: true })
  because: StandingReasonDto[];

  @Shown({ type: 'string', format: 'date-time', nullable: true })
  judgedAt: string | null;

  @Shown({
    type: 'boolean',
    description: 'false: facts that it read have changed, and it is about to be judged again',
  })
  current: boolean;

  @Shown({ type: 'string' })
  caution: string;
}

/** One page of standing answers, by id of their bookings. */
export class StandingPage extends PageShape {
  @Shown({ type: () => StandingAnswerDto, isArray: true })
  items: StandingAnswerDto[];
}

/** An answer that became another one. */
export class StandingChangeDto {
  @Shown({ type: 'string', format: 'date-time' })
  at: string;

  @Shown(ANSWER)
  before: Answer;

  @Shown(ANSWER)
  after: Answer;

  @Shown({
    type: () => StandingReasonDto,
    isArray: true,
    description: 'What stands in the way since and did not before',
  })
  because: StandingReasonDto[];

  @Shown({ type: 'string', isArray: true, description: 'The facts whose change brought it about, in words' })
  causes: string[];
}

/** A booked flight with the history of its answer. */
export class StandingHistoryDto extends StandingAnswerDto {
  @Shown({ type: () => StandingChangeDto, isArray: true, description: 'Newest first' })
  changes: StandingChangeDto[];
}
