import { StreamableFile } from '@nestjs/common';
import { type Cell, csvText } from '../platform/csv/csv-text.js';

/** Rows under their headings as a file. */
export function csvFile(name: string, columns: string[], rows: Cell[][]): StreamableFile {
  const bytes = Buffer.from(csvText(columns, rows));
  return new StreamableFile(bytes, {
    ...{ type: 'text/csv; charset=utf-8', length: bytes.length },
    disposition: `attachment; filename="${name}.csv"`,
  });
}

export const CSV_CONTENT = { 'text/csv': { schema: { type: 'string', format: 'binary' } } } as const;
