import { LogImport } from './import/log-import.entity.js';
import { LogEntry } from './log-entry.entity.js';

/** Entities of this folder, for the data source. */
export const LOGBOOK_ENTITIES = [LogEntry, LogImport];
