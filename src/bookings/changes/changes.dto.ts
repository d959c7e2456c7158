import { ApiProperty, ApiPropertyOptional, OmitType } from '@nestjs/swagger';
import { IsString, MaxLength } from 'class-validator';
import { IdField, PartField } from '../../platform/http/fields.js';
import { NoNul, Optional } from '../../platform/http/index.js';
import { ChangesOf } from '../../platform/http/views.js';
import { BookDto, OverrideDto } from '../booking.dto.js';

/** What is changed of a booked flight; what is left out stays as it is. Who flies it changes by hand-over only. */
export class EditBookingDto extends ChangesOf(
  OmitType(BookDto, ['memberId', 'instructorId', 'secondPilotId', 'actingPilotId', 'override']),
) {
  @IdField({ nullable: true, description: 'null: without an instructor' })
  instructorId?: string | null;

  @IdField({ nullable: true, description: 'null: without a second pilot' })
  secondPilotId?: string | null;

  @IdField({ nullable: true, description: 'null: the member acts as pilot in command' })
  actingPilotId?: string | null;

  @PartField(() => OverrideDto, {
    optional: true,
    description:
      'An edited flight is another flight: what an officer set aside for the old one counts no longer',
  })
  override?: OverrideDto;
}

/** Why a booking is given back. */
export class CancelDto {
  @ApiPropertyOptional({
    maxLength: 500,
    description:
      'Asked for where the flight is given back late (club policy); for crew, instructors and officers to read',
  })
  @Optional()
  @IsString()
  @NoNul()
  @MaxLength(500)
  reason?: string;
}

/** Who is to fly it instead. */
export class OfferHandOverDto {
  @IdField({ description: 'The member the flight is offered to' })
  toId: string;
}

/** Taking over a flight, or an officer doing so for the member. */
export class AcceptHandOverDto {
  @PartField(() => OverrideDto, { optional: true })
  override?: OverrideDto;
}

/** An open offer. */
export class HandOverDto {
  @ApiProperty({ format: 'uuid' })
  id: string;
  @ApiProperty({ format: 'uuid' })
  bookingId: string;
  @ApiProperty()
  registration: string;
  @ApiProperty({ format: 'date-time' })
  departs: string;
  @ApiProperty({ format: 'date-time' })
  arrives: string;
  @ApiProperty({ format: 'uuid' })
  fromId: string;
  @ApiProperty()
  fromName: string;
  @ApiProperty({ format: 'uuid' })
  toId: string;
  @ApiProperty()
  toName: string;
  @ApiProperty({ format: 'date-time' })
  offeredAt: string;
  @ApiProperty({ type: 'integer', description: "The booking's ETag, to be sent as If-Match with the answer" })
  bookingVersion: number;
}

export class HandOversDto {
  @ApiProperty({ type: [HandOverDto] })
  items: HandOverDto[];
}

/** What a booking was before a change, or after it; only what the change touched. */
export class BookingStateDto {
  @ApiPropertyOptional({ format: 'uuid' })
  aircraftId?: string;
  @ApiPropertyOptional({ format: 'uuid' })
  memberId?: string;
  @ApiPropertyOptional({ type: String, format: 'uuid', nullable: true })
  instructorId?: string | null;
  @ApiPropertyOptional({ type: String, format: 'uuid', nullable: true })
  secondPilotId?: string | null;
  @ApiPropertyOptional({ format: 'date-time' })
  departs?: string;
  @ApiPropertyOptional({ format: 'date-time' })
  arrives?: string;
  @ApiPropertyOptional({ format: 'date-time', description: 'By it an aircraft that is out is overdue' })
  dueBackAt?: string;
  @ApiPropertyOptional({ type: String, nullable: true })
  purpose?: string | null;
  @ApiPropertyOptional({ type: 'integer', nullable: true })
  personsOnBoard?: number | null;
  @ApiPropertyOptional()
  kind?: string;
  @ApiPropertyOptional()
  status?: string;
}

/** One change of a booking. */
export class BookingChangeDto {
  @ApiProperty({ format: 'uuid' })
  id: string;
  @ApiProperty({ enum: ['edited', 'handed-over', 'cancelled', 'displaced', 'confirmed', 'lapsed'] })
  act: string;
  @ApiProperty({ format: 'date-time' })
  at: string;
  @ApiProperty({ type: String, format: 'uuid', nullable: true, description: 'Who; null: its time was up' })
  byId: string | null;
  @ApiProperty({ type: String, nullable: true })
  byName: string | null;
  @ApiProperty({ type: BookingStateDto })
  before: BookingStateDto;
  @ApiProperty({ type: BookingStateDto })
  after: BookingStateDto;
  @ApiProperty({
    type: [String],
    description: 'What else of the flight is another one now, by the name of its field',
  })
  also: string[];
  @ApiProperty({ type: String, format: 'uuid', nullable: true, description: 'The decision it was judged by' })
  decisionId: string | null;
}

/** What the identifiers in a history stand for. */
export class NamedDto {
  @ApiProperty({ format: 'uuid' })
  id: string;
  @ApiProperty()
  name: string;
}

/** The history of a booking, the first change first. */
export class BookingChangesDto {
  @ApiProperty({ type: [BookingChangeDto] })
  items: BookingChangeDto[];
  @ApiProperty({ type: [NamedDto] })
  names: NamedDto[];
}
