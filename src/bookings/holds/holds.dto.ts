import { ApiProperty, ApiPropertyOptional } from '@nestjs/swagger';
import { IsInstant, IsId, Optional } from '../../platform/http/index.js';
import { PartField } from '../../platform/http/fields.js';
import { OverrideDto } from '../booking.dto.js';
import { IsString, MaxLength } from 'class-validator';
import { NoNul } from '../../platform/http/index.js';

/** A slot that an instructor keeps for a checkout with a member. */
export class HoldDto {
  @ApiProperty({ format: 'uuid' })
  @IsId()
  aircraftId: string;

  @ApiProperty({ format: 'uuid', description: 'Who is to be checked out' })
  @IsId()
  memberId: string;

  @ApiProperty({ format: 'date-time' })
  @IsInstant()
  departs: string;

  @ApiProperty({ format: 'date-time' })
  @IsInstant()
  arrives: string;

  @ApiPropertyOptional({ maxLength: 500, description: 'Everybody in the club can read it' })
  @Optional()
  @IsString()
  @NoNul()
  @MaxLength(500)
  note?: string;
}

/** Makes a flight of a hold. */
export class ConfirmHoldDto {
  @PartField(() => OverrideDto, { optional: true })
  override?: OverrideDto;
}
