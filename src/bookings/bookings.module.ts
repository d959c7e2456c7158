import { Module } from '@nestjs/common';
import { DecisionsModule } from '../decisions/decisions.module.js';
import './bookings.constraints.js';
import './changes/changes.constraints.js';
import { BlocksController } from './blocks/blocks.controller.js';
import { BlocksService } from './blocks/blocks.service.js';
import { BookService } from './book.service.js';
import { BookingsController } from './bookings.controller.js';
import { BookingsService } from './bookings.service.js';
import { CancelService } from './changes/cancel.service.js';
import { ChangesController } from './changes/changes.controller.js';
import { EditService } from './changes/edit.service.js';
import { HandOverService } from './changes/hand-over.service.js';
import { HistoryService } from './changes/history.service.js';
import { DisplacementsController } from './displacements/displacements.controller.js';
import { HoldsController } from './holds/holds.controller.js';
import { HoldsService } from './holds/holds.service.js';
import { SeriesController } from './series/series.controller.js';
import { SeriesService } from './series/series.service.js';

@Module({
  imports: [DecisionsModule],
  // Addresses with a word where others have an id come first.
  controllers: [
    ...[BlocksController, HoldsController, SeriesController],
    ...[BookingsController, ChangesController, DisplacementsController],
  ],
  providers: [
    ...[BookService, BookingsService, BlocksService, CancelService, EditService],
    ...[HandOverService, HistoryService, HoldsService, SeriesService],
  ],
  exports: [BookService],
})
export class BookingsModule {}
