import './practice.constraints.js';
import { Module } from '@nestjs/common';
import { AdviceController } from './advice/advice.controller.js';
import { AdviceService } from './advice/advice.service.js';
import { TrackController } from './import/track.controller.js';
import { TrackService } from './import/track.service.js';
import { LimitSuggestionsController } from './limits/suggestions.controller.js';
import { LimitSuggestionsService } from './limits/suggestions.service.js';
import { PracticeController } from './records/practice.controller.js';
import { PracticeService } from './records/practice.service.js';

/** What members practise: records, recorded tracks, what is rusty, the next practice flight. */
@Module({
  controllers: [AdviceController, TrackController, PracticeController, LimitSuggestionsController],
  providers: [AdviceService, TrackService, PracticeService, LimitSuggestionsService],
})
export class PracticeModule {}
