import { ApiProperty } from '@nestjs/swagger';
import { FlightRequestDto } from '../../decisions/flight-request.dto.js';
import type { Displacement } from './displacements.sql.js';

/** A flight that had to make room for the shop. */
export class DisplacementDto implements Displacement {
  @ApiProperty({ format: 'uuid' })
  id: string;
  @ApiProperty({ format: 'uuid' })
  bookingId: string;
  @ApiProperty({ format: 'uuid' })
  aircraftId: string;
  @ApiProperty()
  registration: string;
  @ApiProperty({ format: 'date-time' })
  departs: string;
  @ApiProperty({ format: 'date-time' })
  arrives: string;
  @ApiProperty({ format: 'uuid', description: 'Whose booking it was' })
  holderId: string;
  @ApiProperty()
  holderName: string;
  @ApiProperty({ description: 'What the aircraft is taken for: a visit to the shop, or a block' })
  because: string;
  @ApiProperty({
    type: String,
    format: 'date-time',
    nullable: true,
    description: 'When it is meant to be back; null: no time is set',
  })
  backAt: string | null;
  @ApiProperty({
    type: () => FlightRequestDto,
    description:
      'What was booked. Ask it again with `ways: true` (POST /decisions) for another aircraft or another time.',
  })
  request: FlightRequestDto;
  @ApiProperty({ format: 'date-time' })
  displacedAt: string;
  @ApiProperty({ type: String, format: 'date-time', nullable: true })
  seenAt: string | null;
}

export class DisplacementsDto {
  @ApiProperty({ type: [DisplacementDto] })
  items: DisplacementDto[];
}
