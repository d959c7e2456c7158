import { IdField, NumberField, PartsField, Shown, WordsField } from '../../platform/http/fields.js';
import { PageShape } from '../../platform/http/pages.js';
import { LETTERS, type Letter, QUESTION_KINDS, TOPICS } from './question.entity.js';

/** An answer. A question left out is wrong. */
export class AnswerDto {
  @IdField()
  questionId: string;

  @WordsField(LETTERS, { optional: true, description: 'Letters of the choices' })
  chosen?: Letter[];

  @NumberField({ nullable: true, min: -1_000_000, description: 'For a number' })
  value?: number | null;
}

/** All answers at once. */
export class HandInDto {
  @PartsField(() => AnswerDto, { max: 100 })
  answers: AnswerDto[];
}

/** A choice without a word on whether it is right. */
export class ChoiceShown {
  @Shown({ type: 'string', enum: [...LETTERS] })
  letter: Letter;

  @Shown({ type: 'string' })
  text: string;
}

/** What was answered and what was right. Only after handing in. */
export class AnswerScored {
  @Shown({ type: 'string', enum: [...LETTERS], isArray: true })
  chosen: Letter[];

  @Shown({ type: 'number', nullable: true })
  value: number | null;

  @Shown({ type: 'boolean' })
  right: boolean;

  @Shown({ type: 'string', enum: [...LETTERS], isArray: true })
  rightLetters: Letter[];

  @Shown({ type: 'number', nullable: true })
  rightValue: number | null;

  @Shown({ type: 'number', nullable: true })
  tolerance: number | null;

  @Shown({ type: 'string' })
  reference: string;
}

/** A question as it is asked. */
export class QuestionAsked {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string', enum: [...TOPICS] })
  topic: (typeof TOPICS)[number];

  @Shown({ type: 'string', enum: [...QUESTION_KINDS] })
  kind: (typeof QUESTION_KINDS)[number];

  @Shown({ type: 'string' })
  text: string;

  @Shown({ type: () => ChoiceShown, isArray: true })
  choices: ChoiceShown[];

  @Shown({ type: 'string', nullable: true })
  unit: string | null;

  @Shown({ type: () => AnswerScored, nullable: true, description: 'Null until it is handed in' })
  scored: AnswerScored | null;
}

/** What came of it. */
export class QuizResultView {
  @Shown({ type: 'string', format: 'date-time' })
  handedInAt: string;

  @Shown({ type: 'integer' })
  rightCount: number;

  @Shown({ type: 'integer' })
  askedCount: number;

  @Shown({ type: 'integer' })
  passPercent: number;

  @Shown({ type: 'boolean' })
  passed: boolean;
}

/** An attempt without its questions. */
export class AttemptShort {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string', format: 'uuid' })
  memberId: string;

  @Shown({ type: 'string', format: 'uuid' })
  requirementId: string;

  @Shown({ type: 'string', description: 'Of the checkout' })
  title: string;

  @Shown({ type: 'string', format: 'date-time' })
  startedAt: string;

  @Shown({ type: () => QuizResultView, nullable: true, description: 'Null until it is handed in' })
  result: QuizResultView | null;
}

/** An attempt with what it asks. */
export class AttemptView extends AttemptShort {
  @Shown({ type: () => QuestionAsked, isArray: true })
  questions: QuestionAsked[];

  @Shown({ type: 'string' })
  caution: string;
}

/** One page of attempts, newest first. */
export class AttemptPage extends PageShape {
  @Shown({ type: () => AttemptShort, isArray: true })
  items: AttemptShort[];
}
