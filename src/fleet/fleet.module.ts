import { Module } from '@nestjs/common';
import { AircraftController } from './aircraft/aircraft.controller.js';
import { AircraftService } from './aircraft/aircraft.service.js';
import { CompliancesController } from './airworthiness/compliances.controller.js';
import { TemplatesController } from './airworthiness/templates/templates.controller.js';
import { TemplatesService } from './airworthiness/templates/templates.service.js';
import { CompliancesService } from './airworthiness/compliances.service.js';
import { ItemsController } from './airworthiness/items.controller.js';
import { ItemsService } from './airworthiness/items.service.js';
import { DifferencesController } from './differences/differences.controller.js';
import { DifferencesService } from './differences/differences.service.js';
import { EquipmentController } from './equipment/equipment.controller.js';
import { EquipmentService } from './equipment/equipment.service.js';
import './fleet.constraints.js';
import './directives/directives.constraints.js';
import './insurance/insurance.constraints.js';
import { InsuranceController } from './insurance/insurance.controller.js';
import { InsuranceService } from './insurance/insurance.service.js';
import { AircraftLoadingController, ModelLoadingController } from './loading/loading.controller.js';
import {
  AircraftPerformanceController,
  ModelPerformanceController,
} from './loading/performance.controller.js';
import { SheetsService } from './loading/sheets.service.js';
import { MetersController } from './meters/meters.controller.js';
import { MetersService } from './meters/meters.service.js';
import { ModelsController } from './models/models.controller.js';
import { ModelsService } from './models/models.service.js';
import { PermitsController } from './papers/permits.controller.js';
import { PermitsService } from './papers/permits.service.js';
import { RegistrationsController } from './papers/registrations.controller.js';
import { RegistrationsService } from './papers/registrations.service.js';
import { AttachmentsController } from './squawks/attachments/attachments.controller.js';
import { AttachmentsService } from './squawks/attachments/attachments.service.js';
import { DatabasePhotoStore, PhotoStore } from './squawks/attachments/photo-store.js';
import { ClosingController } from './squawks/closing.controller.js';
import { ClosingService } from './squawks/closing.service.js';
import { SimilarService } from './squawks/duplicates/similar.service.js';
import { HistoryService } from './squawks/history/history.service.js';
import { SquawksController } from './squawks/squawks.controller.js';
import { SquawksService } from './squawks/squawks.service.js';
import { TriageController } from './squawks/triage.controller.js';
import { TriageService } from './squawks/triage.service.js';
import { WeighingsController } from './weighings/weighings.controller.js';
import { WeighingsService } from './weighings/weighings.service.js';

/** Models, aircraft and everything recorded about one aircraft. */
@Module({
  controllers: [
    ModelsController,
    AircraftController,
    EquipmentController,
    MetersController,
    WeighingsController,
    ModelLoadingController,
    AircraftLoadingController,
    ModelPerformanceController,
    AircraftPerformanceController,
    ItemsController,
    CompliancesController,
    TemplatesController,
    RegistrationsController,
    PermitsController,
    InsuranceController,
    DifferencesController,
    SquawksController,
    TriageController,
    ClosingController,
    AttachmentsController,
  ],
  providers: [
    ModelsService,
    AircraftService,
    EquipmentService,
    MetersService,
    WeighingsService,
    SheetsService,
    ItemsService,
    CompliancesService,
    TemplatesService,
    RegistrationsService,
    PermitsService,
    InsuranceService,
    DifferencesService,
    SquawksService,
    TriageService,
    ClosingService,
    SimilarService,
    HistoryService,
    AttachmentsService,
    { provide: PhotoStore, useClass: DatabasePhotoStore },
  ],
  exports: [MetersService, SquawksService, TriageService, ClosingService],
})
export class FleetModule {}
