/** Cells of a file read as what their column holds. Pure; a cell that can be read two ways is refused, never guessed. */
import { Temporal } from 'temporal-polyfill';
import { startOfDay, toInstant } from '../../../rules/index.js';
import type { Matched } from './headings.js';

/** How dates with strokes or points are written. */
export const DATE_ORDERS = ['year-first', 'day-first', 'month-first'] as const;
export type DateOrder = (typeof DATE_ORDERS)[number];

export type Value = string | number | boolean | string[];
export type Read = { value: Value } | { refused: string };

export interface Reading {
  dates: DateOrder;
  zone: string;
}

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

/** The value of a cell that is not empty. */
export function readCell(cell: string, { field, factor }: Matched, of: Reading): Read {
  switch (field.is) {
    case 'text':
      return { value: cell };
    case 'day':
      return readDay(cell, of.dates);
    case 'moment':
      return readMoment(cell, of);
    case 'number':
      return scaled(readNumber(cell), factor);
    case 'whole':
      return whole(readNumber(cell));
    case 'flag':
      return readFlag(cell);
    case 'word':
      return readWord(cell, field);
    case 'words':
      return readWords(cell, field);
  }
}

/** '2026-03-09', '9 Mar 2026', 'Mar 9, 2026', and with strokes or points in the order that was told. */
export function readDay(cell: string, order: DateOrder): Read {
  const iso = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/.exec(cell);
  if (iso) return dayOf(cell, iso[1]!, iso[2]!, iso[3]!);
  const named = /^(\d{1,2})[ .-]+([a-z]{3,9})\.?[ ,.-]+(\d{4})$/i.exec(cell);
  if (named) return dayOf(cell, named[3]!, monthNamed(named[2]!), named[1]!);
  const american = /^([a-z]{3,9})\.? +(\d{1,2}),? +(\d{4})$/i.exec(cell);
  if (american) return dayOf(cell, american[3]!, monthNamed(american[1]!), american[2]!);
  const figures = /^(\d{1,2})[/.-](\d{1,2})[/.-](\d{4})$/.exec(cell);
  if (!figures)
    return { refused: `“${cell}” is no date that can be read. Write it as 2026-03-09 or 9 Mar 2026.` };
  if (order === 'year-first')
    return {
      refused: `“${cell}” can be read two ways. Say whether the day or the month comes first, or write it as 2026-03-09.`,
    };
  const [first, second] = [figures[1]!, figures[2]!];
  return order === 'day-first'
    ? dayOf(cell, figures[3]!, second, first)
    : dayOf(cell, figures[3]!, first, second);
}

const monthNamed = (word: string): string => String(MONTHS.indexOf(word.slice(0, 3).toLowerCase()) + 1);

function dayOf(cell: string, year: string, month: string, day: string): Read {
  try {
    const date = Temporal.PlainDate.from(
      { year: Number(year), month: Number(month), day: Number(day) },
      { overflow: 'reject' },
    );
    return { value: date.toString() };
  } catch {
    return { refused: `“${cell}” is no date of the calendar.` };
  }
}

/** An instant (RFC 3339), or a day alone, which is taken as its beginning in the club's zone: no reading of it can be earlier. */
function readMoment(cell: string, { dates, zone }: Reading): Read {
  if (/^\d{4}-\d{2}-\d{2}[T ]\d/.test(cell)) {
    try {
      const instant = Temporal.Instant.from(cell.replace(' ', 'T'));
      return { value: instant.round({ smallestUnit: 'second', roundingMode: 'floor' }).toString() };
    } catch {
      return {
        refused: `“${cell}” is no time that can be read. Write it as 2026-03-09T14:00:00Z, or the day alone.`,
      };
    }
  }
  const day = readDay(cell, dates);
  return 'refused' in day ? day : { value: toInstant(startOfDay(day.value as string, zone)) };
}

/** '1040.5', '1,040.5'; a comma for the decimal point is refused, since 1,040 may be either. */
function readNumber(cell: string): Read {
  const text = cell.replace(/[\s\u00a0]+/g, ' ');
  if (/^[-−]?\d{1,9}(\.\d{1,6})?$/.test(text)) return { value: Number(text.replace('−', '-')) };
  if (/^-?\d{1,3}(,\d{3})+(\.\d{1,6})?$/.test(text)) return { value: Number(text.replaceAll(',', '')) };
  return { refused: `“${cell}” is no number that can be read. Write it as 1040.5, the unit in the heading.` };
}

function scaled(read: Read, factor: number): Read {
  if ('refused' in read || factor === 1) return read;
  // To a hundredth, as weights and arms are kept (common practice, no source).
  return { value: Math.round((read.value as number) * factor * 100) / 100 };
}

function whole(read: Read): Read {
  if ('refused' in read || Number.isInteger(read.value)) return read;
  return { refused: `${String(read.value)} is no whole number.` };
}

const YES = ['yes', 'y', 'true', '1', 'x'];
const NO = ['no', 'n', 'false', '0'];

function readFlag(cell: string): Read {
  const word = cell.toLowerCase();
  if (YES.includes(word)) return { value: true };
  if (NO.includes(word)) return { value: false };
  return { refused: `“${cell}” is neither yes nor no.` };
}

/** 'VOR receiver', 'vor_receiver' → 'vor-receiver'. */
const hyphened = (cell: string): string =>
  cell
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '');

function readWord(cell: string, { words = [], spelt = {} }: Matched['field']): Read {
  const word = hyphened(cell);
  if (words.includes(word)) return { value: word };
  if (Object.hasOwn(spelt, word)) return { value: spelt[word]! };
  const short = words.length > 12 ? `${words.slice(0, 12).join(', ')} and others` : words.join(', ');
  return { refused: `“${cell}” is none of the words known here: ${short}.` };
}

function readWords(cell: string, field: Matched['field']): Read {
  const values: string[] = [];
  for (const part of cell.split(/[;,|]/)) {
    if (part.trim() === '') continue;
    const read = readWord(part.trim(), field);
    if ('refused' in read) return read;
    if (!values.includes(read.value as string)) values.push(read.value as string);
  }
  return { value: values };
}
