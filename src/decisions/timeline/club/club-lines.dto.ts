/** The lines of a whole-club timeline, as the API describes them. */
import { ApiProperty, ApiPropertyOptional } from '@nestjs/swagger';
import type { Answer, Status } from '../../../rules/index.js';
import { AircraftInDecisionDto, ANSWERS } from '../../decision.dto.js';
import { NamedRuleDto, STATUSES } from '../timeline.dto.js';

export const CLUB_TIMELINE_SCHEMA = 'bellcrank.club-timeline/1';

export class MemberOnLinesDto {
  @ApiProperty({ format: 'uuid' })
  id: string;
  @ApiProperty()
  name: string;
}

/** The first line. */
export class ClubTimelineHeaderDto {
  @ApiProperty({ enum: [CLUB_TIMELINE_SCHEMA] })
  schema: string;
  @ApiProperty({ format: 'date-time' })
  from: string;
  @ApiProperty({ format: 'date-time' })
  to: string;
  @ApiProperty({ type: 'integer' })
  durationMinutes: number;
  @ApiProperty({ enum: ['detail', 'answer'] })
  join: string;
  @ApiProperty({
    format: 'date-time',
    description: 'When the facts were gathered; lead times count from here',
  })
  knownAt: string;
  @ApiProperty({ description: 'IANA zone of the club' })
  zone: string;
  @ApiProperty({ type: [MemberOnLinesDto], description: 'In the order of the lines, by name' })
  members: MemberOnLinesDto[];
  @ApiProperty({ type: [AircraftInDecisionDto] })
  aircraft: AircraftInDecisionDto[];
  @ApiProperty({ type: [NamedRuleDto], description: 'Titles of the rules that lines name by id' })
  rules: NamedRuleDto[];
  @ApiProperty({ type: 'integer', description: 'Lines to come before the last' })
  pairs: number;
  @ApiProperty()
  caution: string;
}

export class ChangeOnLineDto {
  @ApiProperty({ example: 'recency.passengers.day' })
  rule: string;
  @ApiProperty({ enum: STATUSES })
  was: Status;
  @ApiProperty({ enum: STATUSES })
  is: Status;
  @ApiPropertyOptional({
    enum: [true],
    description: 'Only there where it is on the same flight with an instructor',
  })
  withInstructor?: true;
}

export class StepOnLineDto {
  @ApiProperty({ format: 'date-time' })
  from: string;
  @ApiProperty({ format: 'date-time' })
  to: string;
  @ApiProperty({ enum: ANSWERS })
  answer: Answer;
  @ApiProperty({
    type: [String],
    description: 'Ids of rules; with join=answer those at the step’s beginning',
  })
  inTheWay: string[];
  @ApiProperty({ type: [ChangeOnLineDto] })
  changed: ChangeOnLineDto[];
}

/** A line for one member on one aircraft. */
export class PairLineDto {
  @ApiProperty({ format: 'uuid' })
  memberId: string;
  @ApiProperty({ format: 'uuid' })
  aircraftId: string;
  @ApiProperty({ type: [StepOnLineDto] })
  steps: StepOnLineDto[];
  @ApiPropertyOptional({
    format: 'date-time',
    description: 'Only there where some rule was not followed to the end: from here it counts as unknown',
  })
  cutAt?: string;
}

/** The last line of a whole answer. */
export class ClubTimelineEndDto {
  @ApiProperty({ enum: [true] })
  end: true;
  @ApiProperty({ type: 'integer', description: 'Pairs written' })
  pairs: number;
}

/** The last line where something went wrong on the way. */
export class ClubTimelineErrorDto {
  @ApiProperty({
    type: Object,
    description: 'A problem document (RFC 9457), as an answer of its own would be',
  })
  error: object;
}
