import { ApiProperty, OmitType } from '@nestjs/swagger';
import { ChangesOf } from '../../platform/http/views.js';
import { BlockDto, BookingDto } from '../booking.dto.js';

/** What is changed of a block; what is left out stays. Another aircraft is another block. */
export class EditBlockDto extends ChangesOf(OmitType(BlockDto, ['aircraftId'])) {}

/** A flight that had to make room. */
export class DisplacedFlightDto {
  @ApiProperty({ format: 'uuid' })
  bookingId: string;
  @ApiProperty({ format: 'uuid' })
  memberId: string;
  @ApiProperty()
  memberName: string;
  @ApiProperty({ format: 'date-time' })
  departs: string;
  @ApiProperty({ format: 'date-time' })
  arrives: string;
}

/** A block, and the flights that made room for it. */
export class BlockedDto extends BookingDto {
  @ApiProperty({ type: [DisplacedFlightDto], description: 'Cancelled to make room; their people are told' })
  displaced: DisplacedFlightDto[];
}
