/** One service per data folder: a lock file that names its holder and that a successor may take from a dead one. */
import { randomBytes } from 'node:crypto';
import {
  closeSync,
  linkSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { StartupError } from '../../startup-error.js';
import { isAlive, processWorld, startMark } from './process-table.js';

/** A held lock. */
export interface ServiceLock {
  /** Gives the lock back. Calling it twice does no harm. */
  release(): void;
}

interface Holder {
  pid: number;
  mark: string;
  world: string;
}

const HEARTBEAT_MS = 10_000;
/** A holder in another container is taken for dead after this long without a heartbeat. */
const SILENCE_MS = 45_000;

/**
 * Takes the lock of a data folder.
 * @throws StartupError naming the process id of a living holder.
 */
export async function takeServiceLock(home: string): Promise<ServiceLock> {
  const file = join(home, 'service.lock');
  const mine: Holder = { pid: process.pid, mark: startMark(process.pid), world: processWorld() };
  const token = `${process.pid}.${randomBytes(6).toString('hex')}`;
  const text = JSON.stringify({ ...mine, token });
  const draft = `${file}.${token}`;
  writeFileSync(draft, text, { mode: 0o600 });
  try {
    for (let attempt = 0; attempt < 20; attempt += 1) {
      if (tryLink(draft, file)) {
        // Two successors of one dead holder can step on each other; whoever finds the other's name a moment later yields.
        await pause(attempt === 0 ? 0 : 120);
        if (readText(file) === text) return held(file, text);
      }
      const found = readText(file);
      if (found === null) continue;
      refuseIfLiving(found, file, draft, home);
      moveAside(file, found);
    }
  } finally {
    rmSync(draft, { force: true });
  }
  throw new StartupError(
    `could not take ${file}: another process keeps taking it. Wait a moment and start again.`,
  );
}

function refuseIfLiving(text: string, file: string, draft: string, home: string): void {
  const holder = parse(text);
  if (holder === null) return; // half-written or foreign content protects nobody
  const sameWorld = holder.world === processWorld();
  const living = sameWorld
    ? isAlive(holder.pid) && startMark(holder.pid) === holder.mark
    : // The draft was written just now by the same file system, so its time serves as "now".
      statSync(draft).mtimeMs - (statSync(file, { throwIfNoEntry: false })?.mtimeMs ?? 0) < SILENCE_MS;
  if (!living) return;
  const where = sameWorld
    ? `process ${holder.pid}`
    : `process ${holder.pid} on ${holder.world.split(' ')[0]}`;
  throw new StartupError(
    `the data folder ${home} is in use by ${where}. Use that one, stop it first` +
      `${sameWorld ? ` (kill ${holder.pid})` : ''}, or give this one its own BELLCRANK_DATA_DIR.`,
  );
}

function moveAside(file: string, expected: string): void {
  const aside = `${file}.stale.${randomBytes(6).toString('hex')}`;
  try {
    renameSync(file, aside);
  } catch {
    return; // somebody else moved it
  }
  if (readText(aside) !== expected) tryLink(aside, file); // took a newcomer's lock by mistake: put it back
  rmSync(aside, { force: true });
}

function held(file: string, text: string): ServiceLock {
  const beat = setInterval(() => {
    if (readText(file) === text) touch(file, text);
  }, HEARTBEAT_MS);
  beat.unref();
  return {
    release() {
      clearInterval(beat);
      if (readText(file) === text) rmSync(file, { force: true });
    },
  };
}

/** Writes the same bytes again, which renews the file's time by the file system's own clock. */
function touch(file: string, text: string): void {
  const handle = openSync(file, 'r+');
  try {
    writeSync(handle, text, 0);
  } finally {
    closeSync(handle);
  }
}

function tryLink(from: string, to: string): boolean {
  try {
    linkSync(from, to);
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
    throw error;
  }
}

function readText(file: string): string | null {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return null;
  }
}

function parse(text: string): Holder | null {
  try {
    const value = JSON.parse(text) as Holder;
    return Number.isInteger(value.pid) ? value : null;
  } catch {
    return null;
  }
}
