import { Column, Entity } from 'typeorm';
import {
  DateColumn,
  FlagColumn,
  IntegerColumn,
  RealColumn,
  RecordedRow,
  TextColumn,
} from '../../platform/database/columns.js';

/** Limits as set by the member, or by an instructor for the member. Never edited; the row written last counts. */
@Entity('personal_limits')
export class PersonalLimits extends RecordedRow {
  @Column({ name: 'member_id', type: 'uuid' })
  memberId: string;

  @Column({ name: 'set_by', type: 'uuid' })
  setById: string;

  @DateColumn('valid_from')
  validFrom: string;

  @DateColumn('binds_through', { nullable: true })
  bindsThrough: string | null;

  @IntegerColumn('wind_kt', { nullable: true })
  windKt: number | null;

  @IntegerColumn('crosswind_kt', { nullable: true })
  crosswindKt: number | null;

  @IntegerColumn('gust_spread_kt', { nullable: true })
  gustSpreadKt: number | null;

  @IntegerColumn('ceiling_day_ft_agl', { nullable: true })
  ceilingDayFtAgl: number | null;

  @IntegerColumn('ceiling_night_ft_agl', { nullable: true })
  ceilingNightFtAgl: number | null;

  @RealColumn('visibility_day_sm', { nullable: true })
  visibilityDaySm: number | null;

  @RealColumn('visibility_night_sm', { nullable: true })
  visibilityNightSm: number | null;

  @IntegerColumn('runway_ft', { nullable: true })
  runwayFt: number | null;

  @FlagColumn('night', { nullable: true })
  night: boolean | null;

  @TextColumn('note')
  note: string;
}
