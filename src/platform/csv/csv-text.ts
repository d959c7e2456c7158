import { stringify } from 'csv-stringify/sync';
import { guarded } from './spreadsheet-cell.js';

export type Cell = string | number | boolean | null | undefined;

/** Rows under their headings (RFC 4180), to be opened by spreadsheets: what would read as a formula is guarded. */
export function csvText(columns: readonly string[], rows: readonly (readonly Cell[])[]): string {
  // With a byte order mark, without which spreadsheets take UTF-8 for something else.
  return stringify([columns, ...rows.map((row) => row.map(written))], {
    ...{ record_delimiter: 'windows', bom: true },
  });
}

/** Numbers are numbers, a negative one too; words are guarded. */
function written(cell: Cell): string {
  if (cell === null || cell === undefined) return '';
  if (typeof cell === 'boolean') return cell ? 'yes' : 'no';
  return typeof cell === 'number' ? String(cell) : guarded(cell);
}
