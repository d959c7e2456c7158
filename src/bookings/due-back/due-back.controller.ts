import { Body, Controller, Param, Post, Res } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { IdempotencyKey, tellStored, UuidPipe } from '../../platform/http/index.js';
import { DueBackDto, DueBackView } from './due-back.dto.js';
import { DueBackService } from './due-back.service.js';

/** When a flight that is out will be back. */
@ApiTags('flights')
@Controller('flights/:bookingId/due-back')
export class DueBackController {
  constructor(private readonly dueBack: DueBackService) {}

  @Post()
  @ApiRoute({
    id: 'setDueBack',
    summary:
      'Another time due back of a flight that is out: by it people are told that the aircraft is overdue',
    description:
      'The aircraft is kept in the calendar until then where nobody else has it or its crew; otherwise the booking stays as long as it was, and who has the aircraft next is told. Nothing is judged.',
    answer: DueBackView,
    refuses: [403, 404, 409, 422],
  })
  async set(
    @CurrentUser() user: SignedIn,
    @Param('bookingId', UuidPipe) bookingId: string,
    @IdempotencyKey() key: string,
    @Body() body: DueBackDto,
    @Res({ passthrough: true }) response: Response,
  ): Promise<DueBackView> {
    return tellStored<DueBackView>(await this.dueBack.set(user, key, bookingId, body), response);
  }
}
