import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { PageQuery } from '../../platform/http/pages.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { MemberCheckPage, MemberCheckView, NewMemberCheck, VoidMemberCheck } from './member-check.dto.js';
import { MemberChecksService } from './member-checks.service.js';

/** Checks of identity, citizenship and background, as far as the club asks for them. */
@ApiTags('members')
@Controller()
export class MemberChecksController {
  constructor(private readonly checks: MemberChecksService) {}

  @Get('members/:memberId/checks')
  @ApiRoute({
    id: 'listMemberChecks',
    summary: 'What officers have seen of who a member is, newest record first',
    description: 'Those taken back are listed with the reason.',
    answer: MemberCheckPage,
    refuses: [403, 404],
  })
  list(
    @CurrentUser() person: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Query() page: PageQuery,
  ): Promise<MemberCheckPage> {
    return this.checks.list(person, memberId, page);
  }

  @Post('members/:memberId/checks')
  @Roles('safety-officer', 'administrator')
  @ApiRoute({
    id: 'recordMemberCheck',
    summary: 'Record that you have seen it',
    description:
      'That it was seen, when, and until when it holds: never a number of the document nor a copy. Recorded once and never edited. Nobody records their own.',
    answer: MemberCheckView,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  add(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Body() body: NewMemberCheck,
  ): Promise<MemberCheckView> {
    return this.checks.add(by, memberId, body);
  }

  @Post('member-checks/:checkId/void')
  @Roles('safety-officer', 'administrator')
  @ApiRoute({
    id: 'voidMemberCheck',
    summary: 'Take a check back; it stays on record with the reason',
    answer: MemberCheckView,
    refuses: [403, 404, 409, 422],
  })
  void(
    @CurrentUser() by: SignedIn,
    @Param('checkId', UuidPipe) id: string,
    @Body() { reason }: VoidMemberCheck,
  ): Promise<MemberCheckView> {
    return this.checks.void(by, id, reason);
  }
}
