import { ApiProperty, ApiPropertyOptional, IntersectionType, OmitType, PickType } from '@nestjs/swagger';
import {
  Allow,
  ArrayMaxSize,
  ArrayMinSize,
  ArrayUnique,
  IsArray,
  IsIn,
  IsInt,
  Max,
  Min,
} from 'class-validator';
import { IsId, IsInstant, Optional } from '../../platform/http/index.js';
import { AskDto } from '../flight-request.dto.js';
import { LONGEST_SPAN_DAYS } from './span.js';

/** `detail`: a step wherever the answer or what stands in the way changes; `answer`: only where the answer does. */
export type Join = 'detail' | 'answer';

/** A flight's longest length, minutes: as in a flight request. */
const LONGEST_MINUTES = 400 * 1440;
/** Members that can be named at once. */
const MOST_NAMED = 500;

/** When and how long. */
class SpanFields {
  @ApiProperty({
    ...{ format: 'date-time', example: '2027-03-01T06:00:00Z' },
    description: 'First departure looked at; not past',
  })
  @IsInstant()
  from: string;

  @ApiProperty({
    ...{ format: 'date-time', example: '2027-03-31T06:00:00Z' },
    description: `Departures before this instant are looked at; at most ${LONGEST_SPAN_DAYS} days after \`from\``,
  })
  @IsInstant()
  to: string;

  @ApiProperty({
    ...{ type: 'integer', minimum: 1, maximum: LONGEST_MINUTES, example: 120 },
    description: 'From departure to arrival; the flight keeps its length wherever in the span it leaves',
  })
  @IsInt()
  @Min(1)
  @Max(LONGEST_MINUTES)
  durationMinutes: number;

  /** Let through the check so that it can be refused with a reason; not part of the description. */
  @Allow()
  weather?: unknown;
}

const joinWords = (byDefault: Join) => ({
  enum: ['detail', 'answer'],
  default: byDefault,
  description:
    'detail: a step wherever the answer changes or what stands in the way. answer: steps of one answer are joined; ' +
    'what stands in the way is then told as at the step’s beginning',
});

/** One member's flight, whenever in a span it might leave. */
export class TimelineDto extends IntersectionType(
  OmitType(AskDto, ['departs', 'arrives', 'weather', 'reports', 'ways']),
  SpanFields,
) {
  @ApiPropertyOptional(joinWords('detail'))
  @Optional()
  @IsIn(['detail', 'answer'])
  join?: Join;
}

/** The parts of a flight that stay the same whoever flies it. Nobody is named: each member asks for themselves. */
const ANYONES = [
  ...([
    'purpose',
    'flightRules',
    'personsOnBoard',
    'forHire',
    'route',
    'landings',
    'runways',
    'plannedHours',
  ] as const),
  ...(['airspace', 'maxAltitudeFtMsl', 'maxSpeedKias', 'usesVor', 'usesTransponder'] as const),
  ...(['overWaterBeyondGlide', 'loading', 'aircraftIds'] as const),
];

/** A flight, for many members on many aircraft. */
export class ClubTimelineDto extends IntersectionType(PickType(AskDto, ANYONES), SpanFields) {
  @ApiPropertyOptional({
    ...{ type: [String], format: 'uuid' },
    description: 'The members; unless given, all whose membership touches the span',
  })
  @Optional()
  @IsArray()
  @ArrayMinSize(1)
  @ArrayMaxSize(MOST_NAMED)
  @ArrayUnique()
  @IsId({ each: true })
  memberIds?: string[];

  @ApiPropertyOptional(joinWords('answer'))
  @Optional()
  @IsIn(['detail', 'answer'])
  join?: Join;
}
