import { ApiProperty, ApiPropertyOptional } from '@nestjs/swagger';
import { IsBoolean, IsIn, IsString, MaxLength, MinLength } from 'class-validator';
import type { SignedIn } from '../accounts/current-user.js';
import { hasAnyRole } from '../accounts/roles.js';
import { FlightRequestDto } from '../decisions/flight-request.dto.js';
import { READERS } from '../members/members.access.js';
import { PartField } from '../platform/http/fields.js';
import { IsId, IsInstant, NoNul, Optional, PageQuery } from '../platform/http/index.js';
import type { BookingRow } from './booking.entity.js';

/** An officer's override of the club findings that stand in the way. Never of law. */
export class OverrideDto {
  @ApiProperty({
    minLength: 10,
    maxLength: 1000,
    description: 'Why the club rule may be set aside this once',
  })
  @IsString()
  @NoNul()
  @MinLength(10)
  @MaxLength(1000)
  reason: string;
}

/** A flight to be judged and booked. */
export class BookDto extends FlightRequestDto {
  @ApiProperty({ format: 'uuid' })
  @IsId()
  aircraftId: string;

  @ApiPropertyOptional({ maxLength: 500, description: 'Everybody in the club can read it' })
  @Optional()
  @IsString()
  @NoNul()
  @MaxLength(500)
  note?: string;

  @PartField(() => OverrideDto, { optional: true })
  override?: OverrideDto;
}

/** Time in which the aircraft is not for flying. */
export class BlockDto {
  @ApiProperty({ format: 'uuid' })
  @IsId()
  aircraftId: string;

  @ApiProperty({ enum: ['maintenance', 'club'] })
  @IsIn(['maintenance', 'club'])
  kind: 'maintenance' | 'club';

  @ApiProperty({ format: 'date-time' })
  @IsInstant()
  from: string;

  @ApiProperty({ format: 'date-time' })
  @IsInstant()
  to: string;

  @ApiProperty({ maxLength: 500, description: 'What for' })
  @IsString()
  @NoNul()
  @MinLength(3)
  @MaxLength(500)
  note: string;

  @ApiPropertyOptional({
    default: false,
    description: 'Flights in the way are cancelled, and their people told; otherwise they stop it',
  })
  @Optional()
  @IsBoolean()
  displace?: boolean;
}

/** Which bookings to list. */
export class BookingsQuery extends PageQuery {
  @ApiPropertyOptional({ format: 'date-time', description: 'Bookings that end after this instant' })
  @Optional()
  @IsInstant()
  from?: string;

  @ApiPropertyOptional({ format: 'date-time', description: 'Bookings that begin before this instant' })
  @Optional()
  @IsInstant()
  to?: string;

  @ApiPropertyOptional({ format: 'uuid' })
  @Optional()
  @IsId()
  aircraftId?: string;

  @ApiPropertyOptional({ format: 'uuid', description: 'Bookings that take this person up, in any role' })
  @Optional()
  @IsId()
  memberId?: string;
}

export class BookingPersonDto {
  @ApiProperty({ format: 'uuid' })
  memberId: string;
  @ApiProperty()
  name: string;
  @ApiProperty({ enum: ['pilot', 'instructor', 'second-pilot'] })
  role: string;
}

export class BookingOverrideDto {
  @ApiProperty()
  ruleId: string;
  @ApiProperty({ format: 'uuid' })
  officerId: string;
  @ApiProperty()
  reason: string;
}

/** That a booking was given back. */
export class CancellationDto {
  @ApiProperty({ format: 'date-time' })
  at: string;
  @ApiProperty({ description: 'Later than the club asks for' })
  late: boolean;
  @ApiProperty()
  reason: string;
}

/** An offer of the booking to another member. */
export class OpenHandOverDto {
  @ApiProperty({ format: 'uuid' })
  id: string;
  @ApiProperty({ format: 'uuid' })
  toId: string;
  @ApiProperty()
  toName: string;
  @ApiProperty({ format: 'uuid' })
  offeredById: string;
}

/** A booking. */
export class BookingDto {
  @ApiProperty({ format: 'uuid' })
  id: string;
  @ApiProperty({ enum: ['flight', 'maintenance', 'club', 'hold'] })
  kind: string;
  @ApiProperty({ enum: ['booked', 'dispatched', 'returned', 'cancelled'] })
  status: string;
  @ApiProperty({ format: 'uuid' })
  aircraftId: string;
  @ApiProperty()
  registration: string;
  @ApiProperty({ format: 'uuid' })
  memberId: string;
  @ApiProperty()
  memberName: string;
  @ApiProperty({ format: 'date-time' })
  departs: string;
  @ApiProperty({ format: 'date-time' })
  arrives: string;
  @ApiProperty({ description: 'Expected meter hours' })
  expectedHours: number;
  @ApiProperty()
  note: string;
  @ApiProperty({ type: String, format: 'uuid', nullable: true })
  decisionId: string | null;
  @ApiProperty({ type: [BookingPersonDto] })
  people: BookingPersonDto[];
  @ApiProperty({
    type: [BookingOverrideDto],
    description: 'For its crew, instructors and officers to read; empty for everybody else',
  })
  overrides: BookingOverrideDto[];
  @ApiProperty({ type: String, format: 'uuid', nullable: true, description: 'The series it was booked with' })
  seriesId: string | null;
  @ApiProperty({
    type: String,
    format: 'date-time',
    nullable: true,
    description: 'Of a hold: until when it keeps the slot',
  })
  holdUntil: string | null;
  @ApiProperty({
    type: CancellationDto,
    nullable: true,
    description: 'How it was given back: for its crew, instructors and officers to read',
  })
  cancellation: CancellationDto | null;
  @ApiProperty({
    type: OpenHandOverDto,
    nullable: true,
    description: 'An open offer: for its crew, who it is offered to, instructors and officers to read',
  })
  handOver: OpenHandOverDto | null;
  @ApiProperty({ description: 'Counts edits; the ETag' })
  rowVersion: number;

  /** As this person may see it: overrides, reasons and offers are between the crew, instructors and officers. */
  static from(booking: BookingRow, viewer: SignedIn): BookingDto {
    const { expectedTenths, overrides, handOver, cancelledAt, cancelledLate, cancelReason, ...row } = booking;
    const mine = [row.memberId, handOver?.toId, ...row.people.map((person) => person.memberId)];
    const near = mine.includes(viewer.memberId) || hasAnyRole(viewer, ...READERS);
    const given = { late: cancelledLate, reason: cancelReason };
    return {
      ...row,
      overrides: near ? overrides : [],
      cancellation: near && cancelledAt !== null ? { at: cancelledAt, ...given } : null,
      handOver: near ? handOver : null,
      expectedHours: expectedTenths / 10,
    };
  }
}

/** One page of bookings. */
export class BookingsPageDto {
  @ApiProperty({ type: [BookingDto] })
  items: BookingDto[];
  @ApiProperty({ type: String, nullable: true })
  nextCursor: string | null;
}
