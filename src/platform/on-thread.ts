import { Worker } from 'node:worker_threads';

/** What a thread may take; without limits it may take what it needs. */
export interface ThreadLimits {
  memoryMb: number;
  longestMs: number;
  /** What is thrown when time is up. */
  tooLate: () => Error;
}

/** Runs a built worker on a thread of its own and gives its first message. @throws what it throws; when it ends without a word */
export function onThread<Result>(path: string, task: unknown, limits?: ThreadLimits): Promise<Result> {
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
    worker.once('message', resolve);
    worker.once('error', reject);
    worker.once('exit', (code) => {
      clearTimeout(late);
      if (code !== 0) reject(new Error(`the worker ${path} ended with ${code}`));
    });
  });
}
