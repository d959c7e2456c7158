/** Runs a season's plan on a thread of its own: the solver holds its thread until it is done. */
import { parentPort, workerData } from 'node:worker_threads';
import { planSeason, type Task } from './run.js';

planSeason(workerData as Task).then(
  (season) => parentPort!.postMessage({ season }),
  (error: unknown) => parentPort!.postMessage({ error: String((error as Error).message) }),
);
