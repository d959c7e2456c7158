import { Column, Entity } from 'typeorm';
import { FactRow, RealColumn, TextColumn, TextListColumn } from '../../platform/database/columns.js';

export const TOPICS = ['limits', 'systems', 'emergency-memory'] as const;
export const QUESTION_KINDS = ['single', 'multiple', 'number'] as const;
export const QUESTION_STATES = ['draft', 'published', 'retired'] as const;
/** By which choices are named, in their order. */
export const LETTERS = ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h'] as const;
export type Letter = (typeof LETTERS)[number];

/** A question of the club's own bank. Published, it stays as it is and can only be retired. */
@Entity('quiz_questions')
export class QuizQuestion extends FactRow {
  @Column({ name: 'requirement_id', type: 'uuid' })
  requirementId: string;

  @TextColumn('topic')
  topic: (typeof TOPICS)[number];

  @TextColumn('kind')
  kind: (typeof QUESTION_KINDS)[number];

  @TextColumn('text')
  text: string;

  @TextListColumn('choices')
  choices: string[];

  @TextListColumn('right_letters')
  rightLetters: Letter[];

  @RealColumn('right_value', { nullable: true })
  rightValue: number | null;

  @RealColumn('tolerance', { nullable: true })
  tolerance: number | null;

  @TextColumn('unit', { nullable: true })
  unit: string | null;

  /** Where the answer is written. */
  @TextColumn('reference')
  reference: string;

  @TextColumn('state')
  state: (typeof QUESTION_STATES)[number];
}
