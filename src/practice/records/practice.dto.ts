import {
  DayField,
  FlagField,
  IdField,
  NoteField,
  NumberField,
  PartField,
  Shown,
  SwitchField,
  TextField,
  TextsField,
  WholeField,
  WordField,
} from '../../platform/http/fields.js';
import { PageQuery, PageShape } from '../../platform/http/pages.js';
import { ViewOf } from '../../platform/http/views.js';
import type { Level, Measure, Task, Verdict } from '../tolerances/index.js';
import { LEVELS, MANOEUVRES, MEASURES } from './words.js';

/** Span a measure kept within. */
export class SpanDto {
  @NumberField({ min: -10_000, max: 10_000 })
  least: number;

  @NumberField({ min: -10_000, max: 10_000 })
  most: number;
}

const SpanField = (description: string): PropertyDecorator =>
  PartField(() => SpanDto, { optional: true, description });

/** What was measured, each as the span it kept within. What was not measured is left out. */
export class MeasuredDto {
  @SpanField('Feet above (+) or below (−) the altitude meant')
  altitudeDevFt?: SpanDto;

  @SpanField('Knots over or under the speed meant')
  airspeedDevKt?: SpanDto;

  @SpanField('Degrees off the heading meant')
  headingDevDeg?: SpanDto;

  @SpanField('Degrees off the heading to roll out on')
  rolloutDevDeg?: SpanDto;

  @SpanField('Bank flown, degrees')
  bankDeg?: SpanDto;

  @SpanField('Degrees off the bank meant')
  bankDevDeg?: SpanDto;

  @SpanField('Feet from the point meant to where the wheels touched; short of it is negative')
  touchdownBeyondPointFt?: SpanDto;

  @SpanField('Share of full deflection of the needle, −1 to 1')
  needleShare?: SpanDto;

  @SpanField('Feet above the minimum altitude; below is negative')
  minimumDevFt?: SpanDto;

  @SpanField('Nautical miles off the arc')
  arcDevNm?: SpanDto;
}

/** A manoeuvre as flown. What was not recorded does not count as flown in it. */
export class PracticeRecordDto {
  @DayField({ description: "Day of the flight in the club's zone; today or earlier" })
  flownOn: string;

  @WordField(MANOEUVRES)
  manoeuvre: Task;

  @WordField(LEVELS, {
    optional: true,
    description: 'Whose standard it is held against; by the certificates on record unless given',
  })
  level?: Level;

  @PartField(() => MeasuredDto, { optional: true })
  measured?: MeasuredDto;

  @FlagField({ nullable: true, description: 'In the eyes of who records it; null: not said' })
  toStandard?: boolean | null;

  @NumberField({ nullable: true, max: 80, description: 'From either side' })
  crosswindKt?: number | null;

  @NumberField({ nullable: true, max: 80, description: 'Gusts over the wind' })
  gustSpreadKt?: number | null;

  @FlagField({ nullable: true })
  night?: boolean | null;

  @WholeField({ nullable: true, min: 100, max: 20_000, description: 'Length of the runway used' })
  runwayFt?: number | null;

  @TextsField({
    nullable: true,
    description: 'Groups of equipment used, as the club names them',
    example: ['autopilot'],
  })
  equipment?: string[] | null;

  @NoteField({ optional: true, max: 2000 })
  note?: string;

  @IdField({ nullable: true, description: "The flight in the member's log" })
  logEntryId?: string | null;
}

/** What is put in a record's place, and why. */
export class PracticeCorrectionDto {
  @TextField({ max: 500, description: 'For the record, in at least 5 characters' })
  because: string;

  @PartField(() => PracticeRecordDto, { nullable: true, description: 'Null: it is only withdrawn' })
  record?: PracticeRecordDto | null;
}

/** How one measure stands to its tolerance. */
export class MeasureVerdictView {
  @Shown({ type: 'string', enum: Object.keys(MEASURES) })
  measure: Measure;

  @Shown({ type: 'number' })
  least: number;

  @Shown({ type: 'number' })
  most: number;

  @Shown({ type: 'array', items: { type: 'number' }, description: 'Least and most the standard allows' })
  limits: readonly [number, number];

  @Shown({ type: 'boolean' })
  within: boolean;

  @Shown({ type: 'number', description: 'Share of the tolerance used; 1 at the limit' })
  used: number;

  @Shown({ type: 'number', description: 'How far outside; negative: below the least' })
  beyond: number;
}

/** The outcome, as judged when it was recorded. */
export class PracticeVerdictView {
  @Shown({ type: 'string', enum: ['judged', 'no-edition', 'task-not-asked'] satisfies Verdict['status'][] })
  status: Verdict['status'];

  @Shown({ type: 'string', nullable: true, description: 'Published standard in effect on the day' })
  document: string | null;

  @Shown({
    type: 'string',
    nullable: true,
    description: 'Whether its figures were looked up or are from memory',
  })
  known: string | null;

  @Shown({
    type: 'boolean',
    nullable: true,
    description: 'Null: something needed was not measured, or nothing is published. Never a yes.',
  })
  within: boolean | null;

  @Shown({ type: () => MeasureVerdictView, isArray: true })
  measures: MeasureVerdictView[];

  @Shown({ type: 'array', items: { type: 'string' }, description: 'Needed and not measured' })
  missing: Measure[];
}

/** Who has a part in a record. */
export class PracticePersonView {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string' })
  name: string;
}

/** A record as the API shows it. */
export class PracticeRecordView extends ViewOf(PracticeRecordDto) {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string', format: 'uuid' })
  memberId: string;

  @Shown({ type: 'string', description: 'The manoeuvre in words' })
  title: string;

  @Shown({ type: 'string', enum: ['self', 'instructor'] })
  seenBy: 'self' | 'instructor';

  @Shown({ type: () => PracticePersonView, nullable: true, description: 'Who signed it' })
  instructor: PracticePersonView | null;

  @Shown({ type: () => PracticePersonView })
  recordedBy: PracticePersonView;

  @Shown({ type: () => PracticeVerdictView })
  verdict: PracticeVerdictView;

  @Shown({ type: 'string', nullable: true, description: 'Event of a track it was taken over from' })
  trackEvent: string | null;

  @Shown({ type: 'string', format: 'uuid', nullable: true, description: 'The record whose place it takes' })
  corrects: string | null;

  @Shown({ type: 'string', nullable: true })
  because: string | null;

  @Shown({ type: 'boolean', description: 'It only withdraws the record it corrects' })
  withdraws: boolean;

  @Shown({ type: 'string', format: 'uuid', nullable: true, description: 'Null while it stands' })
  correctedBy: string | null;

  @Shown({ type: 'string', format: 'date-time' })
  recordedAt: string;
}

/** Narrows the list. */
export class PracticeQuery extends PageQuery {
  @SwitchField({
    default: false,
    description: 'true: show corrected and withdrawn ones too',
  })
  corrected?: boolean;
}

/** One page of records, newest flight first. */
export class PracticePage extends PageShape {
  @Shown({ type: () => PracticeRecordView, isArray: true })
  items: PracticeRecordView[];

  @Shown({ type: 'string' })
  caution: string;
}
