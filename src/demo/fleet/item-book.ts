import type { ItemDetail, LocalDate } from '../../rules/index.js';
import type { Meters } from '../flying/meters.js';
import { DEMO_CLUB_ID, demoId } from '../ids.js';
import type { ComplianceRow, ItemRow } from '../rows.js';
import { at, clock, type When } from '../when.js';
import type { Aircraft } from './aircraft.js';

/** Who signs. */
export const INSPECTOR = 'R. Holloway, inspection authorisation 77-Q';
export const MECHANIC = 'T. Emberly, mechanic 4-Q';
export const AVIONICS = 'Quill Mesa Avionics, repair station Q-18';

/** Writes items and compliances of one aircraft after another. */
export class ItemBook {
  readonly items: ItemRow[] = [];
  readonly compliances: ComplianceRow[] = [];
  aircraft!: Aircraft;

  constructor(
    private readonly when: When,
    readonly meters: Meters,
    private readonly recordedAt: string,
  ) {}

  add(kind: string, title: string, fields: Partial<ItemRow>): string {
    const id = demoId('item', this.aircraft.key, kind, title);
    this.items.push({
      club_id: DEMO_CLUB_ID,
      id,
      aircraft_id: this.aircraft.id,
      kind,
      title,
      reference: null,
      scope: 'all',
      calendar_months: null,
      plain_months: null,
      days: null,
      interval_tenths: null,
      fixed_due_on: null,
      fixed_due_tenths: null,
      tolerance_tenths: 0,
      recurring: true,
      ferry_prohibited: false,
      equipment_id: null,
      directive_id: null,
      since: null,
      retired_on: null,
      recorded_at: this.recordedAt,
      ...fields,
    });
    return id;
  }

  /** A compliance on a date, at the hours the meter showed that evening (or those given). */
  done(
    item: string,
    on: LocalDate,
    statement: string,
    signedBy: string,
    more: { tenths?: number | null; detail?: ItemDetail } = {},
  ): void {
    this.compliances.push({
      club_id: DEMO_CLUB_ID,
      id: demoId('compliance', item, this.when.ago(on)),
      item_id: item,
      done_on: on,
      done_tenths: more.tenths === undefined ? this.meters.tachOn(this.aircraft, on) : more.tenths,
      due_tenths: null,
      detail: more.detail ?? null,
      statement,
      signed_by: signedBy,
      recorded_at: at(on, clock(23, 40)),
    });
  }
}

/** Compliances after every hour-based inspection of the 18 months, and the one before them. */
export function hourly(book: ItemBook, item: string, statement: string): void {
  for (const { date, tachTenths } of book.meters.inspections(book.aircraft)) {
    book.done(item, date, statement, MECHANIC, { tenths: tachTenths });
  }
  book.done(item, book.meters.firstDay, statement, MECHANIC, { tenths: book.aircraft.tachTenths });
}
