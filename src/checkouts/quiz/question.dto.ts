import { ApiPropertyOptional } from '@nestjs/swagger';
import { IsIn, IsOptional } from 'class-validator';
import {
  FlagField,
  NoteField,
  NumberField,
  PartsField,
  Shown,
  TextField,
  WordField,
} from '../../platform/http/fields.js';
import { PageQuery, PageShape } from '../../platform/http/pages.js';
import { ChangesOf, RecordHead } from '../../platform/http/views.js';
import { QUESTION_KINDS, QUESTION_STATES, TOPICS } from './question.entity.js';

/** One of the choices. */
export class ChoiceDto {
  @TextField({ max: 300 })
  text: string;

  @FlagField()
  right: boolean;
}

/** A question of the club's own, written for its own aircraft out of their handbooks. */
export class QuestionDto {
  @WordField(TOPICS)
  topic: (typeof TOPICS)[number];

  @WordField(QUESTION_KINDS, {
    description:
      "'single': one choice is right; 'multiple': all the right ones and no other; 'number': within a tolerance",
  })
  kind: (typeof QUESTION_KINDS)[number];

  @TextField({ max: 1000 })
  text: string;

  @PartsField(() => ChoiceDto, { optional: true, max: 8, description: 'Two to eight; none for a number' })
  choices?: ChoiceDto[];

  @NumberField({ nullable: true, min: -1_000_000, description: 'For a number' })
  rightValue?: number | null;

  @NumberField({ nullable: true, description: 'How far off still is right, its edge too' })
  tolerance?: number | null;

  @TextField({ nullable: true, max: 40, example: 'kt indicated' })
  unit?: string | null;

  @NoteField({ optional: true, max: 200, description: 'Where the answer is written, shown after handing in' })
  reference?: string;
}

/** PATCH of a question: a draft as a whole or in part; a published one only its state. */
export class QuestionChangesDto extends ChangesOf(QuestionDto) {
  @WordField(QUESTION_STATES, {
    optional: true,
    description: "'published': drawn from now on, and never changed; 'retired': drawn no more",
  })
  state?: (typeof QUESTION_STATES)[number];
}

/** A question with its answer. For officers. */
export class QuestionView extends RecordHead {
  @Shown({ type: 'string', format: 'uuid' })
  requirementId: string;

  @Shown({ type: 'string', enum: [...TOPICS] })
  topic: (typeof TOPICS)[number];

  @Shown({ type: 'string', enum: [...QUESTION_KINDS] })
  kind: (typeof QUESTION_KINDS)[number];

  @Shown({ type: 'string' })
  text: string;

  @Shown({ type: () => ChoiceDto, isArray: true })
  choices: ChoiceDto[];

  @Shown({ type: 'number', nullable: true })
  rightValue: number | null;

  @Shown({ type: 'number', nullable: true })
  tolerance: number | null;

  @Shown({ type: 'string', nullable: true })
  unit: string | null;

  @Shown({ type: 'string' })
  reference: string;

  @Shown({ type: 'string', enum: [...QUESTION_STATES] })
  state: (typeof QUESTION_STATES)[number];
}

/** Narrows the list. */
export class QuestionQuery extends PageQuery {
  @ApiPropertyOptional({ enum: QUESTION_STATES })
  @IsOptional()
  @IsIn([...QUESTION_STATES], { message: `state must be one of ${QUESTION_STATES.join(', ')}` })
  state?: (typeof QUESTION_STATES)[number];
}

/** One page of questions, oldest first. */
export class QuestionPage extends PageShape {
  @Shown({ type: () => QuestionView, isArray: true })
  items: QuestionView[];
}
