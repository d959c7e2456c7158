import { Module } from '@nestjs/common';
import { AuditController } from './audit/audit.controller.js';
import { AuditService } from './audit/audit.service.js';
import './audit/chain.constraints.js';
import { Sealer } from './audit/sealer.js';
import './decisions.problems.js';
import { DecisionsController } from './decisions.controller.js';
import { DecisionsService } from './decisions.service.js';
import { DryRunController } from './dry-run/dry-run.controller.js';
import { DryRunService } from './dry-run/dry-run.service.js';
import { LoadingWorkController } from './loading/loading-work.controller.js';
import { PapersHoldController } from './papers-hold/papers-hold.controller.js';
import { PapersHoldService } from './papers-hold/papers-hold.service.js';
import { TimelinesModule } from './timeline/timelines.module.js';
import { RuleBookController } from './why/rule-book.controller.js';
import { RuleBookService } from './why/rule-book.service.js';
import { WaysController } from './ways/ways.controller.js';
import { WaysService } from './ways/ways.service.js';
import { WeatherModule } from '../weather/weather.module.js';
import { WeatherWorkController } from './weather/weather-work.controller.js';
import { WhyController } from './why/why.controller.js';

@Module({
  imports: [TimelinesModule, WeatherModule],
  controllers: [
    DecisionsController,
    WaysController,
    LoadingWorkController,
    WeatherWorkController,
    WhyController,
    RuleBookController,
    AuditController,
    DryRunController,
    PapersHoldController,
  ],
  providers: [
    DecisionsService,
    WaysService,
    RuleBookService,
    Sealer,
    AuditService,
    DryRunService,
    PapersHoldService,
  ],
  exports: [DecisionsService, Sealer, WaysService],
})
export class DecisionsModule {}
