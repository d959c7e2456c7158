import { Worker } from 'node:worker_threads';

/** What a thread may take; without limits it may take what it needs. */
export interface ThreadLimits {
  memoryMb: number;
  longestMs: number;
  /** What is thrown when time is up. */
  tooLate: () => Error;
}

/** Under this name a worker tells how far it is, before its answer. */
export const PROGRESS = 'bellcrank.progress';

/**
 * Runs a built worker on a thread of its own and gives its first message that is no progress.
 * @throws what it throws; when it ends without a word
 */
export function onThread<Result, Progress = never>(
  path: string,
  task: unknown,
  limits?: ThreadLimits,
  tell?: (progress: Progress) => void,
): Promise<Result> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(path, {
      workerData: task,
      ...(limits && { resourceLimits: { maxOldGenerationSizeMb: limits.memoryMb } }),
    });
    const late =
      limits &&
      setTimeout(() => {
        reject(limits.tooLate());
        void worker.terminate();
      }, limits.longestMs);
    worker.on('message', (message: unknown) => {
      const progress = progressIn(message);
      if (progress === undefined) resolve(message as Result);
      else tell?.(progress as Progress);
    });
    worker.once('error', reject);
    worker.once('exit', (code) => {
      clearTimeout(late);
      if (code !== 0) reject(new Error(`the worker ${path} ended with ${code}`));
    });
  });
}

const progressIn = (message: unknown): unknown =>
  typeof message === 'object' && message !== null && PROGRESS in message ? message[PROGRESS] : undefined;
