import { ApiProperty } from '@nestjs/swagger';
import type { Answer, Status } from '../../rules/index.js';
import { AircraftInDecisionDto, ANSWERS } from '../decision.dto.js';

export const STATUSES: Status[] = ['met', 'short', 'unknown', 'not-applicable', 'error'];

/** A rule by name. */
export class NamedRuleDto {
  @ApiProperty({ example: 'recency.passengers.day' })
  rule: string;
  @ApiProperty()
  title: string;
}

/** A verdict that moved at a step's beginning. */
export class VerdictChangeDto extends NamedRuleDto {
  @ApiProperty({ enum: STATUSES, description: 'Verdict for departures before' })
  was: Status;
  @ApiProperty({
    enum: STATUSES,
    description: 'Verdict from here; the same one where only its conditions changed',
  })
  is: Status;
  @ApiProperty({ description: 'On the same flight with an instructor, not on the one asked about' })
  withInstructor: boolean;
}

/** A run of departures with one answer. */
export class AnswerStepDto {
  @ApiProperty({ format: 'date-time', description: 'First departure' })
  from: string;
  @ApiProperty({ format: 'date-time', description: 'The step’s departures lie before this instant' })
  to: string;
  @ApiProperty({ enum: ANSWERS })
  answer: Answer;
  @ApiProperty({
    type: [NamedRuleDto],
    description: 'Rules in the way of the flight as asked; with join=answer those at the beginning',
  })
  inTheWay: NamedRuleDto[];
  @ApiProperty({
    type: [VerdictChangeDto],
    description: 'What changed at `from`; empty at the span’s beginning',
  })
  changed: VerdictChangeDto[];
}

/** A departure to choose. */
export class SlotDto {
  @ApiProperty({ format: 'date-time' })
  departs: string;
  @ApiProperty({ format: 'date-time' })
  arrives: string;
  @ApiProperty({ enum: ANSWERS })
  answer: Answer;
}

/** A departure to choose, and in what. */
export class SlotInDto extends SlotDto {
  @ApiProperty({ type: AircraftInDecisionDto })
  aircraft: AircraftInDecisionDto;
}

const slot = (description: string) => ({ type: SlotDto, nullable: true, description });

/** The answer over the span, for one aircraft. */
export class AircraftTimelineDto {
  @ApiProperty({ type: AircraftInDecisionDto })
  aircraft: AircraftInDecisionDto;
  @ApiProperty({
    type: [AnswerStepDto],
    description: 'In order of time; together they are the span, without a gap',
  })
  steps: AnswerStepDto[];
  @ApiProperty(
    slot(
      'The first departure, on a whole minute and not past, that may be booked: aircraft and people free, and the answer yes ' +
        'or yes with conditions',
    ),
  )
  firstSlot: SlotDto | null;
  @ApiProperty(slot('The first such departure whose answer is dual-only'))
  firstDualSlot: SlotDto | null;
  @ApiProperty({
    ...{ type: String, nullable: true, format: 'date-time' },
    description: 'From here some rule was not followed further and counts as unknown; null when all were',
  })
  cutAt: string | null;
  @ApiProperty({ type: String, nullable: true, description: 'The same in a sentence' })
  horizonNote: string | null;
}

/** The answer over a span, aircraft by aircraft. */
export class TimelinesDto {
  @ApiProperty({ format: 'uuid' })
  memberId: string;
  @ApiProperty({ format: 'date-time' })
  from: string;
  @ApiProperty({ format: 'date-time' })
  to: string;
  @ApiProperty({ type: 'integer' })
  durationMinutes: number;
  @ApiProperty({
    format: 'date-time',
    description: 'When the facts were gathered; lead times count from here',
  })
  knownAt: string;
  @ApiProperty({ enum: ['detail', 'answer'] })
  join: string;
  @ApiProperty({ type: [AircraftTimelineDto], description: 'By registration' })
  aircraft: AircraftTimelineDto[];
  @ApiProperty({
    ...{ type: SlotInDto, nullable: true },
    description: 'The earliest of the first slots of all aircraft; of two at the same time the better answer',
  })
  across: SlotInDto | null;
  @ApiProperty()
  caution: string;
}
