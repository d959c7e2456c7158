import { Column, Entity } from 'typeorm';
import { RealColumn, TextColumn } from '../../platform/database/columns.js';
import type { EnvelopeFact, LoadingFact, StationFact } from '../../rules/index.js';
import { SheetRow } from './sheet-row.js';

/** Stations, weight limits and limits of the centre of gravity. Pounds, inches aft of the datum. */
@Entity('loading_sheets')
export class LoadingSheet extends SheetRow {
  @TextColumn('fuel_kind')
  fuelKind: LoadingFact['fuelKind'];

  @RealColumn('max_takeoff_lb', { nullable: true })
  maxTakeoffLb: number | null;

  @RealColumn('max_landing_lb', { nullable: true })
  maxLandingLb: number | null;

  @RealColumn('max_zero_fuel_lb', { nullable: true })
  maxZeroFuelLb: number | null;

  @Column({ name: 'stations', type: 'jsonb' })
  stations: StationFact[];

  @Column({ name: 'envelopes', type: 'jsonb' })
  envelopes: EnvelopeFact[];
}
