import { Module } from '@nestjs/common';
import { FleetModule } from '../fleet/fleet.module.js';
import { EquipmentChangesController } from './equipment-changes/equipment-changes.controller.js';
import { EquipmentChangesService } from './equipment-changes/equipment-changes.service.js';
import { ForecastController } from './forecast/forecast.controller.js';
import { ForecastService } from './forecast/forecast.service.js';
import { StatusImportController } from './records/import/import.controller.js';
import { StatusImportService } from './records/import/import.service.js';
import { StatusController } from './records/status.controller.js';
import { StatusService } from './records/status.service.js';
import { SeasonController } from './season/season.controller.js';
import { SeasonService } from './season/season.service.js';
import { WishesController } from './wishes/wishes.controller.js';
import { WishesService } from './wishes/wishes.service.js';
import { DeferralGuideService } from './squawks/deferral-guide.service.js';
import { SquawkEffectsController } from './squawks/squawk-effects.controller.js';
import { SquawkEffectsService } from './squawks/squawk-effects.service.js';

/** What is done to aircraft, and what follows from it for everybody else. */
@Module({
  imports: [FleetModule],
  controllers: [
    EquipmentChangesController,
    ForecastController,
    SeasonController,
    WishesController,
    SquawkEffectsController,
    StatusController,
    StatusImportController,
  ],
  providers: [
    EquipmentChangesService,
    ForecastService,
    SeasonService,
    WishesService,
    SquawkEffectsService,
    DeferralGuideService,
    StatusService,
    StatusImportService,
  ],
})
export class MaintenanceModule {}
