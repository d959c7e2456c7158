import { Controller, Get, HttpCode, Param, Post, Res } from '@nestjs/common';
import { ApiConsumes, ApiOkResponse, ApiOperation, ApiResponse, ApiTags } from '@nestjs/swagger';
import { Throttle } from '@nestjs/throttler';
import type { Response } from 'express';
import { ApiProblems } from '../../accounts/api-problems.js';
import { Public } from '../../accounts/roles.js';
import { AppConfig } from '../../platform/config.js';
import { takesForms } from '../../platform/http/media-type.js';
import { ProblemException } from '../../platform/problems/index.js';
import { kindOf } from '../outbox/kinds.js';
import { preferencesPage } from '../outbox/compose.js';
import { PreferencesService } from '../preferences/preferences.service.js';
import { UnsubscribeAddresses } from './unsubscribe-address.js';
import { UnsubscribedDto } from './unsubscribe.dto.js';

/** Mail providers ask for many people from few addresses. */
const TRIES = { default: { ttl: 60_000, limit: 600 } };

// The one field a mail program sends says nothing the address does not: the form is let through and not read.
takesForms(/^\/api\/v1\/unsubscribe\/[^/]+$/, 'any');

/** Mail turned off from within a mail program, without signing in (RFC 8058). */
@ApiTags('notices')
@Controller('unsubscribe/:token')
@Public()
@Throttle(TRIES)
export class UnsubscribeController {
  constructor(
    private readonly addresses: UnsubscribeAddresses,
    private readonly preferences: PreferencesService,
    private readonly config: AppConfig,
  ) {}

  @Post()
  @HttpCode(200)
  @ApiConsumes('application/x-www-form-urlencoded', 'multipart/form-data')
  @ApiOperation({
    operationId: 'unsubscribe',
    summary: 'Turn mail of the kinds a message told of off, by its List-Unsubscribe address (RFC 8058)',
    description: 'What the safety of a flight hangs on goes on coming.',
  })
  @ApiOkResponse({ type: UnsubscribedDto })
  @ApiProblems(404, 429)
  async unsubscribe(@Param('token') token: string): Promise<UnsubscribedDto> {
    const of = this.addresses.read(token);
    if (of === null || !(await this.preferences.turnOff(of)))
      throw new ProblemException('not-found', {
        detail: 'This address turns nothing off. Sign in and say on the page which notices come by mail.',
      });
    return { turnedOff: of.kinds.map((kind) => kindOf(kind)!.title) };
  }

  /** Looking never turns anything off: mail programs and scanners look at every address. */
  @Get()
  @ApiOperation({
    operationId: 'showUnsubscribing',
    summary: 'Where a person says which notices come by mail',
  })
  @ApiResponse({ status: 303, description: 'Leads to the page; nothing is turned off' })
  @ApiProblems(429)
  show(@Res() response: Response): void {
    response.redirect(303, preferencesPage(this.config.publicUrl));
  }
}
