import { Module } from '@nestjs/common';
import { DecisionsModule } from '../decisions/decisions.module.js';
import './bookings.constraints.js';
import { BookService } from './book.service.js';
import { BookingsController } from './bookings.controller.js';
import { BookingsService } from './bookings.service.js';
import { AnyAircraftController } from './any-aircraft/any-aircraft.controller.js';
import { AnyAircraftService } from './any-aircraft/any-aircraft.service.js';
import './availability/availability.constraints.js';
import { AvailabilityController } from './availability/availability.controller.js';
import { AvailabilityService } from './availability/availability.service.js';
import { DisplacementsController } from './displacements/displacements.controller.js';
import './standby/standby.constraints.js';
import { StandbyController } from './standby/standby.controller.js';
import { StandbyService } from './standby/standby.service.js';
import { StandbyWorker } from './standby/standby.worker.js';

@Module({
  imports: [DecisionsModule],
  controllers: [
    AnyAircraftController,
    AvailabilityController,
    BookingsController,
    DisplacementsController,
    StandbyController,
  ],
  providers: [
    AnyAircraftService,
    AvailabilityService,
    BookService,
    BookingsService,
    StandbyService,
    StandbyWorker,
  ],
  exports: [BookService],
})
export class BookingsModule {}
