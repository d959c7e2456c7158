/** Text as rows of cells, each with its line: separated values (RFC 4180 and its relatives), or JSON as it was taken out. Pure. */
import { CsvError, parse } from 'csv-parse/sync';
import { unguarded } from '../../platform/csv/spreadsheet-cell.js';
import { titlesKnown } from './headings.js';

export const DELIMITERS = [',', ';', '\t'] as const;
export type Delimiter = (typeof DELIMITERS)[number];

/** Rows of one file, and columns. */
export const MOST_ROWS = 20_000;
export const MOST_COLUMNS = 100;
const LONGEST_ROW = 20_000;
/** Lines in which the headings are looked for: some sheets begin with titles. */
const HEADINGS_WITHIN = 20;
/** Rows looked at to find out what parts the cells. */
const LOOKED_AT = 30;

export interface TableRow {
  /** Line of the file on which the row begins, from 1; of JSON, which entry it is. */
  line: number;
  cells: string[];
}

export interface Table {
  /** Null: the file is JSON. */
  delimiter: Delimiter | null;
  headingLine: number;
  headings: string[];
  rows: TableRow[];
}

export interface FileRefused {
  refused: string;
  line?: number;
  /** What of the choices is at fault; the file where absent. */
  choice?: string;
}

/** How the file is to be cut; what is absent is found out. */
export interface TableChoices {
  delimiter?: Delimiter;
  headingLine?: number;
}

export function tableOf(text: string, choices: TableChoices): Table | FileRefused {
  if (/^\s*[[{]/.test(text)) return fromJson(text);
  const delimiter = choices.delimiter ?? delimiterOf(text);
  const all = cut(text, delimiter);
  if ('refused' in all) return all;
  const rows = all.filter(({ cells }) => cells.some((cell) => cell !== ''));
  if (rows.length === 0)
    return { refused: 'The file is empty. It needs a line of headings and a row for each flight.' };
  const at = headingsAt(rows, choices.headingLine);
  if (at === null) return { refused: `No row begins at line ${choices.headingLine}.`, choice: 'headingLine' };
  const { cells: headings, line: headingLine } = rows[at]!;
  return checked({ delimiter, headingLine, headings, rows: rows.slice(at + 1) });
}

function checked(table: Table): Table | FileRefused {
  const { headings, rows, headingLine } = table;
  if (headings.length > MOST_COLUMNS)
    return { refused: `The file has more than ${MOST_COLUMNS} columns.`, line: headingLine };
  if (rows.length === 0) return { refused: 'There is no row below the headings.', line: headingLine };
  if (rows.length > MOST_ROWS)
    return {
      refused: `The file has ${rows.length.toLocaleString('en')} rows; at most ${MOST_ROWS.toLocaleString('en')} are taken at a time. Split it.`,
    };
  return table;
}

/** The first of the early rows of which two headings are known, else the first row. */
function headingsAt(rows: readonly TableRow[], told: number | undefined): number | null {
  if (told !== undefined) {
    const at = rows.findIndex(({ line }) => line === told);
    return at < 0 ? null : at;
  }
  const found = rows.slice(0, HEADINGS_WITHIN).findIndex(({ cells }) => titlesKnown(cells) >= 2);
  return Math.max(0, found);
}

function cut(text: string, delimiter: Delimiter, first?: number): TableRow[] | FileRefused {
  try {
    const found = parse(text, {
      ...{ bom: true, delimiter, relax_column_count: true, info: true, max_record_size: LONGEST_ROW },
      ...(first === undefined ? {} : { to: first }),
    }) as unknown as { record: string[]; info: { lines: number } }[];
    let before = 0;
    return found.map(({ record, info }) => {
      // The line on which a row begins: the one after the row before it ended.
      const line = before + 1;
      before = info.lines;
      return { line, cells: record.map((cell) => unguarded(cell).trim()) };
    });
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const line = typeof error['lines'] === 'number' ? error['lines'] : undefined;
    return {
      refused: `The file stops being CSV${line === undefined ? '' : ` at line ${line}`}: a quotation mark is missing or out of place, or a row is too long.`,
      ...(line === undefined ? {} : { line }),
    };
  }
}

/** What parts the first rows into the most columns, the same number in nearly all of them. */
function delimiterOf(text: string): Delimiter {
  let best: { delimiter: Delimiter; columns: number } = { delimiter: ',', columns: 1 };
  for (const delimiter of DELIMITERS) {
    const rows = cut(text, delimiter, LOOKED_AT);
    if ('refused' in rows) continue;
    const widths = rows.map(({ cells }) => cells.length);
    const columns = usual(widths);
    const same = widths.filter((width) => width === columns).length;
    if (columns > best.columns && same >= widths.length * 0.7) best = { delimiter, columns };
  }
  return best.delimiter;
}

/** The value that is there most often. */
function usual(values: readonly number[]): number {
  const times = new Map<number, number>();
  for (const value of values) times.set(value, (times.get(value) ?? 0) + 1);
  return [...times].sort((a, b) => b[1] - a[1] || b[0] - a[0])[0]?.[0] ?? 0;
}

/** A list of flat entries, or a body with one such list in it. */
function fromJson(text: string): Table | FileRefused {
  let body: unknown;
  try {
    body = JSON.parse(text);
  } catch {
    return { refused: 'The file begins like JSON and is none.' };
  }
  const lists = Array.isArray(body) ? [body] : Object.values(body as object).filter(Array.isArray);
  const entries = lists.length === 1 ? (lists[0] as unknown[]) : [];
  if (entries.length === 0 || !entries.every(isFlat))
    return { refused: 'JSON is read where it is one list of flights, each of them a flat list of values.' };
  const headings = [...new Set(entries.flatMap((entry) => Object.keys(entry as object)))];
  const rows = entries.map((entry, index) => ({
    line: index + 1,
    cells: headings.map((heading) => cellOf((entry as Record<string, unknown>)[heading])),
  }));
  return checked({ delimiter: null, headingLine: 0, headings, rows });
}

const isFlat = (entry: unknown): boolean =>
  typeof entry === 'object' &&
  entry !== null &&
  Object.values(entry).every((value) => value === null || typeof value !== 'object');

const cellOf = (value: unknown): string =>
  value === undefined || value === null
    ? ''
    : typeof value === 'boolean'
      ? value
        ? 'yes'
        : 'no'
      : String(value).trim();
