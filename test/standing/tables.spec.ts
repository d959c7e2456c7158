/** Every table that a decision reads notes its changes, or standing answers would go stale without anybody noticing. */
import { DataSource } from 'typeorm';
import { TenantDb } from '../../src/platform/database/tenant.js';
import { gatherAircraft } from '../../src/decisions/gather/aircraft.js';
import { gatherClub } from '../../src/decisions/gather/club.js';
import { gatherPeople } from '../../src/decisions/gather/people.js';
import { NOW, startApi, type Api } from '../support/api.js';
import { readyClub } from '../support/ready-club.js';

describe('what a decision reads', () => {
  let api: Api;
  beforeAll(async () => {
    api = await startApi();
  });
  afterAll(() => api.stop());

  it('notes its changes, table by table', async () => {
    const { club, member, aircraftId } = await readyClub(api);
    const read = await statementsOf(api, () =>
      api.app.get(TenantDb).run(club.clubId, async (em) => {
        await gatherClub(em, NOW);
        await gatherPeople(em, {
          ...{ memberIds: [member.memberId], knownAt: NOW, logSince: NOW },
          ...{ unverifiedCounts: false, exceptBookingId: null },
        });
        await gatherAircraft(em, [aircraftId], NOW, null);
      }),
    );
    const tables = new Set(
      read.flatMap((text) => [...text.matchAll(/\b(?:FROM|JOIN)\s+([a-z_]+)\b/g)].map(([, table]) => table!)),
    );
    const known = await api.sql<{ name: string }>("SELECT relname AS name FROM pg_class WHERE relkind = 'r'");
    // The marks are what the triggers write.
    const read_tables = [...tables]
      .filter((table) => table !== 'fact_marks' && known.some(({ name }) => name === table))
      .sort();
    const noting = await api.sql<{ name: string }>(
      `SELECT DISTINCT c.relname AS name FROM pg_trigger t JOIN pg_class c ON c.oid = t.tgrelid JOIN pg_proc f ON f.oid = t.tgfoid
        WHERE f.proname = 'note_fact_change'`,
    );
    expect(read_tables.length).toBeGreaterThan(25);
    expect(read_tables.filter((table) => !noting.some(({ name }) => name === table))).toEqual([]);
  });
});

async function statementsOf(api: Api, work: () => Promise<void>): Promise<string[]> {
  const texts: string[] = [];
  const { logger } = api.app.get(DataSource);
  const source = api.app.get(DataSource) as { logger: typeof logger };
  source.logger = { ...noLog, logQuery: (text: string) => void texts.push(text) } as never;
  try {
    await work();
  } finally {
    source.logger = logger;
  }
  return texts;
}

const nothing = (): void => undefined;
const noLog = {
  ...{ logQueryError: nothing, logQuerySlow: nothing, logSchemaBuild: nothing },
  ...{ logMigration: nothing, log: nothing },
};
