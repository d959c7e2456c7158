import { Controller, Get, Param, Query, StreamableFile } from '@nestjs/common';
import { ApiResponse, ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { statusPdf } from './pdf/status-pdf.js';
import { statusCsv } from './status-csv.js';
import { PrintQuery, StatusQuery, StatusView } from './status.dto.js';
import { StatusService } from './status.service.js';

const FILE = { type: 'string', format: 'binary' } as const;

/** An aircraft's current status on one page. */
@ApiTags('aircraft status')
@Controller('aircraft/:aircraftId/status')
export class StatusController {
  constructor(private readonly statuses: StatusService) {}

  @Get()
  @ApiRoute({
    id: 'readStatus',
    summary: 'Times, items, directives, equipment, empty weight and open squawks as of a day',
    description:
      'What is due next is what the rules ask. A copy for people: the maintenance records themselves decide.',
    answer: StatusView,
    refuses: [404, 422],
  })
  async read(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Query() { on }: StatusQuery,
  ): Promise<StatusView> {
    return (await this.statuses.print(user, aircraftId, on)).status;
  }

  @Get('pdf')
  @ApiRoute({
    id: 'printStatus',
    summary: 'The status as PDF',
    answer: null,
    status: 200,
    refuses: [404, 422],
  })
  @ApiResponse({ status: 200, description: 'The document', content: { 'application/pdf': { schema: FILE } } })
  async pdf(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Query() { on, paper }: PrintQuery,
  ): Promise<StreamableFile> {
    const { status, jurisdiction } = await this.statuses.print(user, aircraftId, on);
    const bytes = await statusPdf(status, paper ?? (jurisdiction === 'US' ? 'letter' : 'a4'));
    return file(bytes, 'application/pdf', `${fileName(status)}.pdf`);
  }

  @Get('csv')
  @ApiRoute({
    id: 'exportStatus',
    summary: 'The status as one tidy CSV file',
    description:
      'A row for each fact, the section in the first column. What would read as a formula in a spreadsheet stands behind an apostrophe.',
    answer: null,
    status: 200,
    refuses: [404, 422],
  })
  @ApiResponse({ status: 200, description: 'The file', content: { 'text/csv': { schema: FILE } } })
  async csv(
    @CurrentUser() user: SignedIn,
    @Param('aircraftId', UuidPipe) aircraftId: string,
    @Query() { on }: StatusQuery,
  ): Promise<StreamableFile> {
    const { status } = await this.statuses.print(user, aircraftId, on);
    return file(Buffer.from(statusCsv(status)), 'text/csv; charset=utf-8', `${fileName(status)}.csv`);
  }
}

/** 'status-NX101B-2026-03-10', whatever a registration holds. */
const fileName = ({ aircraft, on }: StatusView): string =>
  `status-${aircraft.registration.replace(/[^A-Za-z0-9-]/g, '')}-${on}`;

const file = (bytes: Buffer, type: string, name: string): StreamableFile =>
  new StreamableFile(bytes, { type, length: bytes.length, disposition: `attachment; filename="${name}"` });
