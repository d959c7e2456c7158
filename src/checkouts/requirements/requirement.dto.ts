import {
  FlagField,
  IdField,
  IdsField,
  PartField,
  PartsField,
  Shown,
  SwitchField,
  TextField,
  TextsField,
  WholeField,
  WordField,
} from '../../platform/http/fields.js';
import { PageQuery, PageShape } from '../../platform/http/pages.js';
import { RecordHead, ViewOf } from '../../platform/http/views.js';
import { MANOEUVRES } from '../../practice/records/words.js';
import type { Task } from '../../practice/tolerances/index.js';
import type { CheckoutCondition, EquipmentGroup } from '../../rules/facts/person.js';
import { CONDITIONS, EQUIPMENT_GROUPS, REQUIREMENT_KINDS, type RequirementKind } from '../subjects.js';

/** A written quiz before the sign-off. */
export class QuizAskedDto {
  @WholeField({ min: 1, max: 100, description: 'Questions drawn from the published ones' })
  questions: number;

  @WholeField({ min: 1, max: 100, description: 'Of a hundred, how many must be right' })
  passPercent: number;
}

/** One thing to be shown. */
export class SyllabusItemDto {
  @TextField({ max: 200 })
  title: string;

  @TextField({ max: 1000, description: 'What to standard means here' })
  standard: string;

  @WordField(MANOEUVRES, { nullable: true, description: 'The manoeuvre of the practice records it is' })
  manoeuvre?: Task | null;

  @FlagField({ optional: true, description: 'true unless said: the checkout is not signed without it' })
  required?: boolean;
}

/** What a checkout asks for. */
export class SyllabusDto {
  @TextField({ max: 200 })
  title: string;

  @WholeField({ nullable: true, min: 1, max: 3660, description: 'Null: a sign-off does not end' })
  goodDays?: number | null;

  @IdsField({ optional: true, max: 20, description: 'Requirements whose checkout must stand first' })
  prerequisiteIds?: string[];

  @IdsField({
    optional: true,
    max: 50,
    description: 'Like models for which a sign-off of this model counts too',
  })
  alsoModelIds?: string[];

  @PartField(() => QuizAskedDto, { nullable: true, description: 'Null: no quiz is asked' })
  quiz?: QuizAskedDto | null;

  @PartsField(() => SyllabusItemDto, { description: 'In the order they are shown in', max: 60 })
  items: SyllabusItemDto[];
}

/** A checkout the club lays down. It begins as a draft. */
export class NewRequirementDto extends SyllabusDto {
  @WordField(REQUIREMENT_KINDS)
  kind: RequirementKind;

  @IdField({ nullable: true, description: "The model, for the kind 'model'" })
  modelId?: string | null;

  @WordField(EQUIPMENT_GROUPS, { nullable: true, description: "For the kind 'equipment'" })
  equipmentGroup?: EquipmentGroup | null;

  @WordField(CONDITIONS, { nullable: true, description: "For the kind 'condition'" })
  condition?: CheckoutCondition | null;

  @TextsField({
    optional: true,
    description: "Words by which equipment changes name the group besides its own: 'electronic panel'",
  })
  alsoCalled?: string[];

  @IdsField({ optional: true, description: 'Instructors who may sign it; none: every instructor' })
  instructorIds?: string[];
}

/** PATCH of what is not part of a version. */
export class RequirementChangesDto {
  @TextsField({ optional: true })
  alsoCalled?: string[];

  @IdsField({ optional: true, description: 'Instructors who may sign it; none: every instructor' })
  instructorIds?: string[];

  @FlagField({ optional: true, description: 'true: it is asked for no more, and nothing is signed under it' })
  retired?: boolean;
}

/** Somebody by name. */
export class PersonNamed {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string' })
  name: string;
}

/** A model by name. */
export class ModelNamed {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string' })
  makeModel: string;
}

/** A checkout that must stand first. */
export class PrerequisiteNamed {
  @Shown({ type: 'string', format: 'uuid' })
  requirementId: string;

  @Shown({ type: 'string' })
  title: string;
}

/** An item as an answer. */
export class SyllabusItemView extends ViewOf(SyllabusItemDto) {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;
}

/** A version of what is asked. */
export class VersionView {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'integer' })
  number: number;

  @Shown({ type: 'string' })
  title: string;

  @Shown({ type: 'integer', nullable: true })
  goodDays: number | null;

  @Shown({ type: () => PrerequisiteNamed, isArray: true })
  prerequisites: PrerequisiteNamed[];

  @Shown({ type: () => ModelNamed, isArray: true })
  alsoModels: ModelNamed[];

  @Shown({ type: () => QuizAskedDto, nullable: true })
  quiz: QuizAskedDto | null;

  @Shown({ type: () => SyllabusItemView, isArray: true })
  items: SyllabusItemView[];

  @Shown({ type: 'string', format: 'date-time', nullable: true, description: 'Null: a draft' })
  publishedAt: string | null;

  @Shown({ type: () => PersonNamed, nullable: true })
  publishedBy: PersonNamed | null;
}

/** A checkout the club has laid down. */
export class RequirementView extends RecordHead {
  @Shown({ type: 'string', enum: [...REQUIREMENT_KINDS] })
  kind: RequirementKind;

  @Shown({ type: 'string', format: 'uuid', nullable: true })
  modelId: string | null;

  @Shown({ type: 'string', enum: EQUIPMENT_GROUPS, nullable: true })
  equipmentGroup: EquipmentGroup | null;

  @Shown({ type: 'string', enum: CONDITIONS, nullable: true })
  condition: CheckoutCondition | null;

  @Shown({ type: 'string', description: "What it is for, in words: the model, 'night', 'glass panel'" })
  subject: string;

  @Shown({ type: 'string', isArray: true })
  alsoCalled: string[];

  @Shown({ type: 'boolean' })
  retired: boolean;

  @Shown({ type: () => PersonNamed, isArray: true, description: 'None: every instructor may sign it' })
  instructors: PersonNamed[];

  @Shown({ type: () => VersionView, nullable: true, description: 'Null before the first is published' })
  inForce: VersionView | null;

  @Shown({ type: () => VersionView, nullable: true, description: 'For officers; null where there is none' })
  draft: VersionView | null;
}

/** Narrows the list. */
export class RequirementQuery extends PageQuery {
  @SwitchField({ default: false, description: 'true: those retired too' })
  retired?: boolean;
}

/** One page of them, oldest first. */
export class RequirementPage extends PageShape {
  @Shown({ type: () => RequirementView, isArray: true })
  items: RequirementView[];
}

/** Every published version, newest first. */
export class VersionList {
  @Shown({ type: () => VersionView, isArray: true })
  items: VersionView[];
}
