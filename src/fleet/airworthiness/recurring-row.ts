import { FactRow, FlagColumn, IntegerColumn, TextColumn } from '../../platform/database/columns.js';
import type { ItemFact } from '../../rules/index.js';

/** What says how often something has to be done, in items, templates of items and directives. Whichever interval comes first counts. */
export abstract class RecurringRow extends FactRow {
  /** Flights it binds. */
  @TextColumn('scope')
  scope: ItemFact['scope'];

  /** To the end of the month. */
  @IntegerColumn('calendar_months', { nullable: true })
  calendarMonths: number | null;

  /** To the same day of the month. */
  @IntegerColumn('plain_months', { nullable: true })
  plainMonths: number | null;

  @IntegerColumn('days', { nullable: true })
  days: number | null;

  /** Hours of the inspection meter, in tenths. */
  @IntegerColumn('interval_tenths', { nullable: true })
  intervalTenths: number | null;

  /** False: settled by one compliance. */
  @FlagColumn('recurring')
  recurring: boolean;
}
