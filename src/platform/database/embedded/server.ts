/** Runs the PostgreSQL server of a cluster on a loopback port. */
import { spawn, type ChildProcess } from 'node:child_process';
import { closeSync, fchownSync, existsSync, openSync, readFileSync, renameSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { StartupError } from '../../startup-error.js';
import type { Account } from './account.js';
import { readPostmasterFile } from './leftovers.js';
import { nativeProgram, type Natives } from './natives.js';
import { freePort, isPortFree } from './ports.js';

/** What to run and how. */
export interface ServerOptions {
  natives: Natives;
  account: Account;
  home: string;
  cluster: string;
  /** Port of 127.0.0.1; absent picks a free one. */
  port?: number;
  /** Give up safety against power loss for speed. Tests only. */
  fast: boolean;
  /** Leave it running when this process ends. */
  outlive: boolean;
}

/** A server that accepts connections. */
export interface RunningServer {
  port: number;
  pid: number;
}

const LOG_LIMIT_BYTES = 10_000_000;
const START_PATIENCE_MS = 60_000;

const BASE_SETTINGS = {
  listen_addresses: '127.0.0.1',
  unix_socket_directories: '',
  timezone: 'UTC',
  log_timezone: 'UTC',
  password_encryption: 'scram-sha-256',
  max_connections: '100',
  logging_collector: 'off',
  lc_messages: 'C',
};
const FAST_SETTINGS = {
  fsync: 'off',
  synchronous_commit: 'off',
  full_page_writes: 'off',
  max_connections: '200',
};

/**
 * Starts the server and waits until it accepts connections.
 * @throws StartupError when the wished port is taken, or with the end of the server's log when it does not come up.
 */
export async function startServer(options: ServerOptions): Promise<RunningServer> {
  if (options.port !== undefined && !(await isPortFree(options.port))) throw portTaken(options.port);
  for (let attempt = 1; ; attempt += 1) {
    const port = options.port ?? (await freePort());
    const outcome = await launch(options, port);
    if ('pid' in outcome) return outcome;
    const collided = /could not bind|could not create any TCP\/IP sockets/.test(outcome.log);
    if (collided && options.port !== undefined) throw portTaken(options.port);
    // Between finding a free port and binding it, another program may take it; and old workers may take a moment to go.
    const passing = collided || /pre-existing shared memory block/.test(outcome.log);
    if (!passing || attempt >= 5) {
      throw new StartupError(
        `PostgreSQL did not start. The end of ${join(options.home, 'postgres.log')}:\n${outcome.log}`,
      );
    }
    await pause(attempt * 200);
  }
}

function portTaken(port: number): StartupError {
  return new StartupError(
    `the database port ${port} (BELLCRANK_PG_PORT) is taken by another program. Stop that program, choose another port, ` +
      'or unset BELLCRANK_PG_PORT to let Bellcrank find a free one.',
  );
}

async function launch(options: ServerOptions, port: number): Promise<RunningServer | { log: string }> {
  const logFile = join(options.home, 'postgres.log');
  const log = openLog(logFile, options.account);
  const logStart = statSync(logFile).size;
  const settings: Record<string, string> = {
    ...BASE_SETTINGS,
    ...(options.fast ? FAST_SETTINGS : {}),
    port: String(port),
  };
  const args = Object.entries(settings).flatMap(([name, value]) => ['-c', `${name}=${value}`]);
  // Its own session: Ctrl-C in a terminal must reach the service first, which then stops the database in order.
  // A bare environment: no secret of ours shows up in the environment of PostgreSQL.
  const child = spawn(nativeProgram(options.natives, 'postgres'), ['-D', options.cluster, ...args], {
    ...options.account,
    cwd: '/',
    env: { LC_ALL: 'C', TZ: 'UTC', PGTZ: 'UTC' },
    detached: true,
    stdio: ['ignore', log, log],
  });
  closeSync(log);
  const ended = new Promise<void>((done) => {
    child.once('error', () => done());
    child.once('exit', () => done());
  });
  child.unref();
  const up = await Promise.race([ended.then(() => false), becomesReady(child, options.cluster)]);
  if (up) {
    if (!options.outlive) stopWithProcess(child);
    return { port, pid: child.pid! };
  }
  if (child.exitCode === null && child.pid !== undefined) child.kill('SIGQUIT');
  return {
    log: readFileSync(logFile).subarray(logStart).toString('utf8').trim().split('\n').slice(-12).join('\n'),
  };
}

async function becomesReady(child: ChildProcess, cluster: string): Promise<boolean> {
  for (let waited = 0; waited < START_PATIENCE_MS && child.exitCode === null; waited += 15) {
    const file = readPostmasterFile(cluster);
    if (file?.pid === child.pid && file?.ready) return true;
    await pause(15);
  }
  return false;
}

/** A last resort for an exit that nobody awaited: ask for a fast shutdown on the way out. */
function stopWithProcess(child: ChildProcess): void {
  const stop = () => child.exitCode === null && child.signalCode === null && child.kill('SIGINT');
  process.once('exit', stop);
  child.once('exit', () => process.removeListener('exit', stop));
}

function openLog(file: string, account: Account): number {
  if (existsSync(file) && statSync(file).size > LOG_LIMIT_BYTES) renameSync(file, `${file}.1`);
  const handle = openSync(file, 'a', 0o600);
  if (account.uid !== undefined) fchownSync(handle, account.uid, account.gid!);
  return handle;
}
