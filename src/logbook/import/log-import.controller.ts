import {
  Body,
  Controller,
  Get,
  Param,
  Post,
  Query,
  Res,
  UploadedFile,
  UseInterceptors,
} from '@nestjs/common';
import { ApiBody, ApiConsumes, ApiExtraModels, ApiResponse, ApiTags, getSchemaPath } from '@nestjs/swagger';
import type { Response } from 'express';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { IdempotencyKey, tellStored } from '../../platform/http/idempotency-key.js';
import { takesForms } from '../../platform/http/media-type.js';
import { PageQuery } from '../../platform/http/pages.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { LogFileInterceptor } from './log-import-form.js';
import { LogImportChoices } from './log-import.dto.js';
import { LogImportService } from './log-import.service.js';
import {
  LogImportError,
  LogImportPage,
  LogImportPreview,
  LogImportProgress,
  LogImportView,
} from './log-import-view.dto.js';

takesForms(/^\/api\/v1\/members\/[^/]+\/log\/import(?:\/preview)?\/?$/);

const LINES = [LogImportProgress, LogImportPreview, LogImportError];
const FORM = (preview: boolean) => ({
  schema: {
    type: 'object',
    required: ['file', ...(preview ? ['preview'] : [])],
    properties: {
      file: { type: 'string', format: 'binary' },
      choices: {
        type: 'string',
        description:
          'JSON of LogImportChoices; left out: as the last time for the same headings, or found out',
      },
      ...(preview ? { preview: { type: 'string', description: 'Of the preview that was looked at' } } : {}),
    },
  },
});

/** Flights taken over from files. */
@ApiTags('logbook')
@Controller('members/:memberId/log/import')
export class LogImportController {
  constructor(private readonly imports: LogImportService) {}

  @Post('preview')
  @UseInterceptors(LogFileInterceptor)
  @ApiConsumes('multipart/form-data')
  @ApiBody(FORM(false))
  @ApiExtraModels(...LINES, LogImportChoices)
  @ApiResponse({
    status: 200,
    description:
      'One JSON value a line: how far it is, and the preview at last. An answer without it is not whole; where something went wrong on the way, `error` is the last line.',
    content: {
      'application/x-ndjson': { schema: { oneOf: LINES.map((line) => ({ $ref: getSchemaPath(line) })) } },
    },
  })
  @ApiRoute({
    id: 'previewLogImport',
    summary: 'What taking over a file of flights would write',
    description:
      'CSV (or the JSON of the export), at most 12 MB and 20,000 rows. What each column is, how dates, hours and times are written, rows that cannot be read, flights that are in the log already, totals before and after. Nothing is written.',
    answer: null,
    status: 200,
    refuses: [403, 404, 413, 415, 422],
  })
  preview(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @UploadedFile() file: { buffer: Buffer } | undefined,
    @Body() fields: Record<string, unknown> | undefined,
    @Res() response: Response,
  ): Promise<void> {
    return this.imports.preview(by, memberId, { file: file?.buffer, fields }, response);
  }

  @Post()
  @UseInterceptors(LogFileInterceptor)
  @ApiConsumes('multipart/form-data')
  @ApiBody(FORM(true))
  @ApiRoute({
    id: 'importLog',
    summary: 'Take a file of flights over into the log',
    description: 'All of it in one transaction, as previewed, or nothing.',
    answer: LogImportView,
    status: 201,
    refuses: [403, 404, 409, 413, 415, 422],
  })
  async take(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @IdempotencyKey() key: string,
    @UploadedFile() file: { buffer: Buffer } | undefined,
    @Body() fields: Record<string, unknown> | undefined,
    @Res({ passthrough: true }) response: Response,
  ): Promise<LogImportView> {
    return tellStored<LogImportView>(
      await this.imports.take(by, key, memberId, { file: file?.buffer, fields }),
      response,
    );
  }

  @Get()
  @ApiRoute({
    id: 'listLogImports',
    summary: 'Files taken over into a log, newest first',
    answer: LogImportPage,
    refuses: [403, 404],
  })
  list(
    @CurrentUser() person: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Query() query: PageQuery,
  ): Promise<LogImportPage> {
    return this.imports.list(person, memberId, query);
  }

  @Post(':importId/take-back')
  @ApiRoute({
    id: 'takeLogImportBack',
    summary: 'Take every entry of an import out of the log; they stay on record, void',
    answer: LogImportView,
    refuses: [403, 404, 409],
  })
  takeBack(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Param('importId', UuidPipe) importId: string,
  ): Promise<LogImportView> {
    return this.imports.takeBack(by, memberId, importId);
  }
}
