import { Controller, Get, Headers, Query, Res } from '@nestjs/common';
import { ApiHeader, ApiResponse, ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { LiveQuery, LONGEST_S } from './live.dto.js';
import { LiveService } from './live.service.js';

/** What open pages have to read again, as it happens. */
@ApiTags('notices')
@Controller('live')
export class LiveController {
  constructor(private readonly live: LiveService) {}

  @Get()
  @ApiHeader({
    name: 'Last-Event-ID',
    required: false,
    description: 'Id of the last event of an earlier stream: what was missed since is told at once',
    schema: { type: 'string' },
  })
  @ApiResponse({
    status: 200,
    description:
      'Server-sent events: `hello` when it begins, then `change` with `{"topics":[…]}`. Topics say what to read again (`flights` and ' +
      '`notices` are one’s own; `bookings`, `standing` and `fleet` the club’s; `everything` after a long absence), never what it says.',
    content: { 'text/event-stream': { schema: { type: 'string' } } },
  })
  @ApiRoute({
    id: 'listenLive',
    summary: 'Hear of changes to what I may see, while a page is open',
    description: 'Send the token as for any other request and read the stream; when it ends, come again.',
    answer: null,
    status: 200,
    refuses: [429],
  })
  listen(
    @CurrentUser() user: SignedIn,
    @Query() { seconds = LONGEST_S }: LiveQuery,
    @Headers('last-event-id') lastId: string | undefined,
    @Res() response: Response,
  ): Promise<void> {
    return this.live.listen(user, { response, seconds, lastId });
  }
}
