/** Reads a file of flights whole: what it holds, how it was read, and what would be written. Pure; runs on a thread of its own. */
import type { LocalDate } from '../../rules/calendar/dates.js';
import type { Instant } from '../../rules/calendar/instants.js';
import { sha256 } from '../../platform/sha256.js';
import { AircraftBook, kindKey, type KnownAircraft } from './aircraft.js';
import type { Choices, Question } from './choices.js';
import { type Column, detect, plate } from './detect.js';
import { type Duplicate, duplicatesOf, type LoggedFlight } from './duplicates.js';
import { type Encoding, textOf } from './file-text.js';
import { type Draft, readRow } from './read-row.js';
import { type Fault, isSum } from './row-values.js';
import { type FileRefused, type Table, tableOf } from './table.js';
import { sumOf, type Sums } from './sums.js';

/** What the club and the log know, as far as a file is read by it. */
export interface Known {
  zone: string;
  today: LocalDate;
  aircraft: KnownAircraft[];
  airfields: { code: string; zone: string }[];
  log: LoggedFlight[];
  before: Sums;
}

/** What the thread is given. */
export interface LogFileTask {
  bytes: Uint8Array;
  /** Null: as it was the last time for the same headings, or found out. */
  choices: Choices | null;
  /** The member's last choices by the digest of a file's headings. */
  remembered: Record<string, Choices>;
  known: Known;
  now: Instant;
}

export interface BadRow {
  line: number;
  faults: Fault[];
}

/** A kind of aircraft that the club does not know. */
export interface Kind {
  words: string;
  rows: number;
  told: boolean;
}

export interface LogFileReading {
  encoding: Encoding;
  delimiter: Table['delimiter'];
  headingLine: number;
  headingsSha256: string;
  columns: Column[];
  /** Every choice as it was used. */
  choices: Choices;
  remembered: boolean;
  questions: Question[];
  rows: number;
  /** Lines with the sheet's own sums. */
  sums: number[];
  bad: BadRow[];
  kinds: Kind[];
  duplicates: Duplicate[];
  /** What would be written, duplicates left out as chosen. */
  drafts: Draft[];
  /** Of the flights that would be written: how many have no times, how many figures were rounded, their hours as the file has them. */
  untimed: number;
  rounded: number;
  hoursInFile: number;
  totals: { before: Sums; added: Sums; after: Sums };
}

export type LogFile = ({ ok: false } & FileRefused) | { ok: true; reading: LogFileReading };

/** How far it is. */
export interface Progress {
  row: number;
  of: number;
}

const TOLD_EVERY = 500;

export function readLogFile(task: LogFileTask, tell: (progress: Progress) => void): LogFile {
  const { known } = task;
  const given = task.choices ?? {};
  const text = textOf(task.bytes, given.encoding);
  if ('refused' in text) return { ok: false, ...text };
  const table = tableOf(text.text, given);
  if ('refused' in table) return { ok: false, ...table };
  const headingsSha256 = sha256(JSON.stringify(table.headings));
  const last = task.choices === null ? task.remembered[headingsSha256] : undefined;
  const asked = last ?? given;
  const found = detect(table, asked, {
    registrations: new Set(
      known.aircraft.flatMap(({ registration }) => (registration ? [plate(registration)] : [])),
    ),
    airfields: new Set(known.airfields.map(({ code }) => code.toUpperCase())),
  });
  if ('refused' in found) return { ok: false, ...found };
  const choices: Choices = {
    ...asked,
    ...{ encoding: text.encoding, headingLine: table.headingLine },
    ...(table.delimiter === null ? {} : { delimiter: table.delimiter }),
    columns: found.columns.map(({ index, field, form }) => ({ index, field, form })),
    ...(found.dates ? { dates: found.dates } : {}),
    ...(found.decimal ? { decimal: found.decimal } : {}),
    ...(found.clock ? { clock: found.clock } : {}),
    zone: asked.zone ?? known.zone,
  };
  tell({ row: 0, of: table.rows.length });
  const questions = [...found.questions, ...missing(found.columns)];
  const head = {
    ...{
      encoding: text.encoding,
      delimiter: table.delimiter,
      headingLine: table.headingLine,
      headingsSha256,
    },
    ...{
      columns: found.columns,
      choices,
      remembered: last !== undefined,
      questions,
      rows: table.rows.length,
    },
  };
  // While something is open every row would be refused for it: that is asked first.
  const read = questions.length > 0 ? NOTHING : readRows(table, found.columns, choices, task, tell);
  const duplicates = duplicatesOf(read.drafts, known.log);
  const skipped = new Set(
    duplicates.filter(({ kind }) => kind === 'same' || choices.takeAlike !== true).map(({ line }) => line),
  );
  const drafts = read.drafts.filter(({ line }) => !skipped.has(line));
  const kept = (value: ReadonlyMap<number, number>): number =>
    drafts.reduce((sum, { line }) => sum + (value.get(line) ?? 0), 0);
  const added = sumOf(drafts);
  return {
    ok: true,
    reading: {
      ...head,
      ...{ sums: read.sums, bad: read.bad, kinds: read.kinds, duplicates, drafts },
      untimed: drafts.filter(({ timesKnown }) => !timesKnown).length,
      ...{ rounded: kept(read.roundedAt), hoursInFile: Math.round(kept(read.hoursAt) * 100) / 100 },
      totals: { before: known.before, added, after: plus(known.before, added) },
    },
  };
}

/** A file without a date or an aircraft holds no flights that could be read. */
function missing(columns: readonly Column[]): Question[] {
  const has = new Set(columns.map(({ field }) => field));
  const ask = (says: string): Question[] => [{ choice: 'columns', index: null, says }];
  return [
    ...(has.has('flownOn') || has.has('departedAt') ? [] : ask('Say which column holds the date.')),
    ...(has.has('registration') || has.has('makeModel') || has.has('aircraftWords')
      ? []
      : ask('Say which column tells the aircraft.')),
    ...(has.has('totalH') || (has.has('departedAt') && has.has('arrivedAt'))
      ? []
      : ask('Say which column holds the total hours, or both times.')),
  ];
}

interface RowsRead {
  drafts: Draft[];
  bad: BadRow[];
  sums: number[];
  kinds: Kind[];
  /** By line. */
  hoursAt: Map<number, number>;
  roundedAt: Map<number, number>;
}

const NOTHING: RowsRead = {
  ...{ drafts: [], bad: [], sums: [], kinds: [] },
  ...{ hoursAt: new Map(), roundedAt: new Map() },
};

function readRows(
  { rows }: Table,
  columns: readonly Column[],
  choices: Choices,
  { known, now }: LogFileTask,
  tell: (progress: Progress) => void,
): RowsRead {
  const told = choices.kinds ?? [];
  const kinds = new Map<string, Kind>(
    told.map(({ words }) => [kindKey(words), { words, rows: 0, told: true }]),
  );
  const read: RowsRead = {
    ...NOTHING,
    drafts: [],
    bad: [],
    sums: [],
    hoursAt: new Map(),
    roundedAt: new Map(),
  };
  const of = {
    ...{ columns, choices, now, today: known.today },
    has: new Set(columns.flatMap(({ field }) => (field === null ? [] : [field]))),
    aircraft: new AircraftBook(known.aircraft, told),
    ...{ dates: choices.dates ?? null, decimal: choices.decimal ?? null, clock: choices.clock ?? null },
    ...{
      zone: choices.zone!,
      zones: new Map(known.airfields.map(({ code, zone }) => [code.toUpperCase(), zone])),
    },
  };
  for (const [index, row] of rows.entries()) {
    if (index > 0 && index % TOLD_EVERY === 0) tell({ row: index, of: rows.length });
    if (isSum(row, columns)) {
      read.sums.push(row.line);
      continue;
    }
    const one = readRow(row, of);
    if ('draft' in one) {
      read.drafts.push(one.draft);
      read.hoursAt.set(row.line, one.hours);
      if (one.rounded) read.roundedAt.set(row.line, 1);
      count(kinds, one.kind);
    } else {
      read.bad.push({ line: row.line, faults: one.faults });
      count(kinds, one.kind);
    }
  }
  tell({ row: rows.length, of: rows.length });
  read.kinds = [...kinds.values()].sort((a, b) => b.rows - a.rows);
  return read;
}

function count(kinds: Map<string, Kind>, words: string | undefined): void {
  if (words === undefined) return;
  const key = kindKey(words);
  const kind = kinds.get(key) ?? { words, rows: 0, told: false };
  kind.rows += 1;
  kinds.set(key, kind);
}

const plus = (one: Sums, other: Sums): Sums =>
  Object.fromEntries(
    Object.entries(one).map(([name, value]) => [name, value + other[name as keyof Sums]]),
  ) as unknown as Sums;
