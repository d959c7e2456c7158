/** The demo club in the bench's database, and what the bench needs to know of it. */
import pg from 'pg';
import { aircraftBy } from '../../../dist/src/demo/fleet/aircraft.js';
import { DEMO_CLUB_ID, DEMO_SEED } from '../../../dist/src/demo/ids.js';
import { loadDemo } from '../../../dist/src/demo/load.js';
import { everybody } from '../../../dist/src/demo/people/person.js';
import { tries } from '../../../dist/src/demo/tries.js';
import { When } from '../../../dist/src/demo/when.js';
import { Clock } from '../../../dist/src/platform/clock.js';

/** Loads the club as of now. `asker` finds who may ask for a member: the member. */
export async function demoClub(database, config) {
  const now = new Clock().now();
  const { bookings } = await loadDemo(database, config, now);
  const when = new When(now);
  const asks = tries(everybody(DEMO_SEED, when), when);
  const facts = await inClub(database.ownerUrl, async (client) => {
    const { rows } = await client.query(
      `SELECT (SELECT count(*)::int FROM aircraft) AS aircraft, (SELECT count(*)::int FROM members) AS members,
              (SELECT count(*)::int FROM log_entries) AS log`,
    );
    return rows[0];
  });
  return {
    asks: asks.map((one) => ({ ...one, aircraftId: aircraftBy(one.aircraft).id })),
    ...facts,
    bookings,
    officer: () =>
      inClub(database.ownerUrl, async (client) => {
        const { rows } = await client.query(
          `SELECT a.id AS "accountId", a.member_id AS "memberId" FROM accounts a JOIN member_roles r USING (club_id, member_id)
            WHERE r.role = 'safety-officer' ORDER BY a.id LIMIT 1`,
        );
        return { clubId: DEMO_CLUB_ID, ...rows[0], roles: ['safety-officer'] };
      }),
    asker: (memberId) =>
      inClub(database.ownerUrl, async (client) => {
        const { rows } = await client.query('SELECT id FROM accounts WHERE member_id = $1', [memberId]);
        return { clubId: DEMO_CLUB_ID, memberId, accountId: rows[0].id, roles: ['member'] };
      }),
  };
}

async function inClub(url, work) {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    await client.query("SELECT set_config('bellcrank.club_id', $1, false)", [DEMO_CLUB_ID]);
    return await work(client);
  } finally {
    await client.end();
  }
}
