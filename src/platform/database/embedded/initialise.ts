/** Makes a new database cluster, once. */
import { spawn } from 'node:child_process';
import {
  chownSync,
  existsSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { StartupError } from '../../startup-error.js';
import { handOver, type Account } from './account.js';
import { nativeProgram, type Natives } from './natives.js';

/** Name of the cluster's bootstrap superuser; used only to set the database up. */
export const SUPERUSER = 'postgres';

/** The database's first-start settings that cannot be changed later. */
function initdbArguments(natives: Natives, folder: string, passwordFile: string, locale: string): string[] {
  // From 17 on the built-in provider sorts by code point without the system's locale data; before, the C library does.
  const collation =
    natives.major >= 17
      ? ['--locale-provider=builtin', '--builtin-locale=C.UTF-8', '--locale=C']
      : [`--locale=${locale}`];
  const security = ['--auth=scram-sha-256', `--username=${SUPERUSER}`, `--pwfile=${passwordFile}`];
  return ['-D', folder, '--encoding=UTF8', ...collation, ...security];
}

/**
 * Initialises `<home>/postgres` unless it exists already.
 * The work happens in a draft folder that is renamed when complete, so a crash half-way leaves nothing behind that
 * looks like a database.
 * @throws StartupError when the folder holds another major version, something else, or cannot be made.
 */
export async function initialiseCluster(
  home: string,
  natives: Natives,
  account: Account,
  password: string,
): Promise<string> {
  const cluster = join(home, 'postgres');
  if (existsSync(cluster)) {
    checkExisting(cluster, natives, home);
    if (account.uid !== undefined && statSync(cluster).uid !== account.uid) handOver(cluster, account);
    return cluster;
  }
  const draft = join(home, 'postgres.draft');
  const passwordFile = join(home, 'postgres.pwfile');
  let failure = '';
  for (const locale of ['C.UTF-8', 'C']) {
    rmSync(draft, { recursive: true, force: true });
    mkdirSync(draft, { mode: 0o700 });
    rmSync(passwordFile, { force: true });
    writeFileSync(passwordFile, `${password}\n`, { mode: 0o600, flag: 'wx' });
    handOver(draft, account);
    if (account.uid !== undefined) chownSync(passwordFile, account.uid, account.gid!);
    failure = await runInitdb(natives, account, initdbArguments(natives, draft, passwordFile, locale));
    rmSync(passwordFile, { force: true });
    if (failure === '') break;
    if (!/locale/.test(failure)) break; // only a missing C.UTF-8 is worth a second try
  }
  if (failure !== '') {
    rmSync(draft, { recursive: true, force: true });
    throw new StartupError(`could not set up the database in ${home}: ${failure}`);
  }
  renameSync(draft, cluster);
  return cluster;
}

function checkExisting(cluster: string, natives: Natives, home: string): void {
  const file = join(cluster, 'PG_VERSION');
  if (!existsSync(file)) {
    throw new StartupError(
      `${cluster} exists but holds no database. Move it away, or point BELLCRANK_DATA_DIR at another folder.`,
    );
  }
  const major = readFileSync(file, 'utf8').trim();
  if (major === String(natives.major)) return;
  throw new StartupError(
    `the database in ${home} was made by PostgreSQL ${major}, and this release brings PostgreSQL ${natives.version}. ` +
      `Start the release that made it, dump the data with pg_dump, move ${cluster} away and restore into a new one; ` +
      'or point BELLCRANK_DATA_DIR at another folder.',
  );
}

function runInitdb(natives: Natives, account: Account, args: string[]): Promise<string> {
  return new Promise((done) => {
    const child = spawn(nativeProgram(natives, 'initdb'), args, {
      ...account,
      cwd: '/',
      env: { LC_ALL: 'C', TZ: 'UTC' },
      stdio: ['ignore', 'ignore', 'pipe'],
    });
    let errors = '';
    child.stderr.setEncoding('utf8').on('data', (text: string) => (errors += text));
    child.on('error', (error) => done(error.message));
    child.on('close', (code) => done(code === 0 ? '' : errors.trim() || `initdb ended with code ${code}`));
  });
}
