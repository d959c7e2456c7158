import { DayField, NoteField, Shown, TextField, WholeField } from '../../platform/http/fields.js';
import { ChargeLineView } from '../flights/charges.dto.js';
import { ENTRY_KINDS, type LedgerEntry } from './ledger-entry.entity.js';

const MOST = 100_000_000;

/** Money that came in. How it came is the club's own affair: no card, no bank, no number of either. */
export class NewReceipt {
  @WholeField({ min: 1, max: MOST, description: 'In the smallest unit of the currency (cents)' })
  amountMinor: number;

  @DayField({ description: 'The day it came in; today or earlier' })
  receivedOn: string;

  @NoteField({
    max: 500,
    optional: true,
    description: 'Such as the number of a receipt; the member reads it',
  })
  words?: string;
}

/** Something put on an account or taken off it. */
export class NewAdjustment {
  @WholeField({
    ...{ min: -MOST, max: MOST },
    description: 'In the smallest unit of the currency; more: the member owes it, less: it is taken off',
  })
  amountMinor: number;

  @TextField({ max: 500, description: 'Why, in five characters or more; the member reads it' })
  reason: string;
}

/** Why an entry is reversed. */
export class ReverseEntry {
  @TextField({ max: 500, description: 'In five characters or more; the member reads it' })
  reason: string;
}

/** An entry of an account. */
export class EntryView {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string', format: 'uuid' })
  memberId: string;

  @Shown({ type: 'string', enum: [...ENTRY_KINDS] })
  kind: LedgerEntry['kind'];

  @Shown({ type: 'string', format: 'date', description: 'The day it was entered' })
  postedOn: string;

  @Shown({ type: 'string', format: 'date', description: 'The day of what it is about' })
  ofDay: string;

  @Shown({ type: 'integer', description: 'More: the member owes it. Less: it was received or taken off' })
  amountMinor: number;

  @Shown({ type: 'string', example: 'USD' })
  currency: string;

  @Shown({ type: 'integer', example: 100 })
  minorPerUnit: number;

  @Shown({ type: 'string' })
  words: string;

  @Shown({ type: 'string', format: 'uuid', nullable: true, description: 'The flight it charges' })
  bookingId: string | null;

  @Shown({ type: 'integer', nullable: true, description: 'The how many-th charge of that flight' })
  chargeNo: number | null;

  @Shown({ type: () => ChargeLineView, isArray: true, description: 'What the amount is the sum of' })
  lines: ChargeLineView[];

  @Shown({ type: 'string', format: 'uuid', nullable: true, description: 'The entry it takes off' })
  reverses: string | null;

  @Shown({ type: 'string', format: 'uuid' })
  recordedBy: string;

  @Shown({ type: 'string', format: 'date-time' })
  recordedAt: string;
}
