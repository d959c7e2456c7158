import type { StreamableFile } from '@nestjs/common';
import { type Cell, csvText } from '../platform/csv/csv-text.js';
import { download, fileContent } from '../platform/http/download.js';

/** Rows under their headings as a file. */
export const csvFile = (name: string, columns: string[], rows: Cell[][]): StreamableFile =>
  download(csvText(columns, rows), 'text/csv', `${name}.csv`);

export const CSV_CONTENT = fileContent('text/csv');
