import { Column, Entity } from 'typeorm';
import { DateColumn, FactRow, TextColumn } from '../../platform/database/columns.js';

/** A change of one aircraft's equipment that a pilot must be shown before flying it alone. */
@Entity('differences')
export class Differences extends FactRow {
  @Column({ name: 'aircraft_id', type: 'uuid' })
  aircraftId: string;

  @TextColumn('title')
  title: string;

  /** First date on which the changed equipment was in the aircraft. */
  @DateColumn('since')
  since: string;

  @TextColumn('equipment_group')
  equipmentGroup: string;

  /** First date on which it does not matter any more. */
  @DateColumn('ended_on', { nullable: true })
  endedOn: string | null;

  /** The equipment change that called for it. */
  @Column({ name: 'change_id', type: 'uuid', nullable: true })
  changeId: string | null;
}
