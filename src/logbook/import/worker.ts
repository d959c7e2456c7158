/** Reads a file of flights on a thread of its own: a long one takes seconds. */
import { parentPort, workerData } from 'node:worker_threads';
import { PROGRESS } from '../../platform/on-thread.js';
import { type LogFileTask, readLogFile } from './read-log.js';

const file = readLogFile(workerData as LogFileTask, (progress) =>
  parentPort!.postMessage({ [PROGRESS]: progress }),
);
parentPort!.postMessage(file);
