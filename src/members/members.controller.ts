import { Body, Controller, Get, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiBearerAuth, ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { ApiProblems } from '../accounts/api-problems.js';
import { CurrentUser, type SignedIn } from '../accounts/current-user.js';
import { Roles } from '../accounts/roles.js';
import { PageQuery } from '../platform/http/pages.js';
import { UuidPipe } from '../platform/http/uuid.pipe.js';
import { IfMatch } from '../platform/http/versions.js';
import {
  CreateMemberDto,
  MemberNamePage,
  MemberPage,
  MemberView,
  NamesQuery,
  StandingDto,
  UpdateMemberDto,
} from './members.dto.js';
import { MembersService } from './members.service.js';

/** The people of the club. */
@ApiTags('members')
@ApiBearerAuth()
@ApiProblems(400, 401, 429)
@Controller('members')
export class MembersController {
  constructor(private readonly members: MembersService) {}

  @Get()
  @Roles('safety-officer', 'administrator')
  @ApiOperation({ operationId: 'listMembers', summary: 'List members by name, with how to reach them' })
  @ApiOkResponse({ type: MemberPage })
  @ApiProblems(403)
  list(@CurrentUser() person: SignedIn, @Query() query: PageQuery): Promise<MemberPage> {
    return this.members.list(person, query);
  }

  @Get('names')
  @ApiOperation({
    operationId: 'listMemberNames',
    summary: 'List names, to choose an instructor or a second pilot',
  })
  @ApiOkResponse({ type: MemberNamePage })
  names(@CurrentUser() person: SignedIn, @Query() query: NamesQuery): Promise<MemberNamePage> {
    return this.members.names(person, query);
  }

  @Get(':memberId')
  @ApiOperation({
    operationId: 'getMember',
    summary: 'Read a member: oneself, an instructor their students, officers everybody',
  })
  @ApiOkResponse({ type: MemberView })
  @ApiProblems(403, 404)
  get(@CurrentUser() person: SignedIn, @Param('memberId', UuidPipe) memberId: string): Promise<MemberView> {
    return this.members.get(person, memberId);
  }

  @Post()
  @Roles('administrator')
  @ApiOperation({ operationId: 'createMember', summary: 'Take in a member' })
  @ApiCreatedResponse({ type: MemberView })
  @ApiProblems(403, 409, 422)
  create(@CurrentUser() by: SignedIn, @Body() body: CreateMemberDto): Promise<MemberView> {
    return this.members.create(by, body);
  }

  @Patch(':memberId')
  @Roles('administrator')
  @ApiOperation({ operationId: 'updateMember', summary: 'Change a member or the roles of one' })
  @ApiOkResponse({ type: MemberView })
  @ApiProblems(403, 404, 409, 412, 422, 428)
  update(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @IfMatch() version: number,
    @Body() body: UpdateMemberDto,
  ): Promise<MemberView> {
    return this.members.update(by, memberId, version, body);
  }

  @Patch(':memberId/standing')
  @Roles('safety-officer', 'administrator')
  @ApiOperation({ operationId: 'setStanding', summary: "Change a member's standing with the club" })
  @ApiOkResponse({ type: MemberView })
  @ApiProblems(403, 404, 412, 428)
  setStanding(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @IfMatch() version: number,
    @Body() body: StandingDto,
  ): Promise<MemberView> {
    return this.members.setStanding(by, memberId, version, body);
  }
}
