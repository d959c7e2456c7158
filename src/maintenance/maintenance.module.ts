import { Module } from '@nestjs/common';
import { FleetModule } from '../fleet/fleet.module.js';
import { DirectivesController } from './directives/directives.controller.js';
import { DirectivesService } from './directives/directives.service.js';
import { EquipmentChangesController } from './equipment-changes/equipment-changes.controller.js';
import { EquipmentChangesService } from './equipment-changes/equipment-changes.service.js';
import { ForecastController } from './forecast/forecast.controller.js';
import { ForecastService } from './forecast/forecast.service.js';
import { RatesController } from './meter-rates/rates.controller.js';
import { RatesService } from './meter-rates/rates.service.js';
import { AcceptanceService } from './season/acceptance.service.js';
import { StatusImportController } from './records/import/import.controller.js';
import { StatusImportService } from './records/import/import.service.js';
import { StatusController } from './records/status.controller.js';
import { StatusService } from './records/status.service.js';
import { SeasonController } from './season/season.controller.js';
import { SeasonService } from './season/season.service.js';
import { SignersController } from './signers/signers.controller.js';
import { SignersService } from './signers/signers.service.js';
import { WishesController } from './wishes/wishes.controller.js';
import { WishesService } from './wishes/wishes.service.js';
import { DeferralGuideService } from './squawks/deferral-guide.service.js';
import { SquawkEffectsController } from './squawks/squawk-effects.controller.js';
import { SquawkEffectsService } from './squawks/squawk-effects.service.js';
import { CheckFlightsService } from './work-orders/check-flights.service.js';
import { ReturnToServiceService } from './work-orders/return-to-service.service.js';
import { WorkOrdersController } from './work-orders/work-orders.controller.js';
import { WorkOrdersService } from './work-orders/work-orders.service.js';
import './work-orders/work-orders.constraints.js';

/** What is done to aircraft, and what follows from it for everybody else. */
@Module({
  imports: [FleetModule],
  controllers: [
    EquipmentChangesController,
    ForecastController,
    SeasonController,
    RatesController,
    WishesController,
    SquawkEffectsController,
    SignersController,
    DirectivesController,
    WorkOrdersController,
    StatusController,
    StatusImportController,
  ],
  providers: [
    EquipmentChangesService,
    ForecastService,
    SeasonService,
    AcceptanceService,
    RatesService,
    WishesService,
    SquawkEffectsService,
    DeferralGuideService,
    SignersService,
    DirectivesService,
    WorkOrdersService,
    ReturnToServiceService,
    CheckFlightsService,
    StatusService,
    StatusImportService,
  ],
  exports: [ForecastService],
})
export class MaintenanceModule {}
