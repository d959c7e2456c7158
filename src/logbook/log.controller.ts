import { Body, Controller, Get, HttpCode, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiBearerAuth, ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { ApiProblems } from '../accounts/api-problems.js';
import { CurrentUser, type SignedIn } from '../accounts/current-user.js';
import { UuidPipe } from '../platform/http/uuid.pipe.js';
import { IfMatch } from '../platform/http/versions.js';
import { LogEntryChanges, LogEntryDto, LogEntryView, LogPage, LogQuery } from './log.dto.js';
import { LogService } from './log.service.js';
import { LogTotalsView } from './log-totals.js';

/** Members' logs. */
@ApiTags('logbook')
@ApiBearerAuth()
@ApiProblems(400, 401, 403, 404, 429)
@Controller('members/:memberId/log')
export class LogController {
  constructor(private readonly log: LogService) {}

  @Get()
  @ApiOperation({ operationId: 'listLogEntries', summary: "List a member's log, newest flight first" })
  @ApiOkResponse({ type: LogPage })
  list(
    @CurrentUser() person: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Query() query: LogQuery,
  ): Promise<LogPage> {
    return this.log.list(person, memberId, query);
  }

  @Get('totals')
  @ApiOperation({
    operationId: 'getLogTotals',
    summary: 'Add up hours and recent landings',
    description:
      'An aid: whether they are enough, the rules say for each flight, and the pilot in command answers for it.',
  })
  @ApiOkResponse({ type: LogTotalsView })
  totals(
    @CurrentUser() person: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
  ): Promise<LogTotalsView> {
    return this.log.totals(person, memberId);
  }

  @Post()
  @ApiOperation({ operationId: 'createLogEntry', summary: 'Log a flight' })
  @ApiCreatedResponse({ type: LogEntryView })
  @ApiProblems(422)
  create(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Body() draft: LogEntryDto,
  ): Promise<LogEntryView> {
    return this.log.create(by, memberId, draft);
  }

  @Patch(':id')
  @ApiOperation({
    operationId: 'updateLogEntry',
    summary: 'Correct an entry',
    description: 'The audit log keeps what it said before.',
  })
  @ApiOkResponse({ type: LogEntryView })
  @ApiProblems(409, 412, 422, 428)
  update(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Param('id', UuidPipe) id: string,
    @IfMatch() version: number,
    @Body() changes: LogEntryChanges,
  ): Promise<LogEntryView> {
    return this.log.update(by, memberId, id, version, changes);
  }

  @Post(':id/void')
  @HttpCode(200)
  @ApiOperation({
    operationId: 'voidLogEntry',
    summary: 'Take an entry out of every count; it stays on record',
  })
  @ApiOkResponse({ type: LogEntryView })
  @ApiProblems(409, 412, 428)
  void(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Param('id', UuidPipe) id: string,
    @IfMatch() version: number,
  ): Promise<LogEntryView> {
    return this.log.void(by, memberId, id, version);
  }
}
