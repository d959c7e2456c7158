import {
  Body,
  Controller,
  Get,
  HttpCode,
  Param,
  Patch,
  Post,
  Query,
  type StreamableFile,
} from '@nestjs/common';
import { ApiBearerAuth, ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { ApiProblems } from '../accounts/api-problems.js';
import { CurrentUser, type SignedIn } from '../accounts/current-user.js';
import { download, fileContent } from '../platform/http/download.js';
import { UuidPipe } from '../platform/http/uuid.pipe.js';
import { IfMatch } from '../platform/http/versions.js';
import { LogEntryChanges, LogEntryDto } from './log.dto.js';
import { LogService } from './log.service.js';
import { logCsv, logJson } from './log-export.js';
import { CheckedEntryView, LogPage, LogQuery } from './log-list.dto.js';
import { LogTotalsView, TotalsQuery } from './log-totals.dto.js';

/** Members' logs. */
@ApiTags('logbook')
@ApiBearerAuth()
@ApiProblems(400, 401, 403, 404, 429)
@Controller('members/:memberId/log')
export class LogController {
  constructor(private readonly log: LogService) {}

  @Get()
  @ApiOperation({
    operationId: 'listLogEntries',
    summary: "List a member's log, newest flight first",
    description:
      'Each entry is held against the sun, the distance and the clock. A flag is for people to look at: it changes nothing, and an entry without one is not thereby right.',
  })
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
    @Query() { on }: TotalsQuery,
  ): Promise<LogTotalsView> {
    return this.log.totals(person, memberId, on);
  }

  @Get('export.csv')
  @ApiOperation({
    operationId: 'exportLogCsv',
    summary: 'The log as a table',
    description:
      'Every entry that counts, oldest first. What would read as a formula in a spreadsheet stands behind an apostrophe.',
  })
  @ApiOkResponse({ description: 'The file', content: fileContent('text/csv') })
  async exportCsv(
    @CurrentUser() person: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
  ): Promise<StreamableFile> {
    return download(logCsv(await this.log.file(person, memberId)), 'text/csv', 'log.csv');
  }

  @Get('export.json')
  @ApiOperation({
    operationId: 'exportLogJson',
    summary: 'The log as data',
    description: 'Every entry that counts, oldest first, by the same fields as the table.',
  })
  @ApiOkResponse({ description: 'The file', content: fileContent('application/json') })
  async exportJson(
    @CurrentUser() person: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
  ): Promise<StreamableFile> {
    return download(logJson(await this.log.file(person, memberId)), 'application/json', 'log.json');
  }

  @Post()
  @ApiOperation({ operationId: 'createLogEntry', summary: 'Log a flight' })
  @ApiCreatedResponse({ type: CheckedEntryView })
  @ApiProblems(422)
  create(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Body() draft: LogEntryDto,
  ): Promise<CheckedEntryView> {
    return this.log.create(by, memberId, draft);
  }

  @Patch(':id')
  @ApiOperation({
    operationId: 'updateLogEntry',
    summary: 'Correct an entry',
    description: 'The audit log keeps what it said before.',
  })
  @ApiOkResponse({ type: CheckedEntryView })
  @ApiProblems(409, 412, 422, 428)
  update(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Param('id', UuidPipe) id: string,
    @IfMatch() version: number,
    @Body() changes: LogEntryChanges,
  ): Promise<CheckedEntryView> {
    return this.log.update(by, memberId, id, version, changes);
  }

  @Post(':id/void')
  @HttpCode(200)
  @ApiOperation({
    operationId: 'voidLogEntry',
    summary: 'Take an entry out of every count; it stays on record',
  })
  @ApiOkResponse({ type: CheckedEntryView })
  @ApiProblems(409, 412, 428)
  void(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Param('id', UuidPipe) id: string,
    @IfMatch() version: number,
  ): Promise<CheckedEntryView> {
    return this.log.void(by, memberId, id, version);
  }
}
