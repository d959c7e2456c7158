import { ApiProperty, ApiPropertyOptional, OmitType } from '@nestjs/swagger';
import { IsBoolean, IsString, Matches, MaxLength } from 'class-validator';
import { IdField, WholeField } from '../../platform/http/fields.js';
import { Optional } from '../../platform/http/index.js';
import { ChangesOf } from '../../platform/http/views.js';
import { BookDto, BookingDto } from '../booking.dto.js';
import { CancelDto, EditBookingDto } from '../changes/changes.dto.js';

/** Whether the flights are booked together or not at all. */
const WHOLE = 'All of them or none; otherwise those that can be';
const PREVIEW = 'Only look: nothing is booked, changed or given back';

/** Several flights by one rule; `departs` and `arrives` are those of the first. */
export class BookSeriesDto extends OmitType(BookDto, ['override', 'weather', 'destinationForecast']) {
  @ApiProperty({
    maxLength: 200,
    example: 'FREQ=WEEKLY;BYDAY=SA;COUNT=8',
    description:
      "RFC 5545, section 3.3.10, on the club's clock; with COUNT or UNTIL, at most 60 flights in 400 days",
  })
  @IsString()
  @MaxLength(200)
  @Matches(/^FREQ=[A-Z]+(;[A-Z]+=[A-Z0-9,+-]+)*$/, {
    message: 'recurrence must be written as RFC 5545 does: FREQ=WEEKLY;COUNT=8',
  })
  recurrence: string;

  @ApiPropertyOptional({ default: false, description: WHOLE })
  @Optional()
  @IsBoolean()
  whole?: boolean;

  @ApiPropertyOptional({ default: false, description: PREVIEW })
  @Optional()
  @IsBoolean()
  preview?: boolean;
}

/** What stands in the way of one flight, as its problem document says it. */
export class StandsInTheWayDto {
  @ApiProperty()
  code: string;
  @ApiProperty()
  title: string;
  @ApiProperty()
  detail: string;
}

/** One flight of a series. */
export class OccurrenceDto {
  @ApiProperty({ format: 'date-time' })
  departs: string;
  @ApiProperty({ format: 'date-time' })
  arrives: string;
  @ApiProperty({
    type: BookingDto,
    nullable: true,
    description: 'The booking; null where something stands in its way',
  })
  booking: BookingDto | null;
  @ApiProperty({ type: StandsInTheWayDto, nullable: true })
  problem: StandsInTheWayDto | null;
}

/** What became of the flights of a series. */
export class SeriesDto {
  @ApiProperty({ type: String, format: 'uuid', nullable: true, description: 'null: nothing was booked' })
  id: string | null;
  @ApiProperty()
  recurrence: string;
  @ApiProperty({ type: 'boolean', description: 'Only looked at' })
  preview: boolean;
  @ApiProperty({ type: [OccurrenceDto], description: 'In order of departure' })
  occurrences: OccurrenceDto[];
}

/** A change of a flight of a series and of those after it. Each is judged alone. */
export class EditSeriesDto extends ChangesOf(
  OmitType(EditBookingDto, ['departs', 'arrives', 'override', 'weather', 'destinationForecast']),
) {
  @IdField({ description: 'The first flight that is changed' })
  fromBookingId: string;

  @ApiPropertyOptional({
    example: '09:30',
    description: "Departure on the club's clock, each on its own day",
  })
  @Optional()
  @Matches(/^([01]\d|2[0-3]):[0-5]\d$/, { message: 'departsAt must be a time such as 09:30' })
  departsAt?: string;

  @WholeField({ min: 15, max: 576_000, optional: true, description: 'How long each lasts, minutes' })
  lastsMinutes?: number;

  @ApiPropertyOptional({ default: false, description: WHOLE })
  @Optional()
  @IsBoolean()
  whole?: boolean;

  @ApiPropertyOptional({ default: false, description: PREVIEW })
  @Optional()
  @IsBoolean()
  preview?: boolean;
}

/** Gives back a flight of a series and those after it. */
export class CancelSeriesDto extends CancelDto {
  @IdField({ description: 'The first flight that is given back' })
  fromBookingId: string;
}
