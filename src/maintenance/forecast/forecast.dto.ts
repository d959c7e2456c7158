import { ApiProperty } from '@nestjs/swagger';
import { IdsField, WholeField } from '../../platform/http/fields.js';
import { ITEM_KINDS, ITEM_SCOPES } from '../../fleet/vocabulary.js';
import type { ItemFact, ItemKind } from '../../rules/index.js';

/** Weeks looked ahead, unless said otherwise and at most. */
export const DEFAULT_WEEKS = 13;
export const MOST_WEEKS = 52;

/** What to forecast. */
export class ForecastBody {
  @IdsField({ optional: true, description: 'Some aircraft; all of the club unless given' })
  aircraftIds?: string[];

  @WholeField({
    min: 1,
    max: MOST_WEEKS,
    optional: true,
    description: `Weeks ahead; ${DEFAULT_WEEKS} unless given`,
  })
  weeks?: number;
}

export class ForecastWeek {
  @ApiProperty({ format: 'date' })
  monday: string;
  @ApiProperty({ description: 'Hours expected by the trend' })
  trendH: number;
  @ApiProperty({ enum: ['last-year', 'recent'], description: 'What the trend rests on' })
  basis: 'last-year' | 'recent';
  @ApiProperty({ description: 'Hours the bookings in hand are expected to take' })
  bookedH: number;
  @ApiProperty({ description: 'Hours from today to the end of the week, likely' })
  likelySumH: number;
  @ApiProperty({ type: Number, nullable: true, description: 'The least, four times in five with the most' })
  leastSumH: number | null;
  @ApiProperty({ type: Number, nullable: true })
  mostSumH: number | null;
}

export class PassingBooking {
  @ApiProperty({ format: 'uuid' })
  bookingId: string;
  @ApiProperty({ format: 'date-time' })
  departs: string;
}

export class ForecastItem {
  @ApiProperty({ format: 'uuid' })
  id: string;
  @ApiProperty({ enum: ITEM_KINDS })
  kind: ItemKind;
  @ApiProperty()
  title: string;
  @ApiProperty({ enum: ITEM_SCOPES })
  scope: ItemFact['scope'];
  @ApiProperty({ enum: ['overdue', 'never-done', 'unknown', 'settled', 'running'] })
  state: 'overdue' | 'never-done' | 'unknown' | 'settled' | 'running';
  @ApiProperty({
    type: String,
    format: 'date',
    nullable: true,
    description: 'Last day it is good by its date',
  })
  throughOn: string | null;
  @ApiProperty({
    type: Number,
    nullable: true,
    description: 'Hours of the inspection meter up to which it is good',
  })
  throughH: number | null;
  @ApiProperty({ type: Number, nullable: true, description: 'Days left by its date; negative: overdue' })
  leftDays: number | null;
  @ApiProperty({ type: Number, nullable: true, description: 'Hours left; negative: overdue' })
  leftH: number | null;
  @ApiProperty({
    type: String,
    format: 'date',
    nullable: true,
    description: 'Likely due on; null: not within the weeks',
  })
  likelyOn: string | null;
  @ApiProperty({ type: String, format: 'date', nullable: true })
  earliestOn: string | null;
  @ApiProperty({ type: String, format: 'date', nullable: true })
  latestOn: string | null;
  @ApiProperty({ type: String, enum: ['date', 'hours'], nullable: true, description: 'What brings it about' })
  by: 'date' | 'hours' | null;
  @ApiProperty({
    type: PassingBooking,
    nullable: true,
    description: 'The first booking that would pass its hours',
  })
  passing: PassingBooking | null;
  @ApiProperty()
  says: string;
}

export class AircraftForecast {
  @ApiProperty({ format: 'uuid' })
  aircraftId: string;
  @ApiProperty()
  registration: string;
  @ApiProperty()
  makeModel: string;
  @ApiProperty({ type: Number, nullable: true, description: 'Inspection meter now' })
  meterH: number | null;
  @ApiProperty({ type: String, format: 'date-time', nullable: true })
  readAt: string | null;
  @ApiProperty({
    type: String,
    format: 'date',
    nullable: true,
    description: 'Day of the next shop visit booked',
  })
  slotOn: string | null;
  @ApiProperty({ type: [ForecastItem], description: 'Soonest due first' })
  items: ForecastItem[];
  @ApiProperty({ type: [ForecastWeek] })
  weeks: ForecastWeek[];
}

export class ForecastView {
  @ApiProperty({ format: 'date', description: 'The day it was made on, in the club’s zone' })
  today: string;
  @ApiProperty({ type: [AircraftForecast] })
  aircraft: AircraftForecast[];
  @ApiProperty({ type: Number, nullable: true, description: 'Share of tested outcomes within the bounds' })
  coverage: number | null;
  @ApiProperty({ type: 'integer', description: 'Forecasts of past weeks it was tested by' })
  testedBy: number;
  @ApiProperty({ description: 'How the bounds were tested' })
  tested: string;
  @ApiProperty()
  caution: string;
}
