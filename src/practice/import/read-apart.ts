import { onThread } from '../../platform/on-thread.js';
import { BUILT, projectPath } from '../../platform/paths.js';
import { readTrackFile, type TrackFile, type TrackTask } from './read-file.js';

/** A track that took longer than it may. */
export class TrackTooSlow extends Error {}

/** More time than the longest track that is read takes on a slow machine. */
const LIMITS = { longestMs: 60_000, memoryMb: 512, tooLate: () => new TrackTooSlow() };

let queue: Promise<unknown> = Promise.resolve();

/** Reads beside the service's own thread, one track after another; from the sources, where nothing is built, on it. */
export function readApart(task: TrackTask): Promise<TrackFile> {
  if (!BUILT) return Promise.resolve().then(() => readTrackFile(task));
  const worker = projectPath('dist', 'src', 'practice', 'import', 'worker.js');
  const mine = queue.then(() => onThread<TrackFile>(worker, task, LIMITS));
  queue = mine.catch(() => undefined);
  return mine;
}
