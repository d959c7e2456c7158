/** What each column of a file is and how it is written, found out from all its rows. Pure; what stays open is asked, not guessed. */
import { readWhen, writtenDate, EMPTY } from './cells.js';
import type { Choices, DateOrder, DecimalSign, FileClock, Question } from './choices.js';
import { FIELDS, type HoursForm, type ImportField } from './fields.js';
import { clockSaid, fieldOf, saysMinutes } from './headings.js';
import type { FileRefused, Table } from './table.js';

/** A column, and what it is read as. */
export interface Column {
  index: number;
  heading: string;
  /** The first few of its cells. */
  samples: string[];
  field: ImportField | null;
  /** Of hours. */
  form: HoursForm | null;
  /** Something to know about how it was read. */
  note: string | null;
}

export interface Detected {
  columns: Column[];
  dates: DateOrder | null;
  decimal: DecimalSign | null;
  clock: FileClock | null;
  questions: Question[];
}

/** What tells a column by its contents. */
export interface Familiar {
  registrations: ReadonlySet<string>;
  airfields: ReadonlySet<string>;
}

const SAMPLES = 3;
const LONGEST_SAMPLE = 60;
/** Share of the cells that must look alike for a column to be taken by its contents. */
const MOSTLY = 0.8;

export function detect(table: Table, choices: Choices, familiar: Familiar): Detected | FileRefused {
  const cellsOf = cellsByColumn(table);
  const fields = choices.columns ? chosenFields(table, choices) : guessedFields(table, cellsOf, familiar);
  if ('refused' in fields) return fields;
  const columns = table.headings.map((heading, index): Column => {
    const field = fields.get(index) ?? null;
    const cells = cellsOf[index]!;
    const samples = cells.slice(0, SAMPLES).map((cell) => cell.slice(0, LONGEST_SAMPLE));
    return { index, heading, samples, field, form: null, note: null };
  });
  const questions: Question[] = [];
  for (const column of columns)
    if (column.field !== null && FIELDS[column.field].is === 'hours')
      hoursFormOf(column, cellsOf[column.index]!, choices, questions);
  const of = (is: string) => columns.filter(({ field }) => field !== null && FIELDS[field].is === is);
  return {
    ...{ columns, questions },
    dates: datesOf(of('day'), of('when'), cellsOf, choices, questions),
    decimal: decimalOf(of('hours'), cellsOf, choices, questions),
    clock: clockOf(of('when'), cellsOf, choices, questions),
  };
}

/** The cells of each column that say something. */
function cellsByColumn({ headings, rows }: Table): string[][] {
  const cells = headings.map((): string[] => []);
  for (const row of rows)
    for (const [index, cell] of row.cells.entries())
      if (index < cells.length && !EMPTY.test(cell)) cells[index]!.push(cell);
  return cells;
}

function chosenFields(
  { headings }: Table,
  { columns = [] }: Choices,
): Map<number, ImportField> | FileRefused {
  const fields = new Map<number, ImportField>();
  for (const { index, field } of columns) {
    if (index >= headings.length)
      return { refused: `The file has no column ${index + 1}.`, choice: 'columns' };
    if (field === null) continue;
    if ([...fields.values()].includes(field))
      return {
        refused: `Two columns are taken for ${FIELDS[field].title}. Choose one of them.`,
        choice: 'columns',
      };
    fields.set(index, field);
  }
  return fields;
}

/** By the headings; what no heading tells, by what the cells hold. Each field once. */
function guessedFields(
  { headings }: Table,
  cellsOf: readonly string[][],
  familiar: Familiar,
): Map<number, ImportField> {
  const fields = new Map<number, ImportField>();
  const taken = new Set<ImportField>();
  const take = (index: number, field: ImportField): void => {
    fields.set(index, field);
    taken.add(field);
  };
  for (const [index, heading] of headings.entries()) {
    const found = fieldOf(heading);
    if (found === null) continue;
    const field = byContents(found, cellsOf[index]!);
    if (!taken.has(field)) take(index, field);
  }
  const mostly = (index: number, holds: (cell: string) => boolean): boolean => {
    const cells = cellsOf[index]!;
    return cells.length > 0 && cells.filter(holds).length >= cells.length * MOSTLY;
  };
  const looks: [ImportField, (cell: string) => boolean][] = [
    ['flownOn', (cell) => writtenDate(cell) !== null],
    ['registration', (cell) => familiar.registrations.has(plate(cell))],
    ['fromAirfield', (cell) => familiar.airfields.has(cell.toUpperCase())],
    ['toAirfield', (cell) => familiar.airfields.has(cell.toUpperCase())],
  ];
  for (const [field, holds] of looks) {
    if (taken.has(field)) continue;
    const index = headings.findIndex((_heading, at) => !fields.has(at) && mostly(at, holds));
    if (index >= 0) take(index, field);
  }
  return fields;
}

/** Some headings stand for a place or a time: then the cells tell. */
function byContents(field: ImportField, cells: readonly string[]): ImportField {
  const times = cells.filter((cell) => 'value' in readWhen(cell)).length;
  const mostlyTimes = cells.length > 0 && times >= cells.length * MOSTLY;
  if (field === 'fromAirfield' && mostlyTimes) return 'departedAt';
  if (field === 'toAirfield' && mostlyTimes) return 'arrivedAt';
  return field;
}

/** A registration without what sets its letters apart. */
export const plate = (registration: string): string =>
  registration.toUpperCase().replace(/[^\p{L}\p{N}]/gu, '');

function hoursFormOf(
  column: Column,
  cells: readonly string[],
  choices: Choices,
  questions: Question[],
): void {
  const told = choices.columns?.find(({ index }) => index === column.index)?.form;
  if (told) {
    column.form = told;
    return;
  }
  const clocks = cells.filter((cell) => /^\d{1,5}[:+h]\d{2}(?::00)?$/i.test(cell)).length;
  if (clocks > 0) {
    const bare = cells.some((cell) => /^\d+[.,]\d+$/.test(cell));
    column.form = bare ? 'either' : 'clock';
    if (bare)
      column.note = 'Some cells are in hours and minutes, some in decimal hours: each is read as it looks.';
    return;
  }
  if (saysMinutes(column.heading) && cells.every((cell) => /^\d+$/.test(cell))) {
    column.form = 'minutes';
    return;
  }
  column.form = 'decimal';
  const pairs = cells
    .map((cell) => /^\d{1,4}[.,](\d{2})$/.exec(cell)?.[1])
    .filter((pair) => pair !== undefined);
  const whole = cells.filter((cell) => /^\d+$/.test(cell)).length;
  // 1.30 may be an hour and thirty minutes where no cell has more than 59 behind its sign.
  if (pairs.length === 0 || pairs.length + whole < cells.length) return;
  if (pairs.some((pair) => Number(pair) > 59) || pairs.every((pair) => pair === '00')) return;
  questions.push({
    ...{ choice: 'columns', index: column.index },
    says: `“${column.heading}” holds figures such as ${cells.find((cell) => !/^\d+$/.test(cell) && !/00$/.test(cell))}: say whether that is decimal hours or hours and minutes.`,
  });
}

/** The order that the figures of all dates bear, and no other. */
function datesOf(
  days: readonly Column[],
  whens: readonly Column[],
  cellsOf: readonly string[][],
  choices: Choices,
  questions: Question[],
): DateOrder | null {
  if (choices.dates) return choices.dates;
  const cells = [
    ...days.flatMap(({ index }) => cellsOf[index]!),
    ...whens.flatMap(({ index }) => cellsOf[index]!.map((cell) => cell.replace(/[T ]+\d{1,2}:\d{2}.*$/, ''))),
  ];
  const figures = cells.map(writtenDate).filter((written) => written?.kind === 'figures');
  if (figures.length === 0) return cells.some((cell) => writtenDate(cell) !== null) ? 'year-first' : null;
  const sample = cells.find((cell) => writtenDate(cell)?.kind === 'figures')!.slice(0, 20);
  const ask = (says: string): null => {
    questions.push({ choice: 'dates', index: days[0]?.index ?? whens[0]!.index, says });
    return null;
  };
  if (figures.some(({ shortYear }) => shortYear))
    return ask(`Dates such as ${sample} have years of two figures: say in which order they are written.`);
  const dayFirst = figures.filter(({ first, second }) => first > 12 && second <= 12).length;
  const monthFirst = figures.filter(({ first, second }) => second > 12 && first <= 12).length;
  if (dayFirst > 0 && monthFirst > 0)
    return ask(
      `Of the dates, ${dayFirst} can only have the day first and ${monthFirst} only the month: say which is meant, and mend the others.`,
    );
  if (dayFirst > 0) return 'day-first';
  if (monthFirst > 0) return 'month-first';
  // Where both figures are equal everywhere, both orders give the same dates.
  if (figures.every(({ first, second }) => first === second)) return 'day-first';
  return ask(
    `Dates such as ${sample} can be read two ways, and no row tells: say whether the day or the month comes first.`,
  );
}

function decimalOf(
  columns: readonly Column[],
  cellsOf: readonly string[][],
  choices: Choices,
  questions: Question[],
): DecimalSign | null {
  if (choices.decimal) return choices.decimal;
  let [points, commas] = [0, 0];
  let open: { index: number; cell: string } | null = null;
  for (const { index } of columns)
    for (const cell of cellsOf[index]!) {
      const signs = [...cell.matchAll(/[.,]/g)].map(([sign]) => sign);
      // What is no number says nothing of how numbers are written.
      const grouped = /^\d{1,3}(?:([.,])\d{3})(?:\1\d{3})*$/.test(cell);
      if (signs.length === 0 || !/^[\d.,]+$/.test(cell) || (!grouped && new Set(signs).size < signs.length))
        continue;
      const last = signs.at(-1)!;
      // A sign that comes once with three figures behind it may part thousands.
      if (signs.every((sign) => sign === last) && (signs.length > 1 || /[.,]\d{3}$/.test(cell))) {
        // More than one of a sign parts thousands, so the other begins the decimals.
        if (signs.length === 1) open ??= { index, cell };
        else if (last === '.') commas += 1;
        else points += 1;
      } else if (last === '.') points += 1;
      else commas += 1;
    }
  if (points > 0 && commas === 0) return 'point';
  if (commas > 0 && points === 0) return 'comma';
  if (points === 0 && open === null) return 'point';
  const says =
    points > 0
      ? `Some hours have a point before the decimals (${points} cells), some a comma (${commas}): say which is meant.`
      : `Hours such as ${open!.cell.slice(0, 20)} can be read two ways: say whether the point or the comma begins the decimals.`;
  questions.push({ choice: 'decimal', index: open?.index ?? columns[0]!.index, says });
  return null;
}

/** By the headings, or by the cells themselves; else it is asked. */
function clockOf(
  whens: readonly Column[],
  cellsOf: readonly string[][],
  choices: Choices,
  questions: Question[],
): FileClock | null {
  if (choices.clock || whens.length === 0) return choices.clock ?? null;
  const loose = whens.some(({ index }) =>
    cellsOf[index]!.some((cell) => {
      const read = readWhen(cell);
      return 'value' in read && 'clock' in read.value && !read.value.utc;
    }),
  );
  const bare = whens.some(({ index }) =>
    cellsOf[index]!.some((cell) => {
      const read = readWhen(cell);
      return 'value' in read && 'clock' in read.value && read.value.date === null;
    }),
  );
  const said = [...new Set(whens.map(({ heading }) => clockSaid(heading)))];
  const utc = !loose || (said.length === 1 && said[0] === 'utc');
  if (said.length === 1 && said[0] === 'zone') return 'zone';
  // Whose day the date column names is one more thing to know where times are in UTC.
  if (utc && !bare) return 'utc';
  questions.push({
    ...{ choice: 'clock', index: whens[0]!.index },
    says: utc
      ? 'The times are in UTC: say whether the dates are, too, or those of the place.'
      : `Say by whose clock times such as ${cellsOf[whens[0]!.index]![0]?.slice(0, 25)} are: UTC or a zone.`,
  });
  return null;
}
