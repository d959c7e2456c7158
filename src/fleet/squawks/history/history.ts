/** Rows of the audit log about one squawk, told as what people did. */
import type { FieldChange, SquawkEvent } from './history.dto.js';

type Row = Record<string, unknown>;

/** A row of the audit log. */
export interface Logged {
  id: string;
  at: string;
  actorId: string | null;
  actorName: string | null;
  action: string;
  tableName: string;
  before: Row | null;
  after: Row | null;
}

/** Columns that are the table's own business. */
const OWN = new Set([
  ...['club_id', 'id', 'aircraft_id', 'squawk_id', 'row_version', 'recorded_at', 'closings', 'closing'],
  ...['closed_from', 'added_by', 'sha256', 'reported_at', 'reported_by'],
]);

const BY_STATE: Record<string, string> = {
  ...{ grounding: 'grounded', deferred: 'deferred', fixed: 'fixed' },
  ...{ 'no-fault-found': 'no-fault-found', duplicate: 'duplicate', reported: 'reopened' },
};
const CLOSED = new Set(['fixed', 'no-fault-found', 'duplicate']);

export function eventOf(row: Logged): SquawkEvent {
  return {
    ...{ at: row.at, by: row.actorId, byName: row.actorName },
    what: whatOf(row),
    changes: changesOf(row.before ?? {}, row.after ?? {}),
  };
}

function whatOf({ tableName, action, before, after }: Logged): string {
  if (tableName === 'attachments') return 'photo-added';
  if (tableName === 'squawk_parts') return 'part-used';
  if (tableName === 'deferrals')
    return action === 'insert'
      ? 'deferral-edited'
      : action === 'delete'
        ? 'deferral-withdrawn'
        : 'deferral-edited';
  if (action === 'insert') return 'reported';
  if (before?.['state'] === after?.['state']) return 'edited';
  if (CLOSED.has(String(before?.['state']))) return 'reopened';
  return BY_STATE[String(after?.['state'])] ?? 'edited';
}

function changesOf(before: Row, after: Row): FieldChange[] {
  return [...new Set([...Object.keys(before), ...Object.keys(after)])]
    .filter((column) => !OWN.has(column) && text(before[column]) !== text(after[column]))
    .sort()
    .map((column) => ({
      field: column.replace(/_(\w)/g, (_all, letter: string) => letter.toUpperCase()),
      before: text(before[column]),
      after: text(after[column]),
    }));
}

const text = (value: unknown): string | null =>
  value === null || value === undefined || value === '' ? null : String(value);
