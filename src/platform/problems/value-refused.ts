import { ProblemException } from './problem-exception.js';

/** 422: a value that can be read and cannot be. `field` is named as the client wrote it. */
export const valueRefused = (field: string, detail: string): ProblemException =>
  new ProblemException('value-refused', { field, detail });
