import { IsOptional } from 'class-validator';
import { ApiPropertyOptional } from '@nestjs/swagger';
import {
  DayField,
  FlagField,
  NumberField,
  Shown,
  TextsField,
  WholeField,
} from '../../platform/http/fields.js';
import { IsLocalDate } from '../../platform/http/instants.decorator.js';
import type { Task } from '../tolerances/index.js';
import { LEVELS, MANOEUVRES } from '../records/words.js';

/** As of when. */
export class RustQuery {
  @ApiPropertyOptional({
    type: 'string',
    format: 'date',
    description: 'Today unless given; a day to come too',
  })
  @IsOptional()
  @IsLocalDate()
  on?: string;
}

/** How rusty a manoeuvre is in a condition. */
export class RustView {
  @Shown({ type: 'string', enum: MANOEUVRES })
  manoeuvre: Task;

  @Shown({ type: 'string' })
  title: string;

  @Shown({ type: 'string', description: 'In words: at night' })
  condition: string;

  @Shown({ type: 'string', description: 'One name for the pair' })
  key: string;

  @Shown({ type: 'number', description: '0: just done to standard; 1: never' })
  rust: number;

  @Shown({ type: 'string', format: 'date', nullable: true })
  lastGoodOn: string | null;

  @Shown({ type: 'integer', nullable: true })
  days: number | null;

  @Shown({ type: 'number', nullable: true, description: 'Days in which half is lost' })
  halfLifeDays: number | null;

  @Shown({ type: 'integer', description: 'Spaced performances to standard that were counted' })
  spaced: number;

  @Shown({ type: 'array', items: { type: 'string', format: 'uuid' }, description: 'Records counted' })
  evidence: string[];

  @Shown({ type: 'array', items: { type: 'string' } })
  says: string[];
}

/** Rust of everything watched. */
export class RustListView {
  @Shown({ type: 'string', format: 'date' })
  on: string;

  @Shown({ type: 'array', items: { type: 'string', enum: LEVELS } })
  levels: string[];

  @Shown({ type: () => RustView, isArray: true, description: 'The rustiest first' })
  items: RustView[];

  @Shown({ type: 'string', description: 'How it is worked out, with the club’s numbers' })
  model: string;

  @Shown({ type: 'string' })
  caution: string;
}

/** The flight that is planned for. What nobody can tell yet is left out. */
export class PlanPracticeDto {
  @DayField({ optional: true, description: 'Today unless given' })
  on?: string;

  @WholeField({ min: 10, max: 480, description: 'Minutes of the flight' })
  minutes: number;

  @FlagField({ description: 'An instructor is aboard' })
  instructor: boolean;

  @WholeField({
    optional: true,
    max: 240,
    description: 'To the practice area and back; the club’s figure unless given',
  })
  transitMinutes?: number;

  @FlagField({ nullable: true })
  night?: boolean | null;

  @NumberField({ nullable: true, max: 80 })
  crosswindKt?: number | null;

  @NumberField({ nullable: true, max: 80 })
  gustSpreadKt?: number | null;

  @WholeField({ nullable: true, min: 100, max: 20_000 })
  runwayFt?: number | null;

  @TextsField({ nullable: true })
  equipment?: string[] | null;
}

/** Something to fly. */
export class PlanItemView {
  @Shown({ type: 'string', enum: MANOEUVRES })
  manoeuvre: Task;

  @Shown({ type: 'string' })
  title: string;

  @Shown({ type: 'string' })
  condition: string;

  @Shown({ type: 'integer' })
  times: number;

  @Shown({ type: 'integer' })
  minutes: number;

  @Shown({ type: 'string', nullable: true, description: 'Published standard the tolerances are from' })
  document: string | null;

  @Shown({ type: 'array', items: { type: 'string' }, description: 'Tolerances in words' })
  tolerances: string[];

  @Shown({ type: 'boolean' })
  withInstructor: boolean;

  @Shown({ type: 'boolean', description: 'Flown only if the flight offers the condition' })
  ifOffered: boolean;

  @Shown({ type: 'number' })
  rust: number;

  @Shown({ type: 'array', items: { type: 'string' } })
  why: string[];
}

/** Something that is not in the plan. */
export class PlanLeftOutView {
  @Shown({ type: 'string' })
  title: string;

  @Shown({ type: 'string' })
  condition: string;

  @Shown({ type: 'string', enum: ['no-time', 'not-offered', 'no-instructor', 'no-drill'] })
  reason: string;

  @Shown({ type: 'array', items: { type: 'string' } })
  why: string[];
}

/** The next practice flight. It permits nothing. */
export class PracticePlanView {
  @Shown({ type: 'string', format: 'date' })
  on: string;

  @Shown({ type: () => PlanItemView, isArray: true, description: 'In the order to be flown' })
  items: PlanItemView[];

  @Shown({ type: () => PlanLeftOutView, isArray: true })
  leftOut: PlanLeftOutView[];

  @Shown({ type: 'boolean', description: 'At least one item needs an instructor' })
  dual: boolean;

  @Shown({ type: 'integer' })
  transitMinutes: number;

  @Shown({ type: 'integer' })
  totalMinutes: number;

  @Shown({ type: 'number', description: 'Hours to book for it, rounded up' })
  totalH: number;

  @Shown({
    type: 'array',
    items: { type: 'string' },
    description: 'Which hours of the day suit, and checkouts still open',
  })
  notes: string[];

  @Shown({ type: 'array', items: { type: 'string' } })
  cautions: string[];
}
