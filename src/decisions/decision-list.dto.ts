import { ApiProperty, ApiPropertyOptional } from '@nestjs/swagger';
import { IsIn } from 'class-validator';
import { IsId, Optional, PageQuery, PageShape } from '../platform/http/index.js';
import type { Answer } from '../rules/index.js';
import type { DecisionRow } from './decision-list.js';
import { ANSWERS } from './decision.dto.js';

/** Which decisions to list. */
export class DecisionsQuery extends PageQuery {
  @ApiPropertyOptional({
    format: 'uuid',
    description: 'Whose; your own unless given. Others for instructors, safety officers and administrators',
  })
  @Optional()
  @IsId()
  memberId?: string;

  @ApiPropertyOptional({ format: 'uuid' })
  @Optional()
  @IsId()
  aircraftId?: string;

  @ApiPropertyOptional({ enum: ANSWERS })
  @Optional()
  @IsIn(ANSWERS)
  answer?: string;
}

/** One decision in a list: what was asked and answered; the findings are in the decision itself. */
export class DecisionSummaryDto implements DecisionRow {
  @ApiProperty({ format: 'uuid' })
  id: string;
  @ApiProperty({ format: 'uuid' })
  memberId: string;
  @ApiProperty({ format: 'uuid', description: 'Who asked' })
  askedBy: string;
  @ApiProperty({ format: 'uuid' })
  aircraftId: string;
  @ApiProperty()
  registration: string;
  @ApiProperty({ enum: ANSWERS })
  answer: Answer;
  @ApiProperty({ format: 'date-time', description: 'Departure of the flight asked about' })
  asOf: string;
  @ApiProperty({ format: 'date-time', description: 'When it was asked' })
  knownAt: string;
  @ApiProperty({ type: String, nullable: true, format: 'date-time', description: 'Until when it holds' })
  horizonUntil: string | null;
}

/** One page of decisions, newest first. */
export class DecisionsPageDto extends PageShape {
  @ApiProperty({ type: [DecisionSummaryDto] })
  items: DecisionSummaryDto[];
  @ApiProperty()
  caution: string;
}
