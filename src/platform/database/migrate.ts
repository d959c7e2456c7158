/** `npm run migrate`: applies, takes back or lists migrations as the owner. */
import type { AppConfig } from '../config.js';
import { StartupError } from '../startup-error.js';
import { connect } from './connection.js';
import { exclusively, MIGRATIONS_TABLE, withOwnerDataSource, type MigrationList } from './migrations.js';
import { openDatabase, type OpenOptions } from './open.js';

/** What the command can do. */
export const MIGRATE_ACTIONS = ['up', 'down', 'show'] as const;

/**
 * Runs one action and returns the lines to print.
 * - `up` applies what is missing (a normal start does that too);
 * - `down` takes the last one back, and with it what its tables hold;
 * - `show` lists all, `[x]` for applied.
 * @throws StartupError for another action.
 */
export async function migrate(
  config: AppConfig,
  action = 'up',
  options: OpenOptions = {},
): Promise<string[]> {
  if (!MIGRATE_ACTIONS.includes(action as never)) {
    throw new StartupError(
      `"migrate ${action}" is not a command; use migrate ${MIGRATE_ACTIONS.join(', migrate ')}.`,
    );
  }
  const database = await openDatabase(config, { ...options, skipMigrations: action !== 'up' });
  try {
    if (action === 'up')
      return database.applied.length
        ? database.applied.map((name) => `applied ${name}`)
        : ['nothing to apply'];
    if (action === 'show') return await show(database.ownerUrl, options.migrations);
    return await down(database.ownerUrl, options.migrations);
  } finally {
    await database.close();
  }
}

async function applied(ownerUrl: string): Promise<string[]> {
  const owner = await connect(ownerUrl, { variable: 'DATABASE_URL' });
  try {
    const table = await owner.query('SELECT to_regclass($1) IS NOT NULL AS there', [
      `public.${MIGRATIONS_TABLE}`,
    ]);
    if (!table.rows[0].there) return [];
    return (await owner.query(`SELECT name FROM ${MIGRATIONS_TABLE} ORDER BY id`)).rows.map(
      (row) => row.name as string,
    );
  } finally {
    await owner.end();
  }
}

async function show(ownerUrl: string, migrations?: MigrationList): Promise<string[]> {
  const done = new Set(await applied(ownerUrl));
  const all = await withOwnerDataSource(ownerUrl, migrations, async (source) =>
    source.migrations.map((m) => m.name ?? m.constructor.name),
  );
  const unknown = [...done].filter((name) => !all.includes(name));
  return [
    ...all.map((name) => `[${done.has(name) ? 'x' : ' '}] ${name}`),
    ...unknown.map((name) => `[?] ${name} (not in this release)`),
  ];
}

async function down(ownerUrl: string, migrations?: MigrationList): Promise<string[]> {
  const last = (await applied(ownerUrl)).at(-1);
  if (last === undefined) return ['nothing to take back'];
  const owner = await connect(ownerUrl, { variable: 'DATABASE_URL' });
  try {
    await exclusively(owner, () =>
      withOwnerDataSource(ownerUrl, migrations, (source) => source.undoLastMigration()),
    );
  } finally {
    await owner.end();
  }
  return [`took back ${last}`];
}
