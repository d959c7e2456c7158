import { Column, Entity } from 'typeorm';
import {
  FactRow,
  FlagColumn,
  InstantColumn,
  IntegerColumn,
  ClubRow,
  RecordedRow,
  TextColumn,
  TextListColumn,
} from '../../platform/database/columns.js';
import type { Task } from '../../practice/tolerances/index.js';
import type { CheckoutCondition, EquipmentGroup } from '../../rules/facts/person.js';
import type { RequirementKind } from '../subjects.js';

/** A checkout the club has laid down: what it is for. What it asks stands in its versions. */
@Entity('checkout_requirements')
export class CheckoutRequirement extends FactRow {
  @TextColumn('kind')
  kind: RequirementKind;

  @Column({ name: 'model_id', type: 'uuid', nullable: true })
  modelId: string | null;

  @TextColumn('equipment_group', { nullable: true })
  equipmentGroup: EquipmentGroup | null;

  @TextColumn('condition', { nullable: true })
  condition: CheckoutCondition | null;

  /** Words by which equipment changes name the same group. */
  @TextListColumn('also_called')
  alsoCalled: string[];

  @FlagColumn('retired')
  retired: boolean;
}

/** What it asks for. A draft until published; then it never changes. */
@Entity('checkout_versions')
export class CheckoutVersion extends RecordedRow {
  @Column({ name: 'requirement_id', type: 'uuid' })
  requirementId: string;

  @IntegerColumn('number')
  number: number;

  @TextColumn('title')
  title: string;

  /** Null: a sign-off does not end. */
  @IntegerColumn('good_days', { nullable: true })
  goodDays: number | null;

  @IntegerColumn('quiz_questions', { nullable: true })
  quizQuestions: number | null;

  @IntegerColumn('quiz_pass_percent', { nullable: true })
  quizPassPercent: number | null;

  @InstantColumn('published_at', { nullable: true })
  publishedAt: string | null;

  @Column({ name: 'published_by', type: 'uuid', nullable: true })
  publishedBy: string | null;
}

/** One thing to be shown, and what to standard means. */
@Entity('checkout_items')
export class SyllabusItem extends ClubRow {
  @Column({ name: 'version_id', type: 'uuid' })
  versionId: string;

  @IntegerColumn('position')
  position: number;

  @TextColumn('title')
  title: string;

  @TextColumn('standard')
  standard: string;

  @TextColumn('manoeuvre', { nullable: true })
  manoeuvre: Task | null;

  @FlagColumn('required')
  required: boolean;
}
