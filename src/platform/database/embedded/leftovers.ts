/** What a service that died without stopping its database leaves behind, and how to get out of it safely. */
import { readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { StartupError } from '../../startup-error.js';
import { commandLine, isAlive, processesIn } from './process-table.js';

/** The parts of PostgreSQL's postmaster.pid that matter here. */
export interface PostmasterFile {
  pid: number;
  port: number;
  /** True once the server accepts connections. */
  ready: boolean;
}

/** Reads `<cluster>/postmaster.pid`; null when there is none or it is not complete yet. */
export function readPostmasterFile(cluster: string): PostmasterFile | null {
  try {
    const lines = readFileSync(join(cluster, 'postmaster.pid'), 'utf8').split('\n');
    const pid = Number(lines[0]);
    return Number.isInteger(pid) && pid > 0
      ? { pid, port: Number(lines[3]), ready: lines[7]?.trim() === 'ready' }
      : null;
  } catch {
    return null;
  }
}

/** Is this process the PostgreSQL server of this cluster, and not another program that was given its id? */
export function isServerOf(pid: number, cluster: string): boolean {
  return isAlive(pid) && /\bpostgres/.test(commandLine(pid)) && commandLine(pid).includes(` -D ${cluster} `);
}

/**
 * Stops an orphaned server of a cluster and removes a stale pid file. Call it only while holding the service lock:
 * then nobody living owns that server.
 * @returns what was done, for the log; null when nothing was left over.
 */
export async function clearLeftovers(cluster: string): Promise<string | null> {
  const file = readPostmasterFile(cluster);
  if (file === null) return null;
  if (isServerOf(file.pid, cluster)) {
    await stopServer(file.pid, cluster);
    return `Stopped PostgreSQL process ${file.pid}, left running by a service that ended abruptly.`;
  }
  // PostgreSQL itself handles a dead id, but refuses to start when the id now belongs to somebody else. Before the file
  // goes, no old worker process may still hold the data.
  if (!(await goneWithin(10_000, () => processesIn(cluster).length === 0))) {
    throw new StartupError(
      `old PostgreSQL processes still use ${cluster}: ${processesIn(cluster).join(', ')}. Stop them and start again.`,
    );
  }
  rmSync(join(cluster, 'postmaster.pid'), { force: true });
  return `Removed the pid file of a PostgreSQL process (${file.pid}) that no longer runs; recovering from its log.`;
}

/**
 * Stops a server: first a fast shutdown (sessions are cut, data is written out), after 30 s an immediate one (the next
 * start recovers from the log). It is never killed outright.
 * @throws StartupError when it does not stop.
 */
export async function stopServer(pid: number, cluster: string): Promise<void> {
  for (const [signal, patienceMs] of [
    ['SIGINT', 30_000],
    ['SIGQUIT', 10_000],
  ] as const) {
    try {
      process.kill(pid, signal);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'ESRCH') throw error;
    }
    if (await goneWithin(patienceMs, () => !isServerOf(pid, cluster))) return;
  }
  throw new StartupError(`PostgreSQL process ${pid} does not stop. Stop it by hand and start again.`);
}

async function goneWithin(milliseconds: number, gone: () => boolean): Promise<boolean> {
  for (let waited = 0; waited < milliseconds; waited += 20) {
    if (gone()) return true;
    await pause(20);
  }
  return gone();
}
