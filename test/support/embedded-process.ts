/** Embedded databases started by separate processes, as a service would, so that they can be killed. */
import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import type { CompiledCopy } from './compiled-copy.js';

/** What a started process reports. */
export interface Report {
  port: number;
  pid: number;
  home: string;
  version: string;
  url: string;
  notices: string[];
}

/** A process that holds an embedded database until told to stop. */
export interface Holder {
  child: ChildProcess;
  report: Report;
  /** Asks for an orderly stop and waits for the end; returns the exit code. */
  stop(): Promise<number | null>;
  /** kill -9, leaving PostgreSQL behind. */
  kill(): Promise<void>;
}

/** A start that failed. */
export interface Refusal {
  code: number | null;
  message: string;
}

/** Options of `startEmbedded` that can be passed to another process, and the account to run as. */
export interface HolderOptions {
  dataDir: string;
  port?: number;
  nativePackage?: string;
  reachableBase?: string;
  as?: { uid: number; gid: number };
  umask?: number;
}

const SOURCE = `
  import { startEmbedded } from './dist/src/platform/database/embedded/index.js';
  import { describeStartFailure } from './dist/src/platform/startup-error.js';
  import { stopOnSignal } from './dist/src/platform/signals.js';
  const notices = [];
  const options = JSON.parse(process.argv[2]);
  if (options.umask !== undefined) process.umask(options.umask);
  try {
    const db = await startEmbedded({ ...options, notice: (line) => notices.push(line) });
    stopOnSignal(db);
    setInterval(() => undefined, 60000);
    console.log(JSON.stringify({ port: db.port, pid: db.pid, home: db.home, version: db.version, url: db.superuserUrl(), notices }));
  } catch (error) {
    console.error(describeStartFailure(error));
    process.exit(1);
  }`;

/** Starts one; resolves when it is up or has failed. */
export async function hold(copy: CompiledCopy, options: HolderOptions): Promise<Holder | Refusal> {
  const { as, ...rest } = options;
  const script = copy.script('hold.mjs', SOURCE);
  const child = spawn(process.execPath, [script, JSON.stringify(rest)], {
    ...as,
    cwd: '/',
    env: { PATH: process.env['PATH'], HOME: '/nonexistent' },
  });
  let errors = '';
  child.stderr.on('data', (data) => (errors += String(data)));
  const ended = once(child, 'close') as Promise<[number | null]>;
  const line = once(createInterface({ input: child.stdout }), 'line') as Promise<[string]>;
  const first = await Promise.race([
    line.then(([text]) => text),
    ended.then(([code]) => ({ code, message: errors.trim() })),
  ]);
  if (typeof first !== 'string') return first;
  return {
    child,
    report: JSON.parse(first) as Report,
    stop: async () => {
      child.kill('SIGTERM');
      return (await ended)[0];
    },
    kill: async () => {
      child.kill('SIGKILL');
      await ended;
    },
  };
}

/** The holder, or a failed test with the reason. */
export async function holdOrFail(copy: CompiledCopy, options: HolderOptions): Promise<Holder> {
  const result = await hold(copy, options);
  if ('message' in result) throw new Error(`did not start: ${result.message}`);
  return result;
}
