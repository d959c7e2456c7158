import { Column, Entity } from 'typeorm';
import { DateColumn, FactRow, FlagColumn, RealColumn, TextColumn } from '../../platform/database/columns.js';

/** An upgrade the club wishes for. */
@Entity('upgrade_wishes')
export class UpgradeWish extends FactRow {
  @Column({ name: 'aircraft_id', type: 'uuid' })
  aircraftId: string;

  @TextColumn('title')
  title: string;

  @RealColumn('shop_days')
  shopDays: number;

  /** Hours of flying it is worth to the club. */
  @RealColumn('worth_hours')
  worthHours: number;

  @DateColumn('parts_on', { nullable: true })
  partsOn: string | null;

  /** It waits for the annual inspection; otherwise any shop visit will do. */
  @FlagColumn('with_annual')
  withAnnual: boolean;

  @DateColumn('done_on', { nullable: true })
  doneOn: string | null;
}
