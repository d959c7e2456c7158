import { ApiProperty, ApiPropertyOptional } from '@nestjs/swagger';
import { ArrayMaxSize, ArrayMinSize, ArrayUnique, IsArray, IsString, MaxLength } from 'class-validator';
import { ANSWERS } from '../../decisions/decision.dto.js';
import { FlightRequestDto } from '../../decisions/flight-request.dto.js';
import { Shown } from '../../platform/http/fields.js';
import { IsId, NoNul, Optional } from '../../platform/http/index.js';
import { FEATURES, type Answer, type Feature, type FitPart } from '../../rules/index.js';
import { BookingDto } from '../booking.dto.js';

/** A flight to be booked in whichever aircraft fits it best. */
export class BookAnyDto extends FlightRequestDto {
  @ApiPropertyOptional({
    type: [String],
    format: 'uuid',
    description: 'Among these only; among all of the club unless given',
  })
  @Optional()
  @IsArray()
  @ArrayMinSize(1)
  @ArrayMaxSize(50)
  @ArrayUnique()
  @IsId({ each: true })
  aircraftIds?: string[];

  @ApiPropertyOptional({ maxLength: 500, description: 'Everybody in the club can read it' })
  @Optional()
  @IsString()
  @NoNul()
  @MaxLength(500)
  note?: string;
}

export class FitPartDto {
  @Shown({ type: 'string', enum: ['conditions', 'empty-seats', 'scarce-features', 'odd-hours'] })
  kind: FitPart['kind'];
  @Shown({ type: 'number', description: 'How many conditions, seats, features, or hours left over' })
  count: number;
  @Shown({ type: 'number', description: 'By the policy of the club (club.fit.…)' })
  points: number;
  @Shown({ type: 'string', isArray: true, enum: [...FEATURES], description: 'Scarce features alone' })
  features: Feature[];
}

/** How one aircraft fits the flight. */
export class FitDto {
  @Shown({ type: 'string', format: 'uuid' })
  aircraftId: string;
  @Shown({ type: 'string' })
  registration: string;
  @Shown({ type: 'string', enum: ANSWERS })
  answer: Answer;
  @Shown({ type: 'boolean', description: 'The flight may be booked in it as it was asked for' })
  bookable: boolean;
  @Shown({ type: 'number', description: 'Misfit: fewer is better, among the same answers' })
  points: number;
  @Shown({ type: () => FitPartDto, isArray: true })
  parts: FitPartDto[];
}

/** The booking, and why it is in this aircraft. */
export class BookedAnyDto {
  @ApiProperty({ type: BookingDto })
  booking: BookingDto;
  @ApiProperty({ type: [FitDto], description: 'All that were judged, best fit first' })
  order: FitDto[];
  @Shown({
    type: 'string',
    format: 'uuid',
    isArray: true,
    description: 'Aircraft that fitted better and were taken by the time they were to be booked',
  })
  missedIds: string[];
}
