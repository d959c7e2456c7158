/** Makes sure that the account PostgreSQL runs under can reach its programs and its data. */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  chmodSync,
  cpSync,
  existsSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
} from 'node:fs';
import { homedir } from 'node:os';
import { dirname, join, parse, relative, resolve } from 'node:path';
import { makeFolder } from '../../folders.js';
import { StartupError } from '../../startup-error.js';
import type { Account } from './account.js';
import { nativeProgram, type Natives } from './natives.js';

/** Where root keeps what an unprivileged account must reach when the checkout itself is closed to it. */
export const REACHABLE_BASE = '/var/lib/bellcrank';

/** Receives one line for the person starting the service. */
export type Notice = (line: string) => void;

const shortHash = (text: string) => createHash('sha256').update(text).digest('hex').slice(0, 12);

/** The closest folder to the root, on the way to `path`, that the account may not enter; null when the way is open. */
export function closedParent(path: string, account: Account): string | null {
  if (account.uid === undefined) return null;
  const way: string[] = [];
  for (let at = resolve(path); at !== parse(at).root; at = dirname(at)) way.unshift(at);
  const closed = way.find((folder) => {
    const found = statSync(folder, { throwIfNoEntry: false });
    if (!found?.isDirectory()) return false;
    const bit = found.uid === account.uid ? 0o100 : found.gid === account.gid ? 0o010 : 0o001;
    return (found.mode & bit) === 0;
  });
  return closed ?? null;
}

/** The folder that holds the cluster: the data folder itself, or one under `base` when the account cannot enter it. */
export function reachableHome(dataDir: string, account: Account, base: string, notice: Notice): string {
  const closed = closedParent(dataDir, account);
  if (closed === null) return dataDir;
  const home = join(base, shortHash(resolve(dataDir)));
  if (existsSync(join(dataDir, 'postgres', 'PG_VERSION'))) {
    throw new StartupError(
      `the database in ${dataDir} cannot be opened: PostgreSQL must not run as root, and user id ${account.uid} may not enter ${closed}. ` +
        `Either run "chmod o+x ${closed}", or move ${join(dataDir, 'postgres')} to ${join(home, 'postgres')}.`,
    );
  }
  makeFolder(home, 0o711);
  notice(
    `Running as root and ${closed} is closed to other users, so the database is kept in ${home} instead of ${dataDir}.`,
  );
  return home;
}

/** Programs the account can really run: those installed, or a copy with the library links in place. */
export function runnableNatives(installed: Natives, account: Account, base: string, notice: Notice): Natives {
  try {
    linkLibraries(installed.root);
  } catch {
    // Read-only node_modules; the copy below gets the links.
  }
  const first = probe(installed, account);
  if (first === null) return installed;
  const cache =
    account.uid === undefined
      ? join(process.env['XDG_CACHE_HOME'] || join(homedir(), '.cache'), 'bellcrank')
      : base;
  const root = join(cache, 'programs', `postgres-${installed.version}-${shortHash(installed.root)}`);
  const copy = { ...installed, root };
  if (!existsSync(root)) {
    notice(
      `The PostgreSQL programs cannot be run where they are installed (${first}); copying them once to ${root}.`,
    );
    copyPrograms(installed.root, root);
  }
  const second = probe(copy, account);
  if (second !== null) {
    throw new StartupError(
      `the built-in PostgreSQL ${installed.version} does not run on this machine (${second}). Set DATABASE_URL to a PostgreSQL 15 or later.`,
    );
  }
  return copy;
}

/** Tries the server program as the account; null when it runs, else why not. */
function probe(natives: Natives, account: Account): string | null {
  const tried = spawnSync(nativeProgram(natives, 'postgres'), ['--version'], {
    ...account,
    cwd: '/',
    encoding: 'utf8',
    env: {},
  });
  if (tried.error) return (tried.error as NodeJS.ErrnoException).code ?? tried.error.message;
  return tried.status === 0 ? null : tried.stderr.trim().split('\n').at(-1) || `exit code ${tried.status}`;
}

function copyPrograms(from: string, to: string): void {
  const draft = `${to}.${process.pid}.partial`;
  makeFolder(dirname(to), 0o755);
  cpSync(from, draft, { recursive: true, verbatimSymlinks: true });
  linkLibraries(draft);
  chmodSync(draft, 0o755);
  try {
    renameSync(draft, to);
  } catch (error) {
    rmSync(draft, { recursive: true, force: true });
    if (!existsSync(to)) throw error; // otherwise another process finished its copy first
  }
}

/**
 * Makes the library links that the package's install script would have made (npm packages cannot carry links), from
 * the list `pg-symlinks.json` beside the programs. Existing links are left alone.
 */
export function linkLibraries(root: string): void {
  const list = join(root, 'pg-symlinks.json');
  if (!existsSync(list)) return;
  const links = JSON.parse(readFileSync(list, 'utf8')) as { source: string; target: string }[];
  for (const link of links) {
    // The list's paths start with 'native/', the folder's name inside the package.
    const inside = (path: string) => join(root, relative('native', path));
    const target = inside(link.target);
    if (existsSync(target)) continue;
    try {
      symlinkSync(relative(dirname(target), inside(link.source)), target);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
    }
  }
}
