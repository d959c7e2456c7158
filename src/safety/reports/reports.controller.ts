import { Body, Controller, Get, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { IfMatch } from '../../platform/http/versions.js';
import {
  NewSafetyReport,
  NewSafetyStep,
  ReceiptView,
  ReportClosing,
  ReportReceipt,
  ReportsQuery,
  SafetyReportFiled,
  SafetyReportPage,
  SafetyReportView,
  SafetyStepChanges,
  SafetyStepView,
} from './report.dto.js';
import { ReportsService } from './reports.service.js';

/** What could have hurt somebody, or did. */
@ApiTags('safety')
@Controller('safety-reports')
export class ReportsController {
  constructor(private readonly reports: ReportsService) {}

  @Post()
  @ApiRoute({
    id: 'fileSafetyReport',
    summary: 'Report a hazard or an occurrence',
    description:
      'Anyone signed in may. With `confidential` no record of the club says who reported, the audit log neither; the receipt is shown once.',
    answer: SafetyReportFiled,
    status: 201,
    refuses: [404, 422],
  })
  file(@CurrentUser() user: SignedIn, @Body() body: NewSafetyReport): Promise<SafetyReportFiled> {
    return this.reports.file(user, body);
  }

  @Get()
  @ApiRoute({
    id: 'listSafetyReports',
    summary: 'Reports, newest first',
    description: 'All for safety officers and administrators; for anybody else those under their own name.',
    answer: SafetyReportPage,
  })
  list(@CurrentUser() user: SignedIn, @Query() query: ReportsQuery): Promise<SafetyReportPage> {
    return this.reports.list(user, query);
  }

  @Post('by-receipt')
  @ApiRoute({
    id: 'readReceipt',
    summary: 'What came of a confidential report',
    description: 'By POST, so that the receipt stands in no address and no log.',
    answer: ReceiptView,
    refuses: [404],
  })
  byReceipt(@CurrentUser() user: SignedIn, @Body() { receipt }: ReportReceipt): Promise<ReceiptView> {
    return this.reports.byReceipt(user, receipt);
  }

  @Get(':reportId')
  @ApiRoute({ id: 'readSafetyReport', summary: 'One report', answer: SafetyReportView, refuses: [403, 404] })
  read(@CurrentUser() user: SignedIn, @Param('reportId', UuidPipe) id: string): Promise<SafetyReportView> {
    return this.reports.read(user, id);
  }

  @Post(':reportId/steps')
  @Roles('safety-officer', 'administrator')
  @ApiRoute({
    id: 'addSafetyStep',
    summary: 'Say what is to be done about it, by whom and when',
    answer: SafetyStepView,
    status: 201,
    refuses: [403, 404, 409],
  })
  addStep(
    @CurrentUser() user: SignedIn,
    @Param('reportId', UuidPipe) id: string,
    @Body() body: NewSafetyStep,
  ): Promise<SafetyStepView> {
    return this.reports.addStep(user, id, body);
  }

  @Patch(':reportId/steps/:stepId')
  @ApiRoute({
    id: 'editSafetyStep',
    summary: 'Change a step, or record that it is done',
    description: 'For officers, and for the member who sees to it.',
    answer: SafetyStepView,
    refuses: [403, 404, 409, 412, 422, 428],
  })
  editStep(
    @CurrentUser() user: SignedIn,
    @Param('reportId', UuidPipe) reportId: string,
    @Param('stepId', UuidPipe) id: string,
    @IfMatch() version: number,
    @Body() changes: SafetyStepChanges,
  ): Promise<SafetyStepView> {
    return this.reports.editStep(user, { reportId, id }, version, changes);
  }

  @Post(':reportId/close')
  @Roles('safety-officer', 'administrator')
  @ApiRoute({
    id: 'closeSafetyReport',
    summary: 'Close it with a finding, once every step is done',
    answer: SafetyReportView,
    refuses: [403, 404, 409],
  })
  close(
    @CurrentUser() user: SignedIn,
    @Param('reportId', UuidPipe) id: string,
    @Body() { finding }: ReportClosing,
  ): Promise<SafetyReportView> {
    return this.reports.close(user, id, finding);
  }
}
