import { Module } from '@nestjs/common';
import { LapsesController } from './board/lapses.controller.js';
import { LapsesService } from './board/lapses.service.js';
import { OverridesController } from './overrides/overrides.controller.js';
import { OverridesService } from './overrides/overrides.service.js';
import { PracticeGapsController } from './practice-gaps/practice-gaps.controller.js';
import { PracticeGapsService } from './practice-gaps/practice-gaps.service.js';
import { RecencyController } from './recency/recency.controller.js';
import { RecencyService } from './recency/recency.service.js';
import { RefusalsController } from './refusals/refusals.controller.js';
import { RefusalsService } from './refusals/refusals.service.js';
import { ReportsController } from './reports/reports.controller.js';
import { ReportsService } from './reports/reports.service.js';
import './safety.constraints.js';

/** What the safety officer watches: who lapses next, overrides, refusals, hazards and occurrences; and one's own recency. */
@Module({
  controllers: [
    LapsesController,
    OverridesController,
    PracticeGapsController,
    RecencyController,
    RefusalsController,
    ReportsController,
  ],
  providers: [
    LapsesService,
    OverridesService,
    PracticeGapsService,
    RecencyService,
    RefusalsService,
    ReportsService,
  ],
  exports: [RecencyService],
})
export class SafetyModule {}
