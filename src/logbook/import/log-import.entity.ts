import { Column, Entity } from 'typeorm';
import {
  DateColumn,
  InstantColumn,
  IntegerColumn,
  RecordedRow,
  TextColumn,
} from '../../platform/database/columns.js';
import type { Choices } from './choices.js';

/** A file of flights taken over into a member's log. Taken back once, otherwise never changed. */
@Entity('log_imports')
export class LogImport extends RecordedRow {
  @Column({ name: 'member_id', type: 'uuid' })
  memberId: string;

  @Column({ name: 'imported_by', type: 'uuid' })
  importedBy: string;

  @TextColumn('file_sha256')
  fileSha256: string;

  @TextColumn('headings_sha256')
  headingsSha256: string;

  @Column({ name: 'choices', type: 'jsonb' })
  choices: Choices;

  @IntegerColumn('file_rows')
  fileRows: number;

  @IntegerColumn('entries')
  entries: number;

  @IntegerColumn('unreadable_rows')
  unreadableRows: number;

  @IntegerColumn('repeated_rows')
  repeatedRows: number;

  @DateColumn('first_flown_on')
  firstFlownOn: string;

  @DateColumn('last_flown_on')
  lastFlownOn: string;

  @InstantColumn('taken_back_at', { nullable: true })
  takenBackAt: string | null;

  @Column({ name: 'taken_back_by', type: 'uuid', nullable: true })
  takenBackBy: string | null;
}
