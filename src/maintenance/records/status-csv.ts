/** A status as one tidy CSV file (RFC 4180): a row for each fact, the section in the first column, units in the headings. */
import { type Cell, csvText } from '../../platform/csv/csv-text.js';
import type { StatusItem, StatusView } from './status.dto.js';

/** Headings in order. The import knows them all (import/fields.ts). */
export const COLUMNS = [
  ...['section', 'kind', 'title', 'reference', 'scope'],
  ...['calendar_months', 'months', 'days', 'interval_h', 'fixed_due_on', 'fixed_due_h', 'tolerance_h'],
  ...['recurring', 'ferry_prohibited', 'since', 'retired_on', 'equipment', 'equipment_serial'],
  ...['last_done_on', 'last_done_h', 'was_due_h', 'statement', 'signed_by'],
  ...['vor_method', 'vor_error_deg', 'vor_place', 'vor_signed_by'],
  ...['elt_battery_new_on', 'elt_battery_useful_life_ends_on', 'elt_battery_replace_on', 'elt_use_minutes'],
  ...['static_opened_on', 'state', 'next_due_on', 'next_due_h', 'left_days', 'left_h'],
  ...['basis', 'document', 'part_number', 'serial_number', 'weight_lb', 'arm_in'],
  ...['required_by_type_design', 'satisfies', 'installed_on', 'removed_on'],
  ...['shown_h', 'total_h', 'read_at', 'effective_on', 'source', 'note'],
  ...['registration', 'make_model', 'as_of', 'printed_by', 'printed_at'],
  ...['detail', 'reported_at', 'deferred_on', 'deadline_on'],
];

type Row = Record<string, Cell>;

/** The file, lines ended as RFC 4180 has it. */
export function statusCsv(status: StatusView): string {
  const { aircraft } = status;
  const rows: Row[] = [
    {
      ...{ section: 'aircraft', registration: aircraft.registration, make_model: aircraft.makeModel },
      ...{ serial_number: aircraft.serialNumber, as_of: status.on },
      ...{ printed_by: status.printedBy, printed_at: status.printedAt, note: status.caution },
    },
    ...status.cautions.map((caution) => ({ section: 'caution', note: caution })),
    ...status.times.map((time) => ({
      ...{ section: 'meter', kind: time.kind, shown_h: time.shownH, total_h: time.totalH },
      read_at: time.readAt,
    })),
    ...status.items.map((item) => itemRow('item', item)),
    ...status.directives.map((item) => itemRow('directive', item)),
    ...status.equipment.map((piece) => ({
      ...{ section: 'equipment', kind: piece.kind, title: piece.name, basis: piece.basis },
      ...{ document: piece.document, part_number: piece.partNumber, serial_number: piece.serialNumber },
      ...{ weight_lb: piece.weightLb, arm_in: piece.armIn },
      ...{ required_by_type_design: piece.requiredByTypeDesign, satisfies: piece.satisfies.join('; ') },
      ...{ installed_on: piece.installedOn, removed_on: piece.removedOn },
    })),
    ...(status.weight === null
      ? []
      : [
          {
            ...{ section: 'weight', effective_on: status.weight.effectiveOn },
            ...{ weight_lb: status.weight.emptyWeightLb, arm_in: status.weight.emptyArmIn },
            ...{ source: status.weight.source, note: status.weight.note },
          },
        ]),
    ...status.squawks.map((squawk) => ({
      ...{ section: 'squawk', title: squawk.title, detail: squawk.detail, state: squawk.state },
      ...{ reported_at: squawk.reportedAt, deferred_on: squawk.deferredOn, deadline_on: squawk.deadlineOn },
    })),
  ];
  return csvText(
    COLUMNS,
    rows.map((row) => COLUMNS.map((column) => row[column])),
  );
}

function itemRow(section: string, item: StatusItem): Row {
  const { last } = item;
  const detail = last?.detail ?? {};
  return {
    ...{ section, kind: item.kind, title: item.title, reference: item.reference, scope: item.scope },
    ...{ calendar_months: item.calendarMonths, months: item.plainMonths, days: item.days },
    ...{ interval_h: item.intervalH, fixed_due_on: item.fixedDueOn, fixed_due_h: item.fixedDueH },
    ...{ tolerance_h: item.toleranceH, recurring: item.recurring, ferry_prohibited: item.ferryProhibited },
    ...{ since: item.since, retired_on: item.retiredOn },
    ...{ equipment: item.equipment?.name, equipment_serial: item.equipment?.serialNumber },
    ...{ last_done_on: last?.doneOn, last_done_h: last?.doneH, was_due_h: last?.dueH },
    ...{ statement: last?.statement, signed_by: last?.signedBy },
    ...{ vor_method: detail.vorMethod, vor_error_deg: detail.vorErrorDeg, vor_place: detail.vorPlace },
    ...{ vor_signed_by: detail.vorSignedBy, elt_battery_new_on: detail.eltBatteryNewOn },
    ...{ elt_battery_useful_life_ends_on: detail.eltBatteryUsefulLifeEndsOn },
    ...{ elt_battery_replace_on: detail.eltBatteryReplaceOn, elt_use_minutes: detail.eltUseMinutes },
    static_opened_on: detail.staticOpenedOn,
    ...{ state: item.state, next_due_on: item.nextDueOn, next_due_h: item.nextDueH },
    ...{ left_days: item.leftDays, left_h: item.leftH },
  };
}
