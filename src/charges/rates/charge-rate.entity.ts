import { Column, Entity } from 'typeorm';
import { DateColumn, IntegerColumn, RecordedRow, TextColumn } from '../../platform/database/columns.js';
import type { AircraftRate } from '../flights/charge-lines.js';

/** What an hour of an aircraft or of an instructor costs, from a day on. Written once; a newer row takes over. */
@Entity('charge_rates')
export class ChargeRate extends RecordedRow {
  @Column({ name: 'aircraft_id', type: 'uuid', nullable: true })
  aircraftId: string | null;

  @Column({ name: 'instructor_id', type: 'uuid', nullable: true })
  instructorId: string | null;

  @DateColumn('valid_from')
  validFrom: string;

  @IntegerColumn('per_hour_minor')
  perHourMinor: number;

  @TextColumn('currency')
  currency: string;

  /** Of an aircraft only, as the two below. */
  @TextColumn('basis', { nullable: true })
  basis: AircraftRate['basis'] | null;

  @TextColumn('fuel', { nullable: true })
  fuel: AircraftRate['fuel'] | null;

  @IntegerColumn('fuel_per_us_gal_minor', { nullable: true })
  fuelPerUsGalMinor: number | null;

  @Column({ name: 'set_by', type: 'uuid' })
  setBy: string;
}
