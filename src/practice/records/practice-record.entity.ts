import { Column, Entity } from 'typeorm';
import {
  DateColumn,
  FlagColumn,
  IntegerColumn,
  RealColumn,
  RecordedRow,
  TextColumn,
  TextListColumn,
} from '../../platform/database/columns.js';
import type { Level, Measure, Task, Verdict } from '../tolerances/index.js';

/** Least and greatest of what was measured, in the unit of the measure's name. */
export type Spans = Partial<Record<Measure, { least: number; most: number }>>;

/** A manoeuvre practised on a day. Never edited; a correction is another record. */
@Entity('practice_records')
export class PracticeRecord extends RecordedRow {
  @Column({ name: 'member_id', type: 'uuid' })
  memberId: string;

  @DateColumn('flown_on')
  flownOn: string;

  @TextColumn('manoeuvre')
  manoeuvre: Task;

  @TextColumn('seen_by')
  seenBy: 'self' | 'instructor';

  @Column({ name: 'instructor_id', type: 'uuid', nullable: true })
  instructorId: string | null;

  @Column({ name: 'recorded_by', type: 'uuid' })
  recordedBy: string;

  @RealColumn('crosswind_kt', { nullable: true })
  crosswindKt: number | null;

  @RealColumn('gust_spread_kt', { nullable: true })
  gustSpreadKt: number | null;

  @FlagColumn('night', { nullable: true })
  night: boolean | null;

  @IntegerColumn('runway_ft', { nullable: true })
  runwayFt: number | null;

  @TextListColumn('equipment', { nullable: true })
  equipment: string[] | null;

  @Column({ name: 'measured', type: 'jsonb' })
  measured: Spans;

  @FlagColumn('to_standard', { nullable: true })
  toStandard: boolean | null;

  @TextColumn('level')
  level: Level;

  @Column({ name: 'verdict', type: 'jsonb' })
  verdict: Verdict;

  @FlagColumn('within', { nullable: true })
  within: boolean | null;

  @TextColumn('note')
  note: string;

  @Column({ name: 'log_entry_id', type: 'uuid', nullable: true })
  logEntryId: string | null;

  @TextColumn('track_sha256', { nullable: true })
  trackSha256: string | null;

  @TextColumn('track_event', { nullable: true })
  trackEvent: string | null;

  @Column({ name: 'corrects', type: 'uuid', nullable: true })
  corrects: string | null;

  @TextColumn('because', { nullable: true })
  because: string | null;

  @FlagColumn('withdraws')
  withdraws: boolean;
}
