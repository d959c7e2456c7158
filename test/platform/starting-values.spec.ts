/** Numbers that came after a club: the club has them after the migration, and what it set itself stays. */
import { DataSource } from 'typeorm';
import { STARTING_VALUES, StartingValues1764000000025 } from '../../migrations/0025-starting-values.js';
import { createTestDatabase, type TestDatabase } from '../../src/platform/database/testing.js';
import { newId } from '../../src/platform/ids.js';

describe('starting values', () => {
  let db: TestDatabase;
  let owner: DataSource;
  beforeAll(async () => {
    db = await createTestDatabase();
    owner = await new DataSource({ type: 'postgres', url: db.ownerUrl }).initialize();
  }, 60_000);
  afterAll(async () => {
    await owner.destroy();
    await db.drop();
  });

  it('are given to clubs that lack them, once, as the owner without a way round row-level security', async () => {
    const clubs = [newId(), newId()];
    for (const id of clubs)
      await db.admin.query(
        "INSERT INTO clubs (club_id, slug, name, zone, jurisdiction) VALUES ($1, $2, 'Larkfield', 'America/Chicago', 'US')",
        [id, `club-${id.slice(-12)}`],
      );
    await db.admin.query(
      `INSERT INTO policy_values (club_id, id, parameter_id, valid_from, value, reference)
       VALUES ($1, $2, 'club.annual-check.days', '2024-05-01', '200', 'Board')`,
      [clubs[0], newId()],
    );
    for (let times = 0; times < 2; times += 1) {
      const runner = owner.createQueryRunner();
      await runner.startTransaction();
      await new StartingValues1764000000025().up(runner);
      await runner.commitTransaction();
      await runner.release();
    }
    const { rows } = await db.admin.query(
      'SELECT club_id, count(*)::int AS n, count(DISTINCT parameter_id)::int AS different FROM policy_values GROUP BY club_id',
    );
    const [n, different] = [STARTING_VALUES.length, STARTING_VALUES.length];
    expect(rows).toHaveLength(2);
    for (const id of clubs) expect(rows).toContainEqual({ club_id: id, n, different });
    const own = await db.admin.query(
      "SELECT value, valid_from::text AS since FROM policy_values WHERE club_id = $1 AND parameter_id = 'club.annual-check.days'",
      [clubs[0]],
    );
    expect(own.rows).toEqual([{ value: 200, since: '2024-05-01' }]);
    const forced = await db.admin.query(
      "SELECT relforcerowsecurity AS forced FROM pg_class WHERE relname = 'clubs'",
    );
    expect(forced.rows).toEqual([{ forced: true }]);
  });
});
