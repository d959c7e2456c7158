import { Column, Entity } from 'typeorm';
import { DateColumn, FactRow, InstantColumn, TextColumn } from '../../platform/database/columns.js';

export const WORK_STATES = ['planned', 'in-work', 'signed', 'cancelled'] as const;
export type WorkState = (typeof WORK_STATES)[number];

/** A visit to the shop: what is done, when the aircraft is down for it, and who approved it for return to service. */
@Entity('work_orders')
export class WorkOrder extends FactRow {
  @Column({ name: 'aircraft_id', type: 'uuid' })
  aircraftId: string;

  @TextColumn('title')
  title: string;

  /** Where it is done. */
  @TextColumn('shop')
  shop: string;

  @TextColumn('state')
  state: WorkState;

  /** The time it takes up in the calendar; null: none is set. */
  @Column({ name: 'booking_id', type: 'uuid', nullable: true })
  bookingId: string | null;

  @InstantColumn('begun_at', { nullable: true })
  begunAt: string | null;

  @TextColumn('cancelled_because', { nullable: true })
  cancelledBecause: string | null;

  /** When the approval was entered. */
  @InstantColumn('signed_at', { nullable: true })
  signedAt: string | null;

  /** The day it bears. */
  @DateColumn('signed_on', { nullable: true })
  signedOn: string | null;

  @TextColumn('statement', { nullable: true })
  statement: string | null;

  @Column({ name: 'signer_id', type: 'uuid', nullable: true })
  signerId: string | null;

  /** Name and certificate as they were then. */
  @TextColumn('signed_by', { nullable: true })
  signedBy: string | null;

  @Column({ name: 'equipment_change_id', type: 'uuid', nullable: true })
  equipmentChangeId: string | null;

  @Column({ name: 'weighing_id', type: 'uuid', nullable: true })
  weighingId: string | null;

  /** What makes a check flight necessary (14 CFR 91.407(b)); null: nothing. */
  @TextColumn('check_flight_because', { nullable: true })
  checkFlightBecause: string | null;

  @InstantColumn('check_flown_at', { nullable: true })
  checkFlownAt: string | null;

  @Column({ name: 'check_flown_by', type: 'uuid', nullable: true })
  checkFlownBy: string | null;

  /** The entry in the aircraft's records. */
  @TextColumn('check_entry', { nullable: true })
  checkEntry: string | null;

  @Column({ name: 'made_by', type: 'uuid' })
  madeBy: string;
}
