import { StreamableFile } from '@nestjs/common';
import { stringify } from 'csv-stringify/sync';
import { guarded } from '../maintenance/records/spreadsheet-cell.js';

type Cell = string | number | boolean | null;

/** Rows under their headings as a file (RFC 4180) that opens as UTF-8 in spreadsheets. */
export function csvFile(name: string, columns: string[], rows: Cell[][]): StreamableFile {
  const cells = rows.map((row) =>
    row.map((cell) => (typeof cell === 'string' ? guarded(cell) : written(cell))),
  );
  const bytes = Buffer.from(stringify([columns, ...cells], { record_delimiter: 'windows', bom: true }));
  return new StreamableFile(bytes, {
    ...{ type: 'text/csv; charset=utf-8', length: bytes.length },
    disposition: `attachment; filename="${name}.csv"`,
  });
}

const written = (cell: number | boolean | null): string =>
  cell === null ? '' : typeof cell === 'boolean' ? (cell ? 'yes' : 'no') : String(cell);

export const CSV_CONTENT = { 'text/csv': { schema: { type: 'string', format: 'binary' } } } as const;
