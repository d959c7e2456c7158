import { Body, Controller, Delete, Get, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { PageQuery } from '../../platform/http/pages.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { IfMatch } from '../../platform/http/versions.js';
import { AttemptPage, AttemptView, HandInDto } from './attempt.dto.js';
import { AttemptsService } from './attempts.service.js';
import {
  QuestionChangesDto,
  QuestionDto,
  QuestionPage,
  QuestionQuery,
  QuestionView,
} from './question.dto.js';
import { QuestionsService } from './questions.service.js';

/** The written quiz of a checkout: the club's bank of questions, and the members' attempts. */
@ApiTags('checkout quiz')
@Controller()
export class QuizController {
  constructor(
    private readonly questions: QuestionsService,
    private readonly attempts: AttemptsService,
  ) {}

  @Get('checkout-requirements/:requirementId/questions')
  @Roles('safety-officer', 'administrator')
  @ApiRoute({
    id: 'listQuestions',
    summary: 'The bank of questions of a checkout, with the right answers',
    answer: QuestionPage,
    refuses: [403, 404],
  })
  list(
    @CurrentUser() user: SignedIn,
    @Param('requirementId', UuidPipe) requirementId: string,
    @Query() query: QuestionQuery,
  ): Promise<QuestionPage> {
    return this.questions.list(user, requirementId, query);
  }

  @Post('checkout-requirements/:requirementId/questions')
  @Roles('safety-officer', 'administrator')
  @ApiRoute({
    id: 'addQuestion',
    summary: 'Write a question, as a draft',
    answer: QuestionView,
    status: 201,
    refuses: [403, 404, 422],
  })
  add(
    @CurrentUser() user: SignedIn,
    @Param('requirementId', UuidPipe) requirementId: string,
    @Body() body: QuestionDto,
  ): Promise<QuestionView> {
    return this.questions.add(user, requirementId, body);
  }

  @Patch('checkout-questions/:questionId')
  @Roles('safety-officer', 'administrator')
  @ApiRoute({
    id: 'editQuestion',
    summary: 'Change a draft, publish it, or retire a published one',
    description: 'A published question stays as it is.',
    answer: QuestionView,
    refuses: [403, 404, 409, 412, 422, 428],
  })
  edit(
    @CurrentUser() user: SignedIn,
    @Param('questionId', UuidPipe) id: string,
    @IfMatch() version: number,
    @Body() changes: QuestionChangesDto,
  ): Promise<QuestionView> {
    return this.questions.edit(user, id, version, changes);
  }

  @Delete('checkout-questions/:questionId')
  @Roles('safety-officer', 'administrator')
  @ApiRoute({
    id: 'removeQuestion',
    summary: 'Delete a draft',
    answer: null,
    refuses: [403, 404, 409, 412, 428],
  })
  remove(
    @CurrentUser() user: SignedIn,
    @Param('questionId', UuidPipe) id: string,
    @IfMatch() version: number,
  ): Promise<void> {
    return this.questions.remove(user, id, version);
  }

  @Post('checkout-requirements/:requirementId/quiz')
  @ApiRoute({
    id: 'startQuiz',
    summary: 'Begin the quiz of a checkout, for yourself',
    description:
      'Draws questions of every topic; answers the one you began and did not hand in, if there is one. After one that was not passed the club lets some time pass.',
    answer: AttemptView,
    status: 201,
    refuses: [404, 409],
  })
  start(
    @CurrentUser() by: SignedIn,
    @Param('requirementId', UuidPipe) requirementId: string,
  ): Promise<AttemptView> {
    return this.attempts.start(by, requirementId);
  }

  @Get('quiz-attempts/:attemptId')
  @ApiRoute({
    id: 'readQuizAttempt',
    summary: 'A quiz; with the right answers once it is handed in',
    answer: AttemptView,
    refuses: [403, 404],
  })
  read(@CurrentUser() by: SignedIn, @Param('attemptId', UuidPipe) id: string): Promise<AttemptView> {
    return this.attempts.read(by, id);
  }

  @Post('quiz-attempts/:attemptId/answers')
  @ApiRoute({
    id: 'handInQuiz',
    summary: 'Hand your quiz in, once, and have it scored',
    description: 'A question left out is wrong.',
    answer: AttemptView,
    refuses: [403, 404, 409, 422],
  })
  handIn(
    @CurrentUser() by: SignedIn,
    @Param('attemptId', UuidPipe) id: string,
    @Body() body: HandInDto,
  ): Promise<AttemptView> {
    return this.attempts.handIn(by, id, body);
  }

  @Get('members/:memberId/quiz-attempts')
  @ApiRoute({
    id: 'listQuizAttempts',
    summary: "A member's quizzes, newest first",
    answer: AttemptPage,
    refuses: [403, 404],
  })
  listAttempts(
    @CurrentUser() by: SignedIn,
    @Param('memberId', UuidPipe) memberId: string,
    @Query() query: PageQuery,
  ): Promise<AttemptPage> {
    return this.attempts.list(by, memberId, query);
  }
}
