import { onThread } from '../../platform/on-thread.js';
import { BUILT, projectPath } from '../../platform/paths.js';
import { type LogFile, type LogFileTask, type Progress, readLogFile } from './read-log.js';

/** A file that took longer than it may. */
export class LogFileTooSlow extends Error {}

/** Far more than 20,000 rows take on a busy machine. */
const LIMITS = { longestMs: 180_000, memoryMb: 512, tooLate: () => new LogFileTooSlow() };

let queue: Promise<unknown> = Promise.resolve();

/** Reads beside the service's own thread, one file after another; from the sources, where nothing is built, on it. */
export function readApart(task: LogFileTask, tell: (progress: Progress) => void): Promise<LogFile> {
  if (!BUILT) return Promise.resolve().then(() => readLogFile(task, tell));
  const worker = projectPath('dist', 'src', 'logbook', 'import', 'worker.js');
  const mine = queue.then(() => onThread<LogFile, Progress>(worker, task, LIMITS, tell));
  queue = mine.catch(() => undefined);
  return mine;
}
