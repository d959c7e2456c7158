import { Column, Entity } from 'typeorm';
import { DateColumn, FactRow, TextColumn } from '../../platform/database/columns.js';

/** Something to be done about a report: what, who, by when; and what came of it. */
@Entity('safety_steps')
export class SafetyStep extends FactRow {
  @Column({ name: 'report_id', type: 'uuid' })
  reportId: string;

  @TextColumn('what')
  what: string;

  @Column({ name: 'responsible_id', type: 'uuid' })
  responsibleId: string;

  @DateColumn('due_on')
  dueOn: string;

  @DateColumn('done_on', { nullable: true })
  doneOn: string | null;

  @TextColumn('outcome', { nullable: true })
  outcome: string | null;
}
