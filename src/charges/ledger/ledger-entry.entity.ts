import { Column, Entity } from 'typeorm';
import { DateColumn, IntegerColumn, RecordedRow, TextColumn } from '../../platform/database/columns.js';
import type { ChargeLine } from '../flights/charge-lines.js';
import type { FlightFlown } from '../flights/flight-flown.js';

export const ENTRY_KINDS = ['flight', 'receipt', 'adjustment', 'reversal'] as const;

/** An entry of a member's account. Never edited: what was wrong is reversed, and entered anew. */
@Entity('ledger_entries')
export class LedgerEntry extends RecordedRow {
  @Column({ name: 'member_id', type: 'uuid' })
  memberId: string;

  @TextColumn('kind')
  kind: (typeof ENTRY_KINDS)[number];

  @DateColumn('posted_on')
  postedOn: string;

  @DateColumn('of_day')
  ofDay: string;

  @DateColumn('due_from')
  dueFrom: string;

  /** More: the member owes it. Less: it was received or taken off. */
  @IntegerColumn('amount_minor')
  amountMinor: number;

  @TextColumn('currency')
  currency: string;

  @IntegerColumn('minor_per_unit')
  minorPerUnit: number;

  @Column({ name: 'booking_id', type: 'uuid', nullable: true })
  bookingId: string | null;

  @IntegerColumn('charge_no', { nullable: true })
  chargeNo: number | null;

  @Column({ name: 'aircraft_rate_id', type: 'uuid', nullable: true })
  aircraftRateId: string | null;

  @Column({ name: 'instructor_rate_id', type: 'uuid', nullable: true })
  instructorRateId: string | null;

  @Column({ name: 'flown', type: 'jsonb', nullable: true })
  flown: FlightFlown | null;

  @Column({ name: 'lines', type: 'jsonb' })
  lines: ChargeLine[];

  @Column({ name: 'reverses', type: 'uuid', nullable: true })
  reverses: string | null;

  @TextColumn('words')
  words: string;

  @Column({ name: 'recorded_by', type: 'uuid' })
  recordedBy: string;
}
