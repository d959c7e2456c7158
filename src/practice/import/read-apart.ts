import { Worker } from 'node:worker_threads';
import { BUILT, projectPath } from '../../platform/paths.js';
import { readTrackFile, type TrackFile, type TrackTask } from './read-file.js';

/** Longer than the longest track that is read takes on a slow machine. */
const LONGEST_MS = 60_000;
const MEMORY_MB = 512;

/** A track that took longer than it may. */
export class TrackTooSlow extends Error {}

let queue: Promise<unknown> = Promise.resolve();

/** Reads beside the service's own thread, one track after another; from the sources, where nothing is built, on it. */
export function readApart(task: TrackTask): Promise<TrackFile> {
  if (!BUILT) return Promise.resolve().then(() => readTrackFile(task));
  const mine = queue.then(() => onThread(task));
  queue = mine.catch(() => undefined);
  return mine;
}

function onThread(task: TrackTask): Promise<TrackFile> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(projectPath('dist', 'src', 'practice', 'import', 'worker.js'), {
      workerData: task,
      resourceLimits: { maxOldGenerationSizeMb: MEMORY_MB },
    });
    const late = setTimeout(() => {
      reject(new TrackTooSlow());
      void worker.terminate();
    }, LONGEST_MS);
    worker.once('message', resolve);
    worker.once('error', reject);
    worker.once('exit', (code) => {
      clearTimeout(late);
      if (code !== 0) reject(new Error(`the reader of tracks ended with ${code}`));
    });
  });
}
