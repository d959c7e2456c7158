import { Module } from '@nestjs/common';
import { DecisionsModule } from '../decisions/decisions.module.js';
import './standing.constraints.js';
import { StandingController } from './standing.controller.js';
import { StandingService } from './standing.service.js';
import { StandingWorker } from './standing.worker.js';

/** Booked flights keep the answer they have now, and who flies them is told when it becomes another one. */
@Module({
  imports: [DecisionsModule],
  controllers: [StandingController],
  providers: [StandingService, StandingWorker],
  exports: [StandingService],
})
export class StandingModule {}
