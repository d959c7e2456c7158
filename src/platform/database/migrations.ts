/** Brings the schema up to date, once, however many replicas start together. */
import type pg from 'pg';
import { DataSource, type MixedList } from 'typeorm';
import { MIGRATIONS } from '../../../migrations/index.js';
import { StartupError } from '../startup-error.js';

/** Migration classes in order. */
// eslint-disable-next-line @typescript-eslint/no-unsafe-function-type -- TypeORM's own type for a list of classes
export type MigrationList = MixedList<Function | string>;

/** Table in which applied migrations are noted. */
export const MIGRATIONS_TABLE = 'schema_migrations';

/** Key of the advisory lock that makes replicas queue up: the first eight bytes of 'bellcran'. */
const LOCK_KEY = '7090192401145422190';

/** Runs `work` while no other starting replica changes this database. The lock goes with the connection. */
export async function exclusively<T>(owner: pg.Client, work: () => Promise<T>): Promise<T> {
  await owner.query('SELECT pg_advisory_lock($1::bigint)', [LOCK_KEY]);
  try {
    return await work();
  } finally {
    await owner.query('SELECT pg_advisory_unlock($1::bigint)', [LOCK_KEY]).catch(() => undefined);
  }
}

/** Opens the owner's data source for migration work and closes it afterwards. */
export async function withOwnerDataSource<T>(
  ownerUrl: string,
  migrations: MigrationList | undefined,
  work: (source: DataSource) => Promise<T>,
): Promise<T> {
  const source = new DataSource({
    type: 'postgres',
    url: ownerUrl,
    migrations: migrations ?? MIGRATIONS,
    migrationsTableName: MIGRATIONS_TABLE,
    migrationsTransactionMode: 'each',
    applicationName: 'bellcrank-migrate',
    installExtensions: false,
    synchronize: false,
    logging: false,
    poolSize: 2,
  });
  await source.initialize();
  try {
    return await work(source);
  } finally {
    await source.destroy();
  }
}

/**
 * Applies what is missing; each migration in its own transaction. Call it inside `exclusively`.
 * @returns names of the migrations applied now.
 * @throws StartupError when the owner may not create tables, or naming the migration that failed.
 */
export async function applyMigrations(ownerUrl: string, migrations?: MigrationList): Promise<string[]> {
  return withOwnerDataSource(ownerUrl, migrations, async (source) => {
    try {
      return (await source.runMigrations()).map((migration) => migration.name);
    } catch (error) {
      const { code, message } = error as { code?: string; message: string };
      const hint =
        code === '42501'
          ? 'The user of DATABASE_URL must own the database, or have CREATE on it and on its schema public. '
          : '';
      throw new StartupError(
        `updating the database schema failed: ${message}. ${hint}Nothing of the failed step was kept.`,
        { cause: error },
      );
    }
  });
}
