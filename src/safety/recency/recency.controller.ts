import { Controller, Get, Param, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/index.js';
import { RecencyQuery, RecencyView } from './recency.dto.js';
import { RecencyService } from './recency.service.js';

/** What lapses next of one person: for themselves, and for who may read their record. */
@ApiTags('logbook')
@Controller('members/:memberId/recency')
export class RecencyController {
  constructor(private readonly recency: RecencyService) {}

  @Get()
  @ApiRoute({
    id: 'readRecency',
    summary: 'What lapses next, with the entries counted for it, as of any day',
    description:
      'The rules that answer for flights are asked of a local flight of an hour, and followed for a year. An earlier day is answered with what is on record now and was flown, held or signed by then; standing with the club is that of now. An aid: the pilot in command answers for it.',
    answer: RecencyView,
    refuses: [403, 404, 422],
  })
  read(
    @CurrentUser() user: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Query() query: RecencyQuery,
  ): Promise<RecencyView> {
    return this.recency.read(user, memberId, query);
  }
}
