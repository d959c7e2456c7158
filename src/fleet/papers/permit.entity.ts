import { Column, Entity } from 'typeorm';
import { DateColumn, FactRow, TextColumn } from '../../platform/database/columns.js';

/** A special flight permit (14 CFR 21.197). */
@Entity('permits')
export class Permit extends FactRow {
  @Column({ name: 'aircraft_id', type: 'uuid' })
  aircraftId: string;

  @DateColumn('valid_from')
  validFrom: string;

  @DateColumn('valid_through')
  validThrough: string;

  @TextColumn('purpose')
  purpose: string;
}
