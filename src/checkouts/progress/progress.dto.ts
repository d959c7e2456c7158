import { Shown } from '../../platform/http/fields.js';
import { MANOEUVRES } from '../../practice/records/words.js';
import type { Task } from '../../practice/tolerances/index.js';
import type { CheckoutCondition, CheckoutFact, EquipmentGroup } from '../../rules/facts/person.js';
import { PersonNamed, QuizAskedDto } from '../requirements/requirement.dto.js';
import { CHECKOUT_KINDS, CONDITIONS, EQUIPMENT_GROUPS } from '../subjects.js';
import type { ItemState, ProgressState, QuizProgress } from './progress-of.js';

const ITEM_STATES: ItemState[] = ['open', 'signed', 'not-yet'];
const STATES: ProgressState[] = ['not-begun', 'in-progress', 'ready', 'standing', 'ending', 'ended'];
const QUIZ_STATES: QuizProgress['state'][] = ['to-do', 'open', 'wait', 'passed'];

/** The sign-off of an item that counts, the newest. */
export class MarkShort {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string', format: 'date' })
  on: string;

  @Shown({ type: () => PersonNamed })
  signedBy: PersonNamed;

  @Shown({ type: 'string' })
  note: string;
}

/** An item, and how far it is. */
export class ItemProgressView {
  @Shown({ type: 'string', format: 'uuid', description: 'Sign it under this id' })
  itemId: string;

  @Shown({ type: 'integer' })
  position: number;

  @Shown({ type: 'string' })
  title: string;

  @Shown({ type: 'string' })
  standard: string;

  @Shown({ type: 'string', enum: MANOEUVRES, nullable: true })
  manoeuvre: Task | null;

  @Shown({ type: 'boolean' })
  required: boolean;

  @Shown({ type: 'string', enum: ITEM_STATES })
  state: ItemState;

  @Shown({ type: () => MarkShort, nullable: true })
  mark: MarkShort | null;
}

/** The quiz, and how far it is. */
export class QuizProgressView extends QuizAskedDto {
  @Shown({
    type: 'string',
    enum: QUIZ_STATES,
    description: "'wait': not passed, and the next may not begin yet",
  })
  state: QuizProgress['state'];

  @Shown({ type: 'integer', nullable: true })
  bestPercent: number | null;

  @Shown({ type: 'string', format: 'uuid', nullable: true })
  openAttemptId: string | null;

  @Shown({ type: 'string', format: 'date-time', nullable: true })
  notBefore: string | null;

  @Shown({ type: 'string', format: 'date', nullable: true })
  passedOn: string | null;
}

/** A checkout that must stand first. */
export class PrerequisiteProgressView {
  @Shown({ type: 'string', format: 'uuid' })
  requirementId: string;

  @Shown({ type: 'string' })
  title: string;

  @Shown({ type: 'boolean' })
  standing: boolean;
}

/** The sign-off that lasts longest; one that has ended where none stands. */
export class SignOffView {
  @Shown({ type: 'string', format: 'uuid' })
  checkoutId: string;

  @Shown({ type: 'string', format: 'date' })
  signedOn: string;

  @Shown({ type: 'string', format: 'date', nullable: true, description: 'Last valid date' })
  expiresOn: string | null;

  @Shown({ type: () => PersonNamed })
  signedBy: PersonNamed;

  @Shown({ type: 'boolean', description: 'It is of a like model, and the club lets it count' })
  likeModel: boolean;
}

/** The change of an aircraft that is to be shown. */
export class DifferenceShort {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string', format: 'uuid' })
  aircraftId: string;

  @Shown({ type: 'string' })
  registration: string;

  @Shown({ type: 'string' })
  title: string;

  @Shown({ type: 'string', format: 'date' })
  since: string;

  @Shown({ type: 'string', description: 'In the words of the change' })
  equipmentGroup: string;
}

/** How far a member is with one checkout. */
export class ProgressView {
  @Shown({
    type: 'string',
    format: 'uuid',
    nullable: true,
    description: 'Null: the club has laid nothing down for it',
  })
  requirementId: string | null;

  @Shown({ type: 'string', format: 'uuid', nullable: true })
  versionId: string | null;

  @Shown({ type: 'integer', nullable: true })
  versionNumber: number | null;

  @Shown({ type: 'string', enum: [...CHECKOUT_KINDS], description: 'Sign it as this kind' })
  kind: CheckoutFact['kind'];

  @Shown({ type: 'string', format: 'uuid', nullable: true })
  modelId: string | null;

  @Shown({ type: 'string', enum: EQUIPMENT_GROUPS, nullable: true })
  equipmentGroup: EquipmentGroup | null;

  @Shown({ type: 'string', enum: CONDITIONS, nullable: true })
  condition: CheckoutCondition | null;

  @Shown({ type: 'string', description: "What it is for, in words: the model, 'night', 'glass panel'" })
  subject: string;

  @Shown({ type: 'string' })
  title: string;

  @Shown({
    type: () => DifferenceShort,
    nullable: true,
    description: 'For a change of one aircraft; sign it with its aircraft',
  })
  difference: DifferenceShort | null;

  @Shown({
    type: 'string',
    enum: STATES,
    description:
      "'ready': everything is there, an instructor may sign; 'ending': stands, and ends before long",
  })
  state: ProgressState;

  @Shown({
    type: 'boolean',
    description: 'Everything asked for is there; also while an earlier sign-off stands',
  })
  ready: boolean;

  @Shown({
    type: 'integer',
    nullable: true,
    description: 'Days a sign-off is good for; null: it does not end',
  })
  goodDays: number | null;

  @Shown({ type: () => SignOffView, nullable: true })
  signOff: SignOffView | null;

  @Shown({ type: () => ItemProgressView, isArray: true })
  items: ItemProgressView[];

  @Shown({ type: 'integer', description: 'Required items that are not signed' })
  itemsLeft: number;

  @Shown({ type: () => QuizProgressView, nullable: true })
  quiz: QuizProgressView | null;

  @Shown({ type: () => PrerequisiteProgressView, isArray: true })
  prerequisites: PrerequisiteProgressView[];

  @Shown({
    type: 'boolean',
    description: 'Whether whoever asks is an instructor who may sign it for this member',
  })
  youMaySign: boolean;
}

/** How far a member is with every checkout the club asks for, and with changes to be shown. */
export class MemberProgressView {
  @Shown({ type: () => PersonNamed })
  member: PersonNamed;

  @Shown({ type: 'string', format: 'date', description: "Today in the club's zone" })
  asOf: string;

  @Shown({ type: () => ProgressView, isArray: true })
  checkouts: ProgressView[];

  @Shown({ type: 'string' })
  caution: string;
}

export const STUDENT_BECAUSE = ['booked', 'signed', 'in-progress'] as const;

/** One of an instructor's students. */
export class StudentView {
  @Shown({ type: () => PersonNamed })
  member: PersonNamed;

  @Shown({
    type: 'string',
    enum: [...STUDENT_BECAUSE],
    isArray: true,
    description:
      "'booked': flies with you, or did within a year; 'signed': something signed by you within a year; 'in-progress': working on a checkout you may sign",
  })
  because: (typeof STUDENT_BECAUSE)[number][];

  @Shown({
    type: 'string',
    format: 'date-time',
    nullable: true,
    description: 'The next flight booked with you',
  })
  nextFlightAt: string | null;

  @Shown({
    type: () => ProgressView,
    isArray: true,
    description:
      'What is left: begun, ready, ending, ended, changes to be shown, the annual check, and models booked with you',
  })
  left: ProgressView[];
}

/** An instructor's students, those with a flight to come first. */
export class StudentsView {
  @Shown({ type: 'string', format: 'date' })
  asOf: string;

  @Shown({ type: () => StudentView, isArray: true })
  students: StudentView[];

  @Shown({ type: 'string' })
  caution: string;
}
