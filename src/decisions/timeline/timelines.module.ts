import { Module } from '@nestjs/common';
import { ClubTimelinesController } from './club/club-timelines.controller.js';
import { ClubTimelinesService } from './club/club-timelines.service.js';
import './timeline.problems.js';
import { TimelinesController } from './timelines.controller.js';
import { TimelinesService } from './timelines.service.js';

@Module({
  controllers: [TimelinesController, ClubTimelinesController],
  providers: [TimelinesService, ClubTimelinesService],
})
export class TimelinesModule {}
