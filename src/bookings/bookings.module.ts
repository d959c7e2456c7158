import { Module } from '@nestjs/common';
import { DecisionsModule } from '../decisions/decisions.module.js';
import './bookings.constraints.js';
import { BookService } from './book.service.js';
import { BookingsController } from './bookings.controller.js';
import { BookingsService } from './bookings.service.js';
import { DisplacementsController } from './displacements/displacements.controller.js';

@Module({
  imports: [DecisionsModule],
  controllers: [BookingsController, DisplacementsController],
  providers: [BookService, BookingsService],
  exports: [BookService],
})
export class BookingsModule {}
