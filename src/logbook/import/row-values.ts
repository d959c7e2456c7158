/** The cells of a row as values, each read as its column is. Pure. */
import type { LocalDate } from '../../rules/calendar/dates.js';
import {
  EMPTY,
  type Read,
  readCount,
  readDay,
  readFlag,
  readHours,
  readText,
  readWhen,
  type When,
} from './cells.js';
import type { DateOrder, DecimalSign } from './choices.js';
import type { Column } from './detect.js';
import { FIELDS, type ImportField } from './fields.js';
import type { TableRow } from './table.js';
import { CATEGORY_WORDS, CLASS_WORDS, DEVICE_WORDS, readWord, ROLE_WORDS } from './words.js';

/** Why a row is not taken over. */
export interface Fault {
  /** Heading of the column at fault; null: the row as a whole. */
  column: string | null;
  /** What the cell holds, cut short. */
  cell: string | null;
  because: string;
}

export type Value = string | number | boolean | When;
export type Values = Partial<Record<ImportField, Value>>;

/** How cells are read. */
export interface Reading {
  dates: DateOrder | null;
  decimal: DecimalSign | null;
  today: LocalDate;
}

const LONGEST_CELL = 60;
/** A sheet's own sums, which are no flight (common practice, no source). */
const SUMS = /^(?:(?:sub|page |grand )?totals?|sum|carried forward|brought forward|summe|balance)\b/i;

/** Whether a row without a date says that it is a sum. */
export const isSum = ({ cells }: TableRow, columns: readonly Column[]): boolean => {
  const date = columns.find(({ field }) => field === 'flownOn');
  const dated = date !== undefined && /\d/.test(cells[date.index] ?? '');
  return !dated && cells.some((cell) => SUMS.test(cell));
};

export function valuesOf(
  { cells }: TableRow,
  columns: readonly Column[],
  of: Reading,
): { values: Values; faults: Fault[] } {
  const values: Values = {};
  const faults: Fault[] = [];
  for (const column of columns) {
    const cell = cells[column.index] ?? '';
    if (column.field === null || EMPTY.test(cell)) continue;
    const read = readCell(cell, column, of);
    if ('refused' in read)
      faults.push({ column: column.heading, cell: cell.slice(0, LONGEST_CELL), because: read.refused });
    else values[column.field] = read.value;
  }
  if (cells.slice(columns.length).some((cell) => cell !== ''))
    faults.push({ column: null, cell: null, because: 'It has more cells than there are headings.' });
  return { values, faults };
}

function readCell(cell: string, { field, form }: Column, of: Reading): Read<Value> {
  const { is, most = 40 } = FIELDS[field!];
  switch (is) {
    case 'day':
      return readDay(cell, of.dates, of.today);
    case 'when':
      return readWhen(cell);
    case 'hours':
      return readHours(cell, form ?? 'decimal', of.decimal);
    case 'count':
      return readCount(cell);
    case 'flag':
      return readFlag(cell);
    case 'text':
      return readText(cell, most);
    case 'role':
      return readWord(cell, ROLE_WORDS);
    case 'device':
      return readWord(cell, DEVICE_WORDS);
    case 'category':
      return readWord(cell, CATEGORY_WORDS);
    case 'class':
      return readWord(cell, CLASS_WORDS);
  }
}
