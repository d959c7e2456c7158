import { createTestDatabase, type TestDatabase } from '../../src/platform/database/testing.js';

describe('databases for tests', () => {
  let first: TestDatabase;
  let second: TestDatabase;
  beforeAll(async () => {
    [first, second] = await Promise.all([createTestDatabase(), createTestDatabase()]);
  }, 60_000);
  afterAll(async () => {
    await first?.drop();
    await second?.drop();
  });

  it('are migrated copies that do not see each other', async () => {
    const clubId = '0190a5c2-7d1e-7c3a-9b4f-2f6d1c0a9e11';
    await first.admin.query(
      `INSERT INTO clubs (club_id, slug, name, zone, jurisdiction) VALUES ($1, 'alpha', 'Alpha', 'Etc/UTC', 'US')`,
      [clubId],
    );
    const count = (db: TestDatabase) =>
      db.tenantDb.run(
        clubId,
        async (em) => (await em.query('SELECT count(*)::int AS n FROM clubs'))[0].n as number,
      );
    expect(await count(first)).toBe(1);
    expect(await count(second)).toBe(0);
  });

  it('run on the PostgreSQL line that was asked for', () => {
    const line = process.env['BELLCRANK_TEST_PG'] || '18';
    expect(first.database.serverVersion.split('.')[0]).toBe(line);
  });
});
