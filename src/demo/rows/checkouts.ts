/** Rows about what checkouts ask for, items signed and quizzes. */
import type { Instant, LocalDate } from '../../rules/index.js';
import type { Recorded, Row } from './row.js';

export interface RequirementRow extends Recorded {
  kind: 'model' | 'equipment' | 'condition' | 'annual-check';
  model_id: string | null;
  equipment_group: string | null;
  condition: string | null;
  also_called: string[];
}
export interface VersionRow extends Recorded {
  requirement_id: string;
  number: number;
  title: string;
  good_days: number | null;
  quiz_questions: number | null;
  quiz_pass_percent: number | null;
  published_at: Instant | null;
  published_by: string | null;
}
export interface SyllabusItemRow extends Row {
  id: string;
  version_id: string;
  position: number;
  title: string;
  standard: string;
  manoeuvre: string | null;
  required: boolean;
}
export interface PrerequisiteRow extends Row {
  version_id: string;
  requirement_id: string;
}
export interface TransferRow extends Row {
  version_id: string;
  model_id: string;
}
export interface AuthorityRow extends Row {
  requirement_id: string;
  member_id: string;
}
export interface MarkRow extends Recorded {
  member_id: string;
  item_id: string;
  outcome: 'signed' | 'not-yet';
  marked_on: LocalDate;
  signed_by: string;
  note: string;
}
export interface QuestionRow extends Recorded {
  requirement_id: string;
  topic: 'limits' | 'systems' | 'emergency-memory';
  kind: 'single' | 'multiple' | 'number';
  text: string;
  choices: string[];
  right_letters: string[];
  right_value: number | null;
  tolerance: number | null;
  unit: string | null;
  reference: string;
  state: 'published';
}
export interface AttemptRow extends Recorded {
  member_id: string;
  requirement_id: string;
  version_id: string;
  started_at: Instant;
}
export interface DrawnRow extends Row {
  requirement_id: string;
  attempt_id: string;
  question_id: string;
  position: number;
}
export interface QuizResultRow extends Row {
  attempt_id: string;
  answers: unknown[];
  right_count: number;
  asked_count: number;
  pass_percent: number;
  passed: boolean;
  handed_in_at: Instant;
  recorded_at: Instant;
}
