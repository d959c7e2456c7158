import { DayField, FlagField, IdField, Shown, TextField } from '../../platform/http/fields.js';
import { ApiPropertyOptional } from '@nestjs/swagger';
import { IsIn } from 'class-validator';
import { Optional } from '../../platform/http/index.js';
import { WordField } from '../../platform/http/fields.js';
import { PageQuery, PageShape } from '../../platform/http/pages.js';
import { ChangesOf, SomeOf, ViewOf } from '../../platform/http/views.js';
import { REPORT_KINDS, REPORT_STATES } from './report.entity.js';

/** POST of a report. */
export class NewSafetyReport {
  @WordField([...REPORT_KINDS], { description: 'hazard: it could hurt somebody; occurrence: it happened' })
  kind: (typeof REPORT_KINDS)[number];

  @DayField({ description: 'When it happened or was seen; not after today' })
  happenedOn: string;

  @IdField({ nullable: true })
  aircraftId?: string | null;

  @TextField({ nullable: true, description: 'Where: an airfield, a taxiway, a place in flight' })
  place?: string | null;

  @TextField({ max: 200 })
  title: string;

  @TextField({ max: 8000, description: 'What happened. In a confidential report, name nobody' })
  narrative: string;

  @FlagField({
    description:
      'Nobody is told who reports, and it is not kept. A receipt, shown once, opens what came of it',
  })
  confidential: boolean;
}

/** POST …/by-receipt. */
export class ReportReceipt {
  @TextField({ max: 60, pattern: /^[A-Za-z0-9_-]{22,60}$/, says: 'a receipt as it was shown' })
  receipt: string;
}

/** POST of a step. */
export class NewSafetyStep {
  @TextField({ max: 1000, description: 'What is to be done' })
  what: string;

  @IdField({ description: 'Member who sees to it' })
  responsibleId: string;

  @DayField()
  dueOn: string;
}

/** PATCH of a step; `doneOn` and `outcome` come together. */
export class SafetyStepChanges extends ChangesOf(NewSafetyStep) {
  @DayField({ nullable: true, description: 'When it was done; not after today' })
  doneOn?: string | null;

  @TextField({ max: 2000, nullable: true, description: 'What came of it' })
  outcome?: string | null;
}

/** POST …/close. */
export class ReportClosing {
  @TextField({ max: 4000, pattern: /\S.{8,}\S/s, says: 'a finding of at least 10 characters' })
  finding: string;
}

export class SafetyStepView extends ViewOf(NewSafetyStep) {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string' })
  responsibleName: string;

  @Shown({ type: 'string', format: 'date', nullable: true })
  doneOn: string | null;

  @Shown({ type: 'string', nullable: true })
  outcome: string | null;

  @Shown({ type: 'integer', description: 'Counts the edits of the step; its ETag' })
  rowVersion: number;
}

/** A report as an answer. Whoever reported is named only where they let themselves be. */
export class SafetyReportView extends ViewOf(NewSafetyReport) {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string', format: 'uuid', nullable: true, description: 'Null of a confidential report' })
  reporterId: string | null;

  @Shown({ type: 'string', nullable: true })
  reporterName: string | null;

  @Shown({ type: 'string', nullable: true })
  registration: string | null;

  @Shown({ type: 'string', enum: [...REPORT_STATES] })
  state: (typeof REPORT_STATES)[number];

  @Shown({ type: 'string', nullable: true, description: 'What it was closed with' })
  finding: string | null;

  @Shown({ type: 'string', format: 'date-time', nullable: true })
  closedAt: string | null;

  @Shown({ type: 'string', format: 'uuid', nullable: true })
  closedBy: string | null;

  @Shown({ type: () => SafetyStepView, isArray: true })
  steps: SafetyStepView[];

  @Shown({ type: 'integer' })
  rowVersion: number;
}

/** What whoever reported gets. */
export class SafetyReportFiled extends SafetyReportView {
  @Shown({
    type: 'string',
    nullable: true,
    description:
      'Of a confidential report: shown this once and kept nowhere. Whoever has it reads what came of it',
  })
  receipt: string | null;
}

/** What a receipt opens. */
export class ReceiptView extends SomeOf(SafetyReportView, ['state', 'finding', 'closedAt']) {
  @Shown({ type: 'string' })
  title: string;

  @Shown({ type: () => SafetyStepView, isArray: true })
  steps: SafetyStepView[];
}

export class ReportsQuery extends PageQuery {
  @ApiPropertyOptional({ enum: REPORT_STATES })
  @Optional()
  @IsIn(REPORT_STATES)
  state?: (typeof REPORT_STATES)[number];
}

export class SafetyReportPage extends PageShape {
  @Shown({ type: () => SafetyReportView, isArray: true })
  items: SafetyReportView[];
}
