import { Global, Module, type DynamicModule } from '@nestjs/common';
import { APP_FILTER, APP_INTERCEPTOR, APP_PIPE } from '@nestjs/core';
import { TypeOrmModule } from '@nestjs/typeorm';
import { LoggerModule } from 'nestjs-pino';
import { Clock } from './clock.js';
import { AppConfig } from './config.js';
import type { Database } from './database/open.js';
import type { EntityList } from './database/service-data-source.js';
import { TenantDb } from './database/tenant.js';
import { HealthController } from './health/health.controller.js';
import { RequestValidationPipe } from './http/validation.pipe.js';
import { EtagInterceptor } from './http/versions.js';
import { loggingParams } from './logging.js';
import { ClubRounds } from './queue/club-rounds.js';
import { JobQueue } from './queue/job-queue.js';
import { ProblemFilter } from './problems/problem.filter.js';
import { ProblemsController } from './problems/problems.controller.js';
import { UnknownAddress } from './problems/unknown-address.js';

/** What every other module stands on: settings, clock, database, problems, health. Global: import it once, in AppModule. */
@Global()
@Module({})
export class PlatformModule {
  /** @param entities every entity class of the service. */
  static register(
    config: AppConfig,
    database: Pick<Database, 'dataSourceOptions'>,
    entities: EntityList,
  ): DynamicModule {
    return {
      module: PlatformModule,
      imports: [
        LoggerModule.forRoot(loggingParams(config)),
        TypeOrmModule.forRoot({ ...database.dataSourceOptions(entities), retryAttempts: 3, retryDelay: 500 }),
      ],
      controllers: [HealthController, ProblemsController],
      providers: [
        { provide: AppConfig, useValue: config },
        Clock,
        TenantDb,
        JobQueue,
        ClubRounds,
        UnknownAddress,
        { provide: APP_FILTER, useClass: ProblemFilter },
        { provide: APP_PIPE, useClass: RequestValidationPipe },
        { provide: APP_INTERCEPTOR, useClass: EtagInterceptor },
      ],
      exports: [AppConfig, Clock, TenantDb, JobQueue, ClubRounds],
    };
  }
}
