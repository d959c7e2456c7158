import { Body, Controller, Delete, Get, Header, HttpCode, Param, Post, Res } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Throttle } from '@nestjs/throttler';
import type { Response } from 'express';
import { ApiProblems } from '../../accounts/api-problems.js';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Public } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/index.js';
import { sha256 } from '../../platform/sha256.js';
import { FeedBody, FeedsDto, NewFeedDto } from './feeds.dto.js';
import { FeedsService } from './feeds.service.js';

/** Looks at one address's calendars a minute: a household's worth, and no use for trying secrets. */
const LOOKS = { default: { ttl: 60_000, limit: 120 } };

@ApiTags('notices')
@Controller()
export class FeedsController {
  constructor(private readonly feeds: FeedsService) {}

  @Get('feeds')
  @ApiRoute({
    id: 'listFeeds',
    summary: 'My calendar feeds, without their addresses',
    answer: FeedsDto,
    refuses: [],
  })
  list(@CurrentUser() user: SignedIn): Promise<FeedsDto> {
    return this.feeds.list(user);
  }

  @Post('feeds')
  @ApiRoute({
    id: 'makeFeed',
    summary: 'A new calendar feed with a secret address, told this once',
    answer: NewFeedDto,
    status: 201,
    refuses: [404, 409, 422],
  })
  make(@CurrentUser() user: SignedIn, @Body() body: FeedBody): Promise<NewFeedDto> {
    return this.feeds.make(user, body);
  }

  @Delete('feeds/:feedId')
  @ApiRoute({
    id: 'revokeFeed',
    summary: 'Take a feed back: its address is dead',
    answer: null,
    refuses: [404],
  })
  revoke(@CurrentUser() user: SignedIn, @Param('feedId', UuidPipe) id: string): Promise<void> {
    return this.feeds.revoke(user, id);
  }

  @Get('calendar/:token')
  @Public()
  @Throttle(LOOKS)
  @HttpCode(200)
  @Header('Content-Type', 'text/calendar; charset=utf-8')
  @Header('Cache-Control', 'private, no-cache')
  @ApiOperation({
    operationId: 'readFeed',
    summary: 'A calendar by its secret address, for calendar programs (RFC 5545)',
    description: 'Answers If-None-Match with 304 where nothing has changed.',
  })
  @ApiOkResponse({
    description: 'The calendar',
    content: { 'text/calendar': { schema: { type: 'string' } } },
  })
  @ApiProblems(404, 429)
  async read(@Param('token') token: string, @Res({ passthrough: true }) response: Response): Promise<string> {
    const text = await this.feeds.calendar(token);
    response.setHeader('ETag', `"${sha256(text).slice(0, 32)}"`);
    return text;
  }
}
