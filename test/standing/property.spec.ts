/**
 * Whatever happens, in whatever order: the answers flights stand at are those of judging every flight anew. The work is
 * counted. `STANDING_EVENTS` sets how many things happen, `PROPERTY_SEED` which.
 */
import { TenantDb } from '../../src/platform/database/tenant.js';
import { flightsThatRead, readFlights, sheetsOf } from '../../src/standing/gather-standing.js';
import { judgeAgain, type StandingRow } from '../../src/standing/judge-again.js';
import { rejudgeClub } from '../../src/standing/rejudge.js';
import { startApi, type Api } from '../support/api.js';
import { book, Draw, happen, numbers, plantScene, type Scene } from './events.js';

const HAPPENINGS = Number(process.env['STANDING_EVENTS'] ?? 1000);
const SEED = Number(process.env['PROPERTY_SEED'] ?? 24);

describe('standing answers', () => {
  let api: Api;
  let scene: Scene;
  const draw = new Draw(numbers(SEED));

  beforeAll(async () => {
    api = await startApi();
    scene = await plantScene(api);
    for (let day = 1; day <= 45; day += 1) await book(scene, draw, day);
  }, 120_000);
  afterAll(() => api.stop());

  it(`are those of judging every flight anew, through ${HAPPENINGS} events`, async () => {
    const db = api.app.get(TenantDb);
    const { clubId } = scene.ready.club;
    const refused: Record<string, number> = {};
    const work = { facts: 0, judged: 0, changed: 0, anew: 0, compared: 0 };
    await rejudgeClub(db, clubId, () => api.clock.now());
    for (let n = 1; n <= HAPPENINGS; n += 1) {
      const no = await happen(scene, draw);
      if (no !== null) refused[no] = (refused[no] ?? 0) + 1;
      const done = await rejudgeClub(db, clubId, () => api.clock.now());
      work.facts += done.facts;
      work.judged += done.judged;
      work.changed += done.changed;
      work.anew += await flightsToCome(api);
      if (n % 10 === 0 || n === HAPPENINGS) {
        const expected = await judgedAnew(db, clubId, api.clock.now());
        work.compared += expected.length;
        expect({ n, answers: await standing(api, expected) }).toEqual({
          n,
          answers: expected.map(({ bookingId, answer, because }) => ({ bookingId, answer, because })),
        });
      }
    }
    // Told, not demanded: how much less was done.
    console.info(`${HAPPENINGS} events: ${JSON.stringify({ ...work, refused })}`);
    expect(work.changed).toBeGreaterThan(HAPPENINGS / 20);
    expect(work.judged).toBeLessThan(work.anew / 3);
  }, 1_200_000);
});

async function judgedAnew(db: TenantDb, clubId: string, now: string): Promise<StandingRow[]> {
  return db.run(
    clubId,
    async (em) => {
      const flights = await readFlights(em, await flightsThatRead(em, { subjects: null, now }), now);
      const found = await sheetsOf(em, flights, now);
      return flights.map(({ bookingId }, index) => judgeAgain(bookingId, found[index]!));
    },
    { readOnly: true },
  );
}

async function flightsToCome(api: Api): Promise<number> {
  const [row] = await api.sql<{ count: number }>(
    "SELECT count(*)::int AS count FROM bookings WHERE kind = 'flight' AND status = 'booked' AND lower(during) > $1::timestamptz",
    [api.clock.now()],
  );
  return row!.count;
}

async function standing(api: Api, of: readonly StandingRow[]): Promise<unknown[]> {
  const rows = await api.sql<{ booking_id: string; answer: string; because: unknown }>(
    'SELECT booking_id, answer, because FROM standing_answers WHERE booking_id = ANY ($1::uuid[]) ORDER BY booking_id',
    [of.map(({ bookingId }) => bookingId)],
  );
  return rows.map(({ booking_id: bookingId, answer, because }) => ({ bookingId, answer, because }));
}
