import { Shown } from '../../../platform/http/fields.js';
import { PageShape } from '../../../platform/http/pages.js';

export const EVENTS = [
  ...['reported', 'edited', 'grounded', 'deferred', 'deferral-edited', 'deferral-withdrawn', 'fixed'],
  ...['no-fault-found', 'duplicate', 'reopened', 'part-used', 'photo-added'],
] as const;
export type SquawkEventKind = (typeof EVENTS)[number] | string;

/** A field that was changed. */
export class FieldChange {
  @Shown({ type: 'string' })
  field: string;

  @Shown({ description: 'Null where there was nothing', nullable: true, type: 'string' })
  before: string | null;

  @Shown({ nullable: true, type: 'string' })
  after: string | null;
}

/** Something that was done to a squawk. */
export class SquawkEvent {
  @Shown({ type: 'string', format: 'date-time' })
  at: string;

  @Shown({ type: 'string', format: 'uuid', nullable: true, description: 'Member' })
  by: string | null;

  @Shown({ type: 'string', nullable: true })
  byName: string | null;

  @Shown({ type: 'string', enum: [...EVENTS] })
  what: SquawkEventKind;

  @Shown({ type: () => FieldChange, isArray: true })
  changes: FieldChange[];
}

/** What was done to a squawk, oldest first. */
export class SquawkHistory extends PageShape {
  @Shown({ type: () => SquawkEvent, isArray: true })
  items: SquawkEvent[];
}
