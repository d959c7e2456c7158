import { Column, Entity } from 'typeorm';
import {
  DateColumn,
  FactRow,
  InstantColumn,
  TextColumn,
  TextListColumn,
} from '../../platform/database/columns.js';

/** Ids of what a change made or ended, so that taking it back finds them. */
export interface ChangeEffects {
  removed: string[];
  installed: string[];
  endedItems: string[];
  begunItems: string[];
  weighingId: string | null;
  differenceId: string | null;
  readingIds: string[];
}

/** One change of an aircraft's equipment: what went, what came, and everything that followed from it. */
@Entity('equipment_changes')
export class EquipmentChange extends FactRow {
  @Column({ name: 'aircraft_id', type: 'uuid' })
  aircraftId: string;

  @TextColumn('title')
  title: string;

  @DateColumn('done_on')
  doneOn: string;

  @TextColumn('statement')
  statement: string;

  /** Name and certificate, kept as entered: the tool grants no authority. */
  @TextColumn('signed_by')
  signedBy: string;

  @TextListColumn('documents')
  documents: string[];

  @Column({ name: 'effects', type: 'jsonb' })
  effects: ChangeEffects;

  @Column({ name: 'made_by', type: 'uuid' })
  madeBy: string;

  @InstantColumn('taken_back_at', { nullable: true })
  takenBackAt: string | null;

  @Column({ name: 'taken_back_by', type: 'uuid', nullable: true })
  takenBackBy: string | null;

  @TextColumn('taken_back_reason', { nullable: true })
  takenBackReason: string | null;
}
