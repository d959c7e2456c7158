import { setImmediate as othersFirst } from 'node:timers/promises';

/** Longest stretch of work before other requests get their turn. */
const STRETCH_MS = 20;

/** Keeps long work from holding up the rest of the service. */
export class Pace {
  private since = performance.now();

  /** Lets others have their turn, if it has been long enough. */
  async breathe(): Promise<void> {
    if (performance.now() - this.since < STRETCH_MS) return;
    await othersFirst();
    this.since = performance.now();
  }
}
