import { Body, Controller, Param, Post, Res } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import { CurrentUser, type SignedIn } from '../../../accounts/current-user.js';
import { Roles } from '../../../accounts/roles.js';
import { ApiRoute } from '../../../platform/http/api-route.js';
import { IdempotencyKey, tellStored } from '../../../platform/http/idempotency-key.js';
import { UuidPipe } from '../../../platform/http/uuid.pipe.js';
import { ImportResult, StatusImport, StatusImportToWrite } from './import.dto.js';
import { StatusImportService } from './import.service.js';

/** An existing status taken over from a file. */
@ApiTags('aircraft status')
@Controller('aircraft/:aircraftId/status/import')
export class StatusImportController {
  constructor(private readonly imports: StatusImportService) {}

  @Post('preview')
  @Roles('maintenance-coordinator', 'safety-officer', 'administrator')
  @ApiRoute({
    id: 'previewStatusImport',
    summary: 'What taking over a status would write',
    description:
      'Does it and undoes it: each row with what is written, what to look at, or why it is refused. Nothing is kept.',
    answer: ImportResult,
    refuses: [403, 404, 422],
  })
  preview(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Body() body: StatusImport,
  ): Promise<ImportResult> {
    return this.imports.preview(user, aircraftId, body);
  }

  @Post()
  @Roles('maintenance-coordinator', 'safety-officer', 'administrator')
  @ApiRoute({
    id: 'importStatus',
    summary: 'Take over an existing status',
    description:
      'Meters, equipment, empty weights and airworthiness items with what was last done. All rows or none, in one transaction, as previewed. Adds only: nothing on record is changed, and a piece of equipment changes no empty weight.',
    answer: ImportResult,
    status: 201,
    refuses: [403, 404, 409, 422],
  })
  async take(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @IdempotencyKey() key: string,
    @Body() body: StatusImportToWrite,
    @Res({ passthrough: true }) response: Response,
  ): Promise<ImportResult> {
    return tellStored<ImportResult>(await this.imports.take(user, key, aircraftId, body), response);
  }
}
