import { Shown } from '../../platform/http/fields.js';
import { PageShape } from '../../platform/http/pages.js';
import { ViewOf } from '../../platform/http/views.js';
import { MOST, WARNINGS, type ExpressionField, type FactKey, type WarningCode } from '../../rules/index.js';
import { ClubRuleBody, STATES } from './club-rule.dto.js';
import type { ClubRuleState } from './club-rule.entity.js';

const PHASES = ['draft', 'to-come', 'in-force', 'past'] as const;
/** What a version is on a day. */
export type Phase = (typeof PHASES)[number];

/** What an expression costs at worst. */
export class CostView {
  @Shown({
    type: 'integer',
    description: `Names, values, operators and calls; at most ${MOST.parts} an expression`,
  })
  parts: number;

  @Shown({ type: 'integer', description: `Steps at worst; at most ${MOST.steps} an expression` })
  steps: number;
}

/** A fault of an expression. */
export class FaultView {
  @Shown({ type: 'string', enum: ['appliesWhen', 'requirement', 'message'] })
  field: ExpressionField;

  @Shown({ type: 'string' })
  code: string;

  @Shown({ type: 'string' })
  message: string;

  @Shown({ type: 'integer', description: 'From 1' })
  line: number;

  @Shown({ type: 'integer', description: 'From 1' })
  column: number;

  @Shown({ type: 'integer', description: 'Characters before it' })
  offset: number;

  @Shown({ type: 'integer', description: 'Characters it covers' })
  length: number;
}

/** Something to think about. */
export class WarningView {
  @Shown({ type: 'string', enum: [...WARNINGS] })
  code: WarningCode;

  @Shown({ type: 'string' })
  says: string;

  @Shown({ type: 'string', nullable: true, description: 'Code of the other rule it is about' })
  otherRule: string | null;
}

/** What a check found. */
export class CheckView {
  @Shown({ type: 'array', items: { type: 'string' }, description: 'Facts behind what the rule reads' })
  reads: FactKey[];

  @Shown({ type: () => CostView })
  cost: CostView;

  @Shown({ type: () => WarningView, isArray: true })
  warnings: WarningView[];
}

/** The newest dry run of a draft. */
export class DryRunHeadView {
  @Shown({ type: 'string', format: 'date-time' })
  at: string;

  @Shown({ type: 'string', format: 'uuid' })
  by: string;

  @Shown({ type: 'integer' })
  lookedAt: number;

  @Shown({ type: 'integer', description: 'Answers that would have been others' })
  changed: number;

  @Shown({ type: 'boolean', description: 'The draft has not been edited since' })
  ofThisDraft: boolean;
}

const id = { type: 'string', format: 'uuid' } as const;

/** One version of a rule. */
export class ClubRuleView extends ViewOf(ClubRuleBody) {
  @Shown(id)
  id: string;

  @Shown({ type: 'string', example: 'club.own.first-flight', description: 'Decisions name the rule by it' })
  code: string;

  @Shown({ type: 'integer', description: 'Counts the versions of the code' })
  version: number;

  @Shown({ type: 'string', enum: [...STATES] })
  state: ClubRuleState;

  @Shown({ type: 'string', enum: [...PHASES], description: "Today in the club's zone" })
  phase: Phase;

  @Shown({ type: 'string', format: 'date', nullable: true, description: 'First day in force' })
  inForceFrom: string | null;

  @Shown({ type: 'string', format: 'date', nullable: true, description: 'First day no longer in force' })
  inForceTo: string | null;

  @Shown({ type: 'array', items: { type: 'string' }, description: 'Facts behind what the rule reads' })
  reads: FactKey[];

  @Shown({ type: () => CostView, nullable: true })
  cost: CostView | null;

  @Shown({
    type: () => FaultView,
    isArray: true,
    description: 'Why its text no longer fits what rules may say; such a rule is in error on every flight',
  })
  faults: FaultView[];

  @Shown({
    type: () => WarningView,
    isArray: true,
    description: 'From the texts of this and the other rules',
  })
  warnings: WarningView[];

  @Shown({ type: () => DryRunHeadView, nullable: true })
  dryRun: DryRunHeadView | null;

  @Shown(id)
  createdBy: string;

  @Shown({ ...id, nullable: true })
  activatedBy: string | null;

  @Shown({ type: 'string', format: 'date-time', nullable: true })
  activatedAt: string | null;

  @Shown({ ...id, nullable: true })
  endedBy: string | null;

  @Shown({ type: 'string', format: 'date-time', nullable: true })
  endedAt: string | null;

  @Shown({ type: 'integer' })
  rowVersion: number;

  @Shown({ type: 'string', format: 'date-time' })
  recordedAt: string;
}

/** One page of versions, oldest first. */
export class ClubRulesPage extends PageShape {
  @Shown({ type: () => ClubRuleView, isArray: true })
  items: ClubRuleView[];
}
