import './checkouts.constraints.js';
import './syllabus.constraints.js';
import './quiz/quiz.constraints.js';
import { Module } from '@nestjs/common';
import { CheckoutsController } from './checkouts.controller.js';
import { CheckoutsService } from './checkouts.service.js';
import { ProgressController } from './progress/progress.controller.js';
import { ProgressService } from './progress/progress.service.js';
import { AttemptsService } from './quiz/attempts.service.js';
import { QuestionsService } from './quiz/questions.service.js';
import { QuizController } from './quiz/quiz.controller.js';
import { RequirementsController } from './requirements/requirements.controller.js';
import { RequirementsService } from './requirements/requirements.service.js';
import { MarksController } from './syllabus/marks.controller.js';
import { MarksService } from './syllabus/marks.service.js';

/** The club's sign-offs: what each asks for, items signed one by one, the written quiz, how far everybody is. */
@Module({
  controllers: [
    CheckoutsController,
    RequirementsController,
    QuizController,
    MarksController,
    ProgressController,
  ],
  providers: [
    ...[CheckoutsService, RequirementsService, QuestionsService, AttemptsService],
    ...[MarksService, ProgressService],
  ],
})
export class CheckoutsModule {}
