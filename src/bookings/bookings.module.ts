import { Module } from '@nestjs/common';
import { DecisionsModule } from '../decisions/decisions.module.js';
import { FleetModule } from '../fleet/fleet.module.js';
import './bookings.constraints.js';
import './changes/changes.constraints.js';
import './dispatch/dispatch.constraints.js';
import './overdue/overdue.constraints.js';
import './return/return.constraints.js';
import { BlocksController } from './blocks/blocks.controller.js';
import { BlocksService } from './blocks/blocks.service.js';
import { BookService } from './book.service.js';
import { BookingsController } from './bookings.controller.js';
import { BookingsService } from './bookings.service.js';
import { AnyAircraftController } from './any-aircraft/any-aircraft.controller.js';
import { AnyAircraftService } from './any-aircraft/any-aircraft.service.js';
import './availability/availability.constraints.js';
import { AvailabilityController } from './availability/availability.controller.js';
import { AvailabilityService } from './availability/availability.service.js';
import './standby/standby.constraints.js';
import { StandbyController } from './standby/standby.controller.js';
import { StandbyService } from './standby/standby.service.js';
import { StandbyWorker } from './standby/standby.worker.js';
import { CancelService } from './changes/cancel.service.js';
import { ChangesController } from './changes/changes.controller.js';
import { EditService } from './changes/edit.service.js';
import { HandOverService } from './changes/hand-over.service.js';
import { HistoryService } from './changes/history.service.js';
import { DispatchController } from './dispatch/dispatch.controller.js';
import { DispatchService } from './dispatch/dispatch.service.js';
import { TakeBackService } from './dispatch/take-back.service.js';
import { DisplacementsController } from './displacements/displacements.controller.js';
import { DueBackController } from './due-back/due-back.controller.js';
import { DueBackService } from './due-back/due-back.service.js';
import { FlightsController } from './flights/flights.controller.js';
import { HoldsController } from './holds/holds.controller.js';
import { HoldsService } from './holds/holds.service.js';
import { OverdueController } from './overdue/overdue.controller.js';
import { OverdueService } from './overdue/overdue.service.js';
import { OverdueWorker } from './overdue/overdue.worker.js';
import { CorrectionService } from './return/correction.service.js';
import { ReturnController } from './return/return.controller.js';
import { ReturnService } from './return/return.service.js';
import { SeriesController } from './series/series.controller.js';
import { SeriesService } from './series/series.service.js';

@Module({
  imports: [DecisionsModule, FleetModule],
  // Addresses with a word where others have an id come first.
  controllers: [
    ...[BlocksController, HoldsController, SeriesController],
    ...[BookingsController, ChangesController, DisplacementsController],
    ...[AnyAircraftController, AvailabilityController, StandbyController],
    ...[FlightsController, DispatchController, ReturnController, DueBackController, OverdueController],
  ],
  providers: [
    ...[BookService, BookingsService, BlocksService, CancelService, EditService],
    ...[HandOverService, HistoryService, HoldsService, SeriesService],
    ...[DispatchService, TakeBackService, ReturnService, CorrectionService],
    ...[DueBackService, OverdueService, OverdueWorker],
    ...[AnyAircraftService, AvailabilityService, StandbyService, StandbyWorker],
  ],
  exports: [BookService],
})
export class BookingsModule {}
