import { Controller, Get, Param, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../accounts/current-user.js';
import { ApiRoute } from '../platform/http/api-route.js';
import { UuidPipe } from '../platform/http/index.js';
import { NoticesPage, NoticesQuery, ReadDto } from './notices.dto.js';
import { NoticesService } from './notices.service.js';

/** What one was told. */
@ApiTags('notices')
@Controller('notices')
export class NoticesController {
  constructor(private readonly notices: NoticesService) {}

  @Get()
  @ApiRoute({
    id: 'listNotices',
    summary: 'My notices, newest first, with how many are not read yet',
    answer: NoticesPage,
    refuses: [],
  })
  list(@CurrentUser() user: SignedIn, @Query() query: NoticesQuery): Promise<NoticesPage> {
    return this.notices.list(user, query);
  }

  @Post('read')
  @ApiRoute({ id: 'readAllNotices', summary: 'I have read all of them', answer: ReadDto, refuses: [] })
  readAll(@CurrentUser() user: SignedIn): Promise<ReadDto> {
    return this.notices.readAll(user);
  }

  @Post(':noticeId/read')
  @ApiRoute({ id: 'readNotice', summary: 'I have read it', answer: null, refuses: [404] })
  read(@CurrentUser() user: SignedIn, @Param('noticeId', UuidPipe) id: string): Promise<void> {
    return this.notices.read(user, id);
  }
}
