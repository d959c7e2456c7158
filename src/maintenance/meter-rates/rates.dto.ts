import { ApiProperty } from '@nestjs/swagger';
import { METER_KINDS } from '../../fleet/vocabulary.js';
import { DayField } from '../../platform/http/fields.js';
import type { MeterKind } from '../../rules/index.js';
import type { RateLook } from './rates.js';

export const LOOKS = ['as-usual', 'more-than-flown', 'less-than-flown', 'nothing-logged'] as const;

/** From which day on. */
export class RatesQuery {
  @DayField({ optional: true, description: 'Readings from this day on; the last year unless given' })
  from?: string;
}

export class MeterStretchView {
  @ApiProperty({ enum: METER_KINDS })
  kind: MeterKind;
  @ApiProperty({ format: 'uuid' })
  fromReadingId: string;
  @ApiProperty({ format: 'uuid' })
  toReadingId: string;
  @ApiProperty({ format: 'date-time' })
  from: string;
  @ApiProperty({ format: 'date-time' })
  to: string;
  @ApiProperty({ description: 'Hours the meter ran' })
  meterH: number;
  @ApiProperty({ description: 'Hours logged, each flight once' })
  flownH: number;
  @ApiProperty({
    type: Number,
    nullable: true,
    description: 'Meter hours for each hour flown; null: nothing logged',
  })
  ratio: number | null;
  @ApiProperty({ enum: LOOKS })
  look: RateLook;
  @ApiProperty({ description: 'What to look at' })
  says: string;
}

export class UsualRateView {
  @ApiProperty({ enum: METER_KINDS })
  kind: MeterKind;
  @ApiProperty({ description: 'Meter hours for each hour flown' })
  ratio: number;
  @ApiProperty({
    type: 'integer',
    description: 'Stretches it comes from; 0: too few, so what is usual of such meters',
  })
  stretches: number;
}

/** Readings held against the log. */
export class MeterRatesView {
  @ApiProperty({ type: [UsualRateView] })
  usual: UsualRateView[];
  @ApiProperty({ type: [MeterStretchView], description: 'Newest first' })
  stretches: MeterStretchView[];
  @ApiProperty({ description: 'The usual caution' })
  caution: string;
}
