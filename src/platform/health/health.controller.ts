import { Controller, Get, Header } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { setTimeout as pause } from 'node:timers/promises';
import { DataSource } from 'typeorm';
import { OpenToAll } from '../http/open-to-all.js';
import { ProblemException } from '../problems/problem-exception.js';

const PATIENCE_MS = 2_000;

/** For supervisors and balancers: is the process alive, and may it be sent requests? */
@ApiTags('health')
@OpenToAll()
@Controller('health')
export class HealthController {
  constructor(private readonly dataSource: DataSource) {}

  /** The process answers. Restart it when it does not. */
  @Get('live')
  @Header('Cache-Control', 'no-store')
  @ApiOperation({ operationId: 'healthLive', summary: 'The process answers' })
  @ApiOkResponse({
    schema: { type: 'object', properties: { status: { type: 'string' } }, required: ['status'] },
  })
  live(): { status: string } {
    return { status: 'alive' };
  }

  /** The database answers within two seconds. Send no requests while it does not; 503 then. */
  @Get('ready')
  @Header('Cache-Control', 'no-store')
  @ApiOperation({ operationId: 'healthReady', summary: 'Requests can be served' })
  @ApiOkResponse({
    schema: { type: 'object', properties: { status: { type: 'string' } }, required: ['status'] },
  })
  async ready(): Promise<{ status: string }> {
    if (!(await this.databaseAnswers()))
      throw new ProblemException('database-unavailable', { headers: { 'Retry-After': '5' } });
    return { status: 'ready' };
  }

  private async databaseAnswers(): Promise<boolean> {
    const query = this.dataSource.query('SELECT 1').then(
      () => true,
      () => false,
    );
    const stop = new AbortController();
    try {
      return await Promise.race([query, pause(PATIENCE_MS, false, { signal: stop.signal })]);
    } finally {
      stop.abort();
    }
  }
}
