import { Body, Controller, Post, Res } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { IdempotencyKey, tellStored } from '../../platform/http/index.js';
import { BookAnyDto, BookedAnyDto } from './any-aircraft.dto.js';
import { AnyAircraftService } from './any-aircraft.service.js';

@ApiTags('bookings')
@Controller('bookings/any')
export class AnyAircraftController {
  constructor(private readonly any: AnyAircraftService) {}

  @Post()
  @ApiRoute({
    id: 'bookAny',
    summary: 'Books the aircraft that fits the flight best, of those that may fly it',
    description:
      'All are judged. A plain yes goes before a yes with conditions; among the same answers the points of the club count (club.fit.…): conditions, empty seats, what few aircraft have and the flight does not need, and time left over that nobody can book. The best that is still free is booked in the same transaction.',
    answer: BookedAnyDto,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  async book(
    @CurrentUser() user: SignedIn,
    @IdempotencyKey() key: string,
    @Body() body: BookAnyDto,
    @Res({ passthrough: true }) response: Response,
  ): Promise<BookedAnyDto> {
    return tellStored<BookedAnyDto>(await this.any.book(user, key, body), response);
  }
}
