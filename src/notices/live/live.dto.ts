import { ApiPropertyOptional } from '@nestjs/swagger';
import { Transform } from 'class-transformer';
import { IsInt, Max, Min } from 'class-validator';
import { Optional } from '../../platform/http/index.js';

/** Longest a stream stays open: whoever listens comes again with a fresh token. */
export const LONGEST_S = 600;

const MESSAGE = { message: `seconds must be a whole number from 1 to ${LONGEST_S}` };

export class LiveQuery {
  @ApiPropertyOptional({
    ...{ type: 'integer', minimum: 1, maximum: LONGEST_S, default: LONGEST_S },
    description: 'Close the stream after so long',
  })
  @Optional()
  @Transform(({ value }) => (typeof value === 'string' && /^\d{1,6}$/.test(value) ? Number(value) : value))
  @IsInt(MESSAGE)
  @Min(1, MESSAGE)
  @Max(LONGEST_S, MESSAGE)
  seconds?: number;
}
