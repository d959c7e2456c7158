/** Reads a track on a thread of its own: a long one takes seconds. */
import { parentPort, workerData } from 'node:worker_threads';
import { readTrackFile, type TrackTask } from './read-file.js';

parentPort!.postMessage(readTrackFile(workerData as TrackTask));
