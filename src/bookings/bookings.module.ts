import { Module } from '@nestjs/common';
import { DecisionsModule } from '../decisions/decisions.module.js';
import { FleetModule } from '../fleet/fleet.module.js';
import './bookings.constraints.js';
import './dispatch/dispatch.constraints.js';
import './overdue/overdue.constraints.js';
import './return/return.constraints.js';
import { BookService } from './book.service.js';
import { BookingsController } from './bookings.controller.js';
import { BookingsService } from './bookings.service.js';
import { DispatchController } from './dispatch/dispatch.controller.js';
import { DispatchService } from './dispatch/dispatch.service.js';
import { TakeBackService } from './dispatch/take-back.service.js';
import { DisplacementsController } from './displacements/displacements.controller.js';
import { FlightsController } from './flights/flights.controller.js';
import { OverdueController } from './overdue/overdue.controller.js';
import { OverdueService } from './overdue/overdue.service.js';
import { OverdueWorker } from './overdue/overdue.worker.js';
import { CorrectionService } from './return/correction.service.js';
import { ReturnController } from './return/return.controller.js';
import { ReturnService } from './return/return.service.js';

@Module({
  imports: [DecisionsModule, FleetModule],
  controllers: [
    BookingsController,
    DisplacementsController,
    FlightsController,
    DispatchController,
    ReturnController,
    OverdueController,
  ],
  providers: [
    BookService,
    BookingsService,
    DispatchService,
    TakeBackService,
    ReturnService,
    CorrectionService,
    OverdueService,
    OverdueWorker,
  ],
  exports: [BookService],
})
export class BookingsModule {}
