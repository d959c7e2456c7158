import type { EntityManager } from 'typeorm';
import { type Cell, csvText } from '../platform/csv/csv-text.js';
import { LOG_COLUMNS, type LogField } from './columns.js';
import type { LogEntryView } from './log.dto.js';
import { LogEntry } from './log-entry.entity.js';
import type { Owner } from './log-list.js';
import { viewOf } from './log-rows.js';

/** An entry as a file has it: by the columns of a log file, none left out. */
export type FileEntry = Record<LogField, Cell>;

/** Every entry that counts, oldest first. */
export async function fileEntries(em: EntityManager, of: Owner): Promise<FileEntry[]> {
  const rows = await em
    .createQueryBuilder(LogEntry, 'entry')
    .where('entry.clubId = :clubId AND entry.memberId = :memberId AND entry.voidedAt IS NULL', of)
    .orderBy('entry.departedAt')
    .addOrderBy('entry.id')
    .getMany();
  const [aircraft, models] = [
    await namesOf(em, 'SELECT id, registration AS name FROM aircraft WHERE club_id = $1', of.clubId),
    await namesOf(em, 'SELECT id, make_model AS name FROM aircraft_models WHERE club_id = $1', of.clubId),
  ];
  return rows.map((row) => {
    const view = viewOf(row) as LogEntryView & Partial<FileEntry>;
    const known: Partial<FileEntry> = {
      registration: row.aircraftId === null ? null : aircraft.get(row.aircraftId),
      makeModel: row.modelId === null ? null : models.get(row.modelId),
      // Times that only stand for a day are nobody's.
      ...(row.timesKnown ? {} : { departedAt: null, arrivedAt: null }),
    };
    return Object.fromEntries(
      LOG_COLUMNS.map(({ field }) => [field, field in known ? known[field] : (view[field] as Cell)]),
    ) as FileEntry;
  });
}

async function namesOf(em: EntityManager, sql: string, clubId: string): Promise<Map<string, string>> {
  const rows = await em.query<{ id: string; name: string }[]>(sql, [clubId]);
  return new Map(rows.map(({ id, name }) => [id, name]));
}

/** As a table; what would read as a formula in a spreadsheet stands behind an apostrophe. */
export const logCsv = (entries: readonly FileEntry[]): string =>
  csvText(
    LOG_COLUMNS.map(({ heading }) => heading),
    entries.map((entry) => LOG_COLUMNS.map(({ field }) => entry[field])),
  );

/** As data: fields by name, hours in decimal hours, instants in UTC. */
export const logJson = (entries: readonly FileEntry[]): string =>
  `${JSON.stringify({ schema: 'bellcrank.log/1', entries }, null, 1)}\n`;
