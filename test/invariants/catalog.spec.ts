/**
 * The schema as the live database has it, against the committed migrations/catalog.json: what a migration lost or added
 * by accident (an exclusion constraint, a policy, a grant) shows here. Runs the same on PostgreSQL 15 to 18
 * (BELLCRANK_TEST_PG=15). After a wanted change: npm run catalog:write, and read the difference before committing it.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { createTestDatabase, type TestDatabase } from '../../src/platform/database/testing.js';
import { projectPath } from '../../src/platform/paths.js';
import { type Catalog, catalogText, type Query, readCatalog } from './catalog/read-catalog.js';
import { foreignKeys, keyColumns, tenantTables } from './catalog/tenancy.js';

const MANIFEST = projectPath('migrations', 'catalog.json');
const WRITING = process.env['BELLCRANK_TEST_WRITE_CATALOG'] === '1';

let db: TestDatabase;
let live: Catalog;
let query: Query;

beforeAll(async () => {
  db = await createTestDatabase();
  query = async (sql) => (await db.admin.query(sql)).rows as Record<string, string>[];
  live = await readCatalog(query);
  if (WRITING) writeFileSync(MANIFEST, catalogText(live));
});
afterAll(() => db.drop());

describe('manifest', () => {
  it('is what the migrated database has', () => {
    if (!existsSync(MANIFEST)) throw new Error('migrations/catalog.json is missing: npm run catalog:write');
    expect(live).toEqual(JSON.parse(readFileSync(MANIFEST, 'utf8')));
  });

  it('is written in the form that catalog:write gives', () => {
    expect(readFileSync(MANIFEST, 'utf8')).toBe(catalogText(live));
  });

  it.each([
    ['an exclusion constraint', 'ALTER TABLE bookings DROP CONSTRAINT bookings_aircraft_excl'],
    ['forced row-level security', 'ALTER TABLE aircraft NO FORCE ROW LEVEL SECURITY'],
    ['a policy', 'DROP POLICY squawks_club ON squawks'],
    ['a looser policy', 'ALTER POLICY squawks_club ON squawks USING (true)'],
    ['a trigger', 'DROP TRIGGER checkouts_append_only ON checkouts'],
    ['a trigger switched off', 'ALTER TABLE checkouts DISABLE TRIGGER checkouts_append_only'],
    ['a grant too many', 'GRANT DELETE ON decisions TO bellcrank_app'],
    ['a grant to everybody', 'GRANT SELECT (name) ON members TO PUBLIC'],
    ['a column that may be null', 'ALTER TABLE squawks ALTER COLUMN title DROP NOT NULL'],
    ['a changed default', "ALTER TABLE aircraft ALTER COLUMN status SET DEFAULT 'out-of-service'"],
    [
      'a changed function',
      "CREATE OR REPLACE FUNCTION bellcrank_actor() RETURNS uuid LANGUAGE sql STABLE PARALLEL SAFE AS 'SELECT NULL::uuid'",
    ],
    ['an index', 'DROP INDEX squawks_aircraft_ix'],
    ['a view', 'CREATE VIEW everybody AS SELECT * FROM members'],
  ])('notices the loss or change of %s', async (_what, sql) => {
    await db.admin.query('BEGIN');
    try {
      await db.admin.query(sql);
      expect(await readCatalog(query)).not.toEqual(live);
    } finally {
      await db.admin.query('ROLLBACK');
    }
    expect(await readCatalog(query)).toEqual(live);
  });
});

describe('tenancy', () => {
  it('finds the tables', () => {
    expect(tenantTables(live).length).toBeGreaterThanOrEqual(30);
    expect(tenantTables(live)).toEqual(
      expect.arrayContaining(['clubs', 'airfields', 'aircraft', 'bookings', 'audit_log']),
    );
  });

  it('gives every table club_id as the first column of its key', () => {
    const wrong = tenantTables(live).filter((table) => keyColumns(live, table)[0] !== 'club_id');
    expect(wrong).toEqual([]);
  });

  it('enables and forces row-level security on every table, by the club of the transaction', () => {
    const wrong = tenantTables(live).filter((table) => {
      const { rowSecurity, policies } = live.tables[table]!;
      const rule =
        'permissive for all to public using (club_id = bellcrank_club()) with check (club_id = bellcrank_club())';
      return rowSecurity !== 'enabled, forced' || policies[`${table}_club`] !== rule;
    });
    expect(wrong).toEqual([]);
  });

  it('has no policy besides, but the one that finds a club by its short name at sign-in', () => {
    const besides = tenantTables(live).flatMap((table) =>
      Object.keys(live.tables[table]!.policies).filter((name) => name !== `${table}_club`),
    );
    expect(besides).toEqual([
      // And which clubs have an aircraft out that somebody has to be told of.
      'aircraft_out_sweep',
      'clubs_sign_in',
      // Whoever speaks for no club sees which clubs have flights to judge again, and nothing of why (ids only).
      ...['fact_changes_by_hand', 'fact_changes_sweep', 'fact_marks_by_hand'],
      // What open pages have to read again, and which clubs have notices due: ids, topics and times only.
      ...['live_changes_by_hand', 'live_changes_sweep', 'notice_due_by_hand', 'notice_due_sweep'],
      // And which clubs have a slot to pass on (ids and times only).
      'standby_wakes_sweep',
      'standing_clubs_sweep',
    ]);
    for (const [table, name] of [
      ['fact_changes', 'fact_changes_by_hand'],
      ['fact_changes', 'fact_changes_sweep'],
      ['fact_marks', 'fact_marks_by_hand'],
      ['standing_clubs', 'standing_clubs_sweep'],
      ['aircraft_out', 'aircraft_out_sweep'],
      ['live_changes', 'live_changes_by_hand'],
      ['live_changes', 'live_changes_sweep'],
      ['notice_due', 'notice_due_by_hand'],
      ['notice_due', 'notice_due_sweep'],
      ['standby_wakes', 'standby_wakes_sweep'],
    ] as const)
      expect(live.tables[table]!.policies[name]).toMatch(/\(bellcrank_club\(\) IS NULL\)/);
    expect(live.tables['clubs']!.policies['clubs_sign_in']).toMatch(
      /^permissive for select to public using \(slug = /,
    );
  });

  it('takes the club along in every foreign key', () => {
    const keys = foreignKeys(live);
    expect(keys.length).toBeGreaterThan(40);
    const wrong = keys.filter(({ from, to }) => from[0] !== 'club_id' || to[0] !== 'club_id');
    expect(wrong).toEqual([]);
  });

  it('grants rows to the service only, and nothing that steps round its policies', () => {
    for (const table of tenantTables(live)) {
      const { grants, triggers } = live.tables[table]!;
      expect([table, Object.keys(grants)]).toEqual([table, ['bellcrank_app']]);
      const rights = grants['bellcrank_app']!.split(', ');
      const appendOnly = `${table}_append_only` in triggers;
      const allowed = appendOnly ? ['INSERT', 'SELECT'] : ['DELETE', 'INSERT', 'SELECT', 'UPDATE'];
      // Bared when a member is erased; a trigger holds it to that (documents and erasures, members.spec.ts).
      if (table === 'audit_log') allowed.push('UPDATE(after)', 'UPDATE(before)');
      // Deleted then, and only then (practice.spec.ts, limits.spec.ts).
      if (['practice_records', 'personal_limits'].includes(table)) allowed.push('DELETE');
      // Taken back once, and nothing else changed (log-imports.spec.ts).
      if (table === 'log_imports') allowed.push('UPDATE(taken_back_at)', 'UPDATE(taken_back_by)');
      expect([table, rights.filter((right) => !allowed.includes(right))]).toEqual([table, []]);
    }
    // Row-level security does not bind TRUNCATE, nor what runs as the owner.
    const definers = Object.entries(live.functions).filter(([, definition]) =>
      definition.includes('security definer'),
    );
    expect(definers).toEqual([]);
  });

  it('has a service role that owns nothing and cannot bypass', async () => {
    const [role] = await query(`
      SELECT bool_or(rolsuper OR rolbypassrls OR rolcreaterole OR rolreplication)::text AS powerful,
             (SELECT count(*)::text FROM pg_class c JOIN pg_roles o ON o.oid = c.relowner WHERE o.rolname IN ('bellcrank_app', 'bellcrank_service')) AS owned
        FROM pg_roles WHERE rolname IN ('bellcrank_app', 'bellcrank_service') HAVING count(*) = 2`);
    expect(role).toEqual({ powerful: 'false', owned: '0' });
  });
});
