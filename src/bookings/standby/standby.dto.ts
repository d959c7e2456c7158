import { ApiProperty, ApiPropertyOptional } from '@nestjs/swagger';
import { IsString, MaxLength } from 'class-validator';
import { FlightRequestDto } from '../../decisions/flight-request.dto.js';
import { Shown } from '../../platform/http/fields.js';
import { IsId, NoNul, Optional } from '../../platform/http/index.js';
import { PageShape } from '../../platform/http/pages.js';
import type { OfferRow, StandbyRow } from './standby.sql.js';

/** A flight somebody would make if an aircraft came free. */
export class GoOnStandbyDto extends FlightRequestDto {
  @ApiPropertyOptional({ format: 'uuid', description: 'Any aircraft that will do, unless given' })
  @Optional()
  @IsId()
  aircraftId?: string;

  @ApiPropertyOptional({ maxLength: 500, description: 'Becomes the note of the booking' })
  @Optional()
  @IsString()
  @NoNul()
  @MaxLength(500)
  note?: string;
}

/** A slot that came free, offered to one member for a time. */
export class StandbyOfferDto {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;
  @Shown({ type: 'string', format: 'uuid' })
  aircraftId: string;
  @Shown({ type: 'string' })
  registration: string;
  @Shown({ type: 'string', enum: ['open', 'accepted', 'declined', 'expired', 'withdrawn'] })
  state: OfferRow['state'];
  @Shown({ type: 'boolean', description: 'Nobody else can book the slot meanwhile' })
  holds: boolean;
  @Shown({ type: 'string', format: 'uuid', description: 'What the engine said when it was offered' })
  decisionId: string;
  @Shown({ type: 'string', format: 'uuid', nullable: true })
  bookingId: string | null;
  @Shown({ type: 'string', format: 'date-time' })
  madeAt: string;
  @Shown({ type: 'string', format: 'date-time', description: 'Then it goes to the next who waits' })
  expiresAt: string;
}

/** An entry of one's own on standby. */
export class StandbyDto {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;
  @Shown({ type: 'string', format: 'uuid', nullable: true, description: 'null: any that will do' })
  aircraftId: string | null;
  @Shown({ type: 'string', nullable: true })
  registration: string | null;
  @Shown({ type: 'string', format: 'date-time' })
  departs: string;
  @Shown({ type: 'string', format: 'date-time' })
  arrives: string;
  @Shown({ type: 'string' })
  purpose: string;
  @Shown({ type: 'integer' })
  personsOnBoard: number;
  @Shown({ type: 'string' })
  note: string;
  @Shown({ type: 'string', enum: ['waiting', 'booked', 'withdrawn', 'over'] })
  state: StandbyRow['state'];
  @Shown({
    type: 'integer',
    description: 'How many wait longer for time it shares. The club may go by hours booked ahead instead.',
  })
  ahead: number;
  @Shown({ type: () => StandbyOfferDto, nullable: true, description: 'The one that stands, or the last' })
  offer: StandbyOfferDto | null;
  @Shown({ type: 'integer', description: 'Counts edits; the ETag' })
  rowVersion: number;

  static from({ request, memberId: _memberId, ...row }: StandbyRow): StandbyDto {
    return { ...row, purpose: request.purpose, personsOnBoard: request.personsOnBoard };
  }
}

export class StandbyPageDto extends PageShape {
  @ApiProperty({ type: [StandbyDto] })
  items: StandbyDto[];
}
