import { Body, Controller, Param, Post, Res } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { IdempotencyKey, IfMatch, tellStored, UuidPipe } from '../../platform/http/index.js';
import { BookingDto } from '../booking.dto.js';
import { ConfirmHoldDto, HoldDto } from './holds.dto.js';
import { HoldsService } from './holds.service.js';

@ApiTags('bookings')
@Controller('bookings')
export class HoldsController {
  constructor(private readonly holds: HoldsService) {}

  @Post('holds')
  @Roles('instructor')
  @ApiRoute({
    id: 'holdSlot',
    summary: 'An instructor keeps a slot for a checkout with a member, for as long as the club allows',
    description:
      'Nothing is judged yet, and nothing may be flown on it. It ends by itself unless it is confirmed.',
    answer: BookingDto,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  async hold(
    @CurrentUser() user: SignedIn,
    @IdempotencyKey() key: string,
    @Body() hold: HoldDto,
    @Res({ passthrough: true }) response: Response,
  ): Promise<BookingDto> {
    return tellStored(await this.holds.hold(user, key, hold), response);
  }

  @Post(':id/confirm')
  @ApiRoute({
    id: 'confirmHold',
    summary: 'Judges the checkout flight of a hold, and makes it a booking',
    answer: BookingDto,
    refuses: [403, 404, 409, 412, 422, 428],
  })
  async confirm(
    @CurrentUser() user: SignedIn,
    @Param('id', UuidPipe) id: string,
    @IfMatch() ifMatch: number,
    @IdempotencyKey() key: string,
    @Body() { override }: ConfirmHoldDto,
    @Res({ passthrough: true }) response: Response,
  ): Promise<BookingDto> {
    const of = { id, ifMatch, ...(override ? { override } : {}) };
    return tellStored(await this.holds.confirm(user, key, of), response);
  }
}
