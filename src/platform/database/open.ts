/** From settings to a database that is running, up to date and safe to serve from. */
import type { DataSourceOptions } from 'typeorm';
import type { AppConfig } from '../config.js';
import { StartupError } from '../startup-error.js';
import { checkServerVersion, connect, withLogin } from './connection.js';
import { startEmbedded, type EmbeddedPostgres, type Notice } from './embedded/index.js';
import { applyMigrations, exclusively, type MigrationList } from './migrations.js';
import { ensureOwnedDatabase } from './owner.js';
import {
  ensureAccess,
  ensureGroupRole,
  ensureServiceRole,
  servicePassword,
  SERVICE_ROLE,
  setServicePassword,
  verifyServiceRole,
  GROUP_ROLE,
} from './roles.js';
import { prepareQueues } from '../queue/queues.js';
import { serviceDataSourceOptions, type EntityList } from './service-data-source.js';

/** An opened database. */
export interface Database {
  kind: 'embedded' | 'external';
  /** Such as '18.4'. */
  serverVersion: string;
  /** Owner's connection address: may change tables; for migrations and the making of clubs. Keep it out of logs. */
  ownerUrl: string;
  /** Service role's connection address. Keep it out of logs. */
  serviceUrl: string;
  /** Names of the migrations applied by this opening. */
  applied: string[];
  /** TypeORM options for the service role; never synchronises, never migrates. */
  dataSourceOptions(entities: EntityList): DataSourceOptions;
  /** Stops the embedded server (after the data source was closed); nothing to do for an external one. */
  close(): Promise<void>;
}

/** Choices for tests and commands; a plain start needs none. */
export interface OpenOptions {
  /** Other migrations than the project's. */
  migrations?: MigrationList;
  /** Leave the schema as it is (for `migrate show` and `migrate down`). */
  skipMigrations?: boolean;
  /** npm package with the embedded PostgreSQL line. */
  nativePackage?: string;
  /** Embedded only: speed instead of safety against power loss. */
  fast?: boolean;
  /** How long to wait for an external server that is still starting (milliseconds). */
  patienceMs?: number;
  notice?: Notice;
}

/**
 * Starts or reaches PostgreSQL, applies the migrations as the owner, makes the service role and checks that it cannot
 * step round row-level security.
 * @throws StartupError with what to do.
 */
export async function openDatabase(config: AppConfig, options: OpenOptions = {}): Promise<Database> {
  const embedded = config.databaseUrl === undefined ? await startEmbeddedFor(config, options) : null;
  try {
    const ownerUrl = embedded ? await ensureOwnedDatabase(embedded) : config.databaseUrl!;
    const { serverVersion, applied } = await prepareSchema(ownerUrl, options);
    const serviceUrl =
      config.databaseServiceUrl ?? (await prepareServiceRole(ownerUrl, config.secret, options));
    await verify(serviceUrl, config.databaseServiceUrl ? 'DATABASE_SERVICE_URL' : 'DATABASE_URL');
    return {
      ...{ kind: embedded ? 'embedded' : 'external', serverVersion, ownerUrl, serviceUrl, applied },
      dataSourceOptions: (entities) => serviceDataSourceOptions(serviceUrl, config, entities),
      close: async () => embedded?.stop(),
    };
  } catch (error) {
    await embedded?.stop();
    throw error;
  }
}

function startEmbeddedFor(config: AppConfig, options: OpenOptions): Promise<EmbeddedPostgres> {
  const { nativePackage, fast, notice } = options;
  return startEmbedded({ dataDir: config.dataDir, port: config.embeddedPort, nativePackage, fast, notice });
}

async function prepareSchema(
  ownerUrl: string,
  options: OpenOptions,
): Promise<{ serverVersion: string; applied: string[] }> {
  const owner = await connect(ownerUrl, {
    variable: 'DATABASE_URL',
    patienceMs: options.patienceMs,
    notice: options.notice,
  });
  try {
    const serverVersion = await checkServerVersion(owner);
    const applied = await exclusively(owner, async () => {
      await ensureGroupRole(owner);
      if (options.skipMigrations) return [];
      const names = await applyMigrations(ownerUrl, options.migrations);
      await prepareQueues(ownerUrl, GROUP_ROLE);
      return names;
    });
    for (const name of applied) options.notice?.(`Database schema: applied ${name}.`);
    await ensureAccess(owner);
    return { serverVersion, applied };
  } finally {
    await owner.end();
  }
}

async function prepareServiceRole(ownerUrl: string, secret: string, options: OpenOptions): Promise<string> {
  const password = servicePassword(secret);
  const serviceUrl = withLogin(ownerUrl, SERVICE_ROLE, password);
  const owner = await connect(ownerUrl, { variable: 'DATABASE_URL' });
  try {
    await exclusively(owner, async () => {
      await ensureServiceRole(owner, password);
      if (await refusesPassword(serviceUrl)) {
        options.notice?.(`The password of ${SERVICE_ROLE} does not match BELLCRANK_SECRET; setting it anew.`);
        await setServicePassword(owner, password);
      }
    });
  } finally {
    await owner.end();
  }
  return serviceUrl;
}

async function refusesPassword(serviceUrl: string): Promise<boolean> {
  try {
    await (await connect(serviceUrl, { variable: 'DATABASE_URL' })).end();
    return false;
  } catch (error) {
    if (error instanceof StartupError && (error.cause as { code?: string }).code === '28P01') return true;
    throw error;
  }
}

async function verify(serviceUrl: string, variable: string): Promise<void> {
  const service = await connect(serviceUrl, { variable });
  try {
    await verifyServiceRole(service);
  } finally {
    await service.end();
  }
}
