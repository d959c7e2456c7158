/** A CSV file as rows that say something, each with its line and what cannot be read of it. Pure. */
import { CsvError, parse } from 'csv-parse/sync';
import { unguarded } from '../../../platform/csv/spreadsheet-cell.js';
import { readCell, type Reading, type Value } from './cells.js';
import { FIELDS, SECTIONS, type Section } from './fields.js';
import { matchHeading, type Match } from './headings.js';
import { unreadable } from './import.problems.js';

/** Rows of one file. */
export const MOST_ROWS = 500;
const MOST_COLUMNS = 100;
const LONGEST_ROW = 20_000;

/** A row of a section that can be taken over. */
export interface FileRow {
  line: number;
  section: Section;
  values: Record<string, Value>;
  /** What cannot be read of it; then it is refused. */
  faults: string[];
}

/** A row that belongs to no such section. */
export interface OtherRow {
  line: number;
  section: string;
  values: Record<string, string>;
}

/** A column, and what it was taken for. */
export interface FileColumn {
  heading: string;
  /** Names of fields, each once; empty: not taken over. */
  fields: string[];
  unit: string | null;
  /** Something to look at before trusting it. */
  note: string | null;
}

export interface ImportedFile {
  rows: FileRow[];
  others: OtherRow[];
  columns: FileColumn[];
}

/** How the file is to be read; `section` for a file without a column that says it. */
export interface FileOf extends Reading {
  csv: string;
  section?: Section;
}

interface RawRow {
  record: string[];
  line: number;
}

/** Other words for sections, with blanks and case taken off. */
const SECTION_WORDS: Record<string, Section> = {
  ...Object.fromEntries(SECTIONS.map((section) => [section, section])),
  ...{
    meters: 'meter',
    times: 'meter',
    time: 'meter',
    items: 'item',
    inspections: 'item',
    inspection: 'item',
  },
  ...{ directives: 'directive', ad: 'directive', ads: 'directive', weighing: 'weight', weights: 'weight' },
};

/** @throws ProblemException 422 naming the line, when the file as a whole cannot be read. */
export function readFile(of: FileOf): ImportedFile {
  const [head, ...body] = rawRows(of.csv);
  if (!head) throw unreadable('The file is empty. Its first line holds the headings.');
  const headings = head.record.map((cell) => cell.trim());
  if (headings.length > MOST_COLUMNS)
    throw unreadable(`The file has more than ${MOST_COLUMNS} columns.`, head.line);
  const sectionAt = headings.findIndex((heading) => /^section$/i.test(heading));
  if (sectionAt < 0 && of.section === undefined)
    throw unreadable(
      'No column is headed “section”, so say of what section its rows are: meter, equipment, weight, item or directive.',
      head.line,
      'section',
    );
  const rows = body.filter(({ record }) => record.some((cell) => cell.trim() !== ''));
  if (rows.length === 0) throw unreadable('The file has headings and no row below them.');
  if (rows.length > MOST_ROWS)
    throw unreadable(`The file has ${rows.length} rows; take over at most ${MOST_ROWS} at a time.`);
  const sections = sectionAt < 0 ? [of.section!] : SECTIONS;
  const matches = headings.map((heading, index) =>
    index === sectionAt ? {} : matchHeading(heading, sections),
  );
  if (matches.every((match) => Object.keys(match).length === 0))
    throw unreadable(
      'None of the headings is known. The first line of the file holds the headings.',
      head.line,
    );
  const file: ImportedFile = { rows: [], others: [], columns: [] };
  for (const row of rows) {
    const word = sectionAt < 0 ? of.section! : (row.record[sectionAt] ?? '').trim().toLowerCase();
    const section = Object.hasOwn(SECTION_WORDS, word) ? SECTION_WORDS[word]! : null;
    if (section === null) file.others.push(otherRow(row, headings, word));
    else file.rows.push(fileRow(row, section, matches, headings, of));
  }
  const used = SECTIONS.filter((section) => file.rows.some((row) => row.section === section));
  file.columns = headings.map((heading, index) =>
    columnOf(heading, matches[index]!, used, index === sectionAt),
  );
  return file;
}

function rawRows(csv: string): RawRow[] {
  try {
    const found = parse(csv, {
      ...{ bom: true, delimiter: delimiterOf(csv), relax_column_count: true, info: true },
      ...{ max_record_size: LONGEST_ROW, skip_empty_lines: false },
    }) as unknown as { record: string[]; info: { lines: number } }[];
    // The line on which a row begins: the one after the row before it ended.
    return found.map(({ record }, index) => ({
      record,
      line: index === 0 ? 1 : found[index - 1]!.info.lines + 1,
    }));
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const line = typeof error['lines'] === 'number' ? error['lines'] : undefined;
    throw unreadable(
      `The file stops being CSV${line === undefined ? '' : ` at line ${line}`}: a quotation mark is missing, or a row is too long.`,
      line,
    );
  }
}

/** Comma, semicolon or tab: the one that parts the headings most often. */
function delimiterOf(csv: string): string {
  const first = csv.slice(0, csv.search(/[\r\n]|$/)).replace(/"[^"]*"/g, '');
  const count = (delimiter: string): number => first.split(delimiter).length;
  return [',', ';', '\t'].reduce((best, next) => (count(next) > count(best) ? next : best));
}

/** Nothing, or a dash for nothing. */
const EMPTY = /^\s*(?:[-–—]|n\/?a)?\s*$/i;

function fileRow(
  { record, line }: RawRow,
  section: Section,
  matches: readonly Match[],
  headings: readonly string[],
  of: Reading,
): FileRow {
  const row: FileRow = { line, section, values: {}, faults: [] };
  for (const [index, raw] of record.entries()) {
    if (index >= headings.length) {
      if (raw.trim() !== '') row.faults.push('It has more cells than there are headings.');
      continue;
    }
    const found = matches[index]![section];
    if (!found || EMPTY.test(raw)) continue;
    const { name } = found.field;
    const read = readCell(unguarded(raw).trim(), found, of);
    if ('refused' in read) {
      if (!found.field.computed) row.faults.push(`${headings[index]}: ${read.refused}`);
    } else if (name in row.values) row.faults.push(`Two columns give its ${name}.`);
    else row.values[name] = read.value;
  }
  return row;
}

function otherRow({ record, line }: RawRow, headings: readonly string[], word: string): OtherRow {
  const values = Object.fromEntries(
    headings.map((heading, index) => [heading.toLowerCase(), unguarded(record[index] ?? '').trim()]),
  );
  return { line, section: word, values };
}

function columnOf(heading: string, match: Match, used: readonly Section[], isSection: boolean): FileColumn {
  if (isSection) return { heading, fields: ['section'], unit: null, note: null };
  const found = used.flatMap((section) => match[section] ?? []);
  const taken = found.filter(({ field }) => !field.computed);
  const first = taken[0];
  return {
    heading,
    fields: [...new Set(taken.map(({ field }) => field.name))],
    unit: first?.unit ?? null,
    note: noteOf(found, first),
  };
}

function noteOf(found: Match[Section][], first: Match[Section]): string | null {
  if (found.length === 0) return null;
  if (!first) return 'Worked out here from the records, and compared with the file.';
  if (first.assumed) return `The heading names no unit: taken as ${first.unit}.`;
  const kept = first.field.dimension && first.factor !== 1 ? FIELD_KEPT[first.field.dimension] : undefined;
  if (kept) return `Converted from ${first.unit} to ${kept}.`;
  return first.field.name === 'months' ? 'To the same day of the month, not to its end.' : null;
}

const FIELD_KEPT: Partial<Record<string, string>> = { weight: 'lb', arm: 'in' };

/** Names of the fields of a section, for whoever writes a file. */
export const fieldNames = (section: Section): string[] => FIELDS[section].map(({ name }) => name);
