import { Body, Controller, Get, Param, Post, Res } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { ErasureService } from './erasure.service.js';
import { ExportService } from './export.service.js';
import { EraseDto, ErasureView, MemberExport } from './record.dto.js';
import './record.problems.js';

/** A member's data as a whole: taken out, and erased. */
@ApiTags('members')
@Controller()
export class RecordController {
  constructor(
    private readonly exports: ExportService,
    private readonly erasures: ErasureService,
  ) {}

  @Get('my-record')
  @ApiRoute({
    id: 'exportMyRecord',
    summary: 'Everything on record about you',
    description:
      'For the member alone. Noted in the audit log. Documents are listed; each is read by its own address.',
    answer: MemberExport,
  })
  async export(
    @CurrentUser() by: SignedIn,
    @Res({ passthrough: true }) response: Response,
  ): Promise<MemberExport> {
    const all = await this.exports.export(by);
    response.setHeader('Cache-Control', 'no-store');
    response.setHeader('Content-Disposition', 'attachment; filename="my-record.json"');
    return all;
  }

  @Post('members/:memberId/erasure/preview')
  @Roles('administrator')
  @ApiRoute({
    id: 'previewErasure',
    summary: "What erasing a member's data would do",
    description: 'The erasure itself, done and undone.',
    answer: ErasureView,
    refuses: [403, 404, 409],
  })
  preview(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Body() { reason }: EraseDto,
  ): Promise<ErasureView> {
    return this.erasures.erase(by, memberId, reason, true);
  }

  @Post('members/:memberId/erasure')
  @Roles('administrator')
  @ApiRoute({
    id: 'eraseMember',
    summary: "Erase a member's data",
    description:
      'On the request of the member. Papers, documents, account and roles go; the name is replaced; what is kept and why is in the answer. Nothing brings it back.',
    answer: ErasureView,
    refuses: [403, 404, 409],
  })
  erase(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Body() { reason }: EraseDto,
  ): Promise<ErasureView> {
    return this.erasures.erase(by, memberId, reason, false);
  }
}
