import { Column, Entity } from 'typeorm';
import { DateColumn, FactRow } from '../../platform/database/columns.js';

/** A registration certificate of an aircraft. */
@Entity('registrations')
export class Registration extends FactRow {
  @Column({ name: 'aircraft_id', type: 'uuid' })
  aircraftId: string;

  @DateColumn('issued_on')
  issuedOn: string;

  /** As printed; the rules know when the law extended it. */
  @DateColumn('printed_expiry_on', { nullable: true })
  printedExpiryOn: string | null;

  /** Ended before its time: sale, export, cancellation. */
  @DateColumn('ended_on', { nullable: true })
  endedOn: string | null;
}
