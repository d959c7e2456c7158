/** The demo club in a real database: made, kept, made anew, no other club touched; and over HTTP, as printed. */
import type { NestExpressApplication } from '@nestjs/platform-express';
import { Test } from '@nestjs/testing';
import request from 'supertest';
import { AppModule } from '../../src/app.module.js';
import { gatherSheets } from '../../src/decisions/gather/sheets.js';
import { aircraftBy } from '../../src/demo/fleet/aircraft.js';
import { DEMO_CLUB_ID, DEMO_SEED, DEMO_SLUG } from '../../src/demo/ids.js';
import { loadDemo } from '../../src/demo/load.js';
import { everybody } from '../../src/demo/people/person.js';
import { DEMO_PASSWORD } from '../../src/demo/sign-in.js';
import { reportTexts } from '../../src/demo/today/pasted-weather.js';
import { tries, type Try } from '../../src/demo/tries.js';
import { When } from '../../src/demo/when.js';
import { APP_OPTIONS, configureApp } from '../../src/platform/bootstrap.js';
import { Clock, FixedClock } from '../../src/platform/clock.js';
import { AppConfig } from '../../src/platform/config.js';
import { createTestDatabase, type TestDatabase } from '../../src/platform/database/testing.js';
import { newId } from '../../src/platform/ids.js';
import { StartupError } from '../../src/platform/startup-error.js';
import { blocks, decide, plusSeconds, rulesetFor, toSeconds, type Decision } from '../../src/rules/index.js';
import { readReport } from '../../src/weather/decode/read-report.js';

const ASOF = '2027-02-27T18:00:00Z';
const NEXT_DAY = '2027-02-28T18:00:00Z';
const OTHER_CLUB = newId();
/** Judging some hundred and fifty flights, on a machine that does other things too. */
const LONG = 240_000;

let db: TestDatabase;
const sql = async <T>(text: string, params: unknown[] = []): Promise<T[]> =>
  (await db.admin.query(text, params)).rows as T[];
const triesAsOf = (asOf: string): Try[] => tries(everybody(DEMO_SEED, new When(asOf)), new When(asOf));

/** Rows of every table with a club, counted by club. */
async function census(clubId: string): Promise<Record<string, number>> {
  const tables = await sql<{ name: string }>(
    `SELECT c.relname AS name FROM pg_class c JOIN pg_attribute a ON a.attrelid = c.oid AND a.attname = 'club_id'
     WHERE c.relkind = 'r' AND c.relnamespace = 'public'::regnamespace ORDER BY 1`,
  );
  const counts: Record<string, number> = {};
  for (const { name } of tables) {
    const [row] = await sql<{ count: string }>(`SELECT count(*) FROM ${name} WHERE club_id = $1`, [clubId]);
    counts[name] = Number(row!.count);
  }
  return counts;
}

beforeAll(async () => {
  db = await createTestDatabase();
  await sql(
    `INSERT INTO clubs (club_id, slug, name, zone, jurisdiction) VALUES ($1, 'someone-else', 'Someone Else', 'UTC', 'US')`,
    [OTHER_CLUB],
  );
  await sql(
    `INSERT INTO members (club_id, id, name, email, standing_since, membership_from)
     VALUES ($1, $2, 'Pat Else', 'pat@else.example', '2020-01-01', '2020-01-01')`,
    [OTHER_CLUB, newId()],
  );
});
afterAll(() => db.drop());

describe('a slug that another club has', () => {
  it('is left alone, with what to do about it', async () => {
    const id = newId();
    await sql(
      `INSERT INTO clubs (club_id, slug, name, zone, jurisdiction) VALUES ($1, $2, 'Not the demo', 'UTC', 'US')`,
      [id, DEMO_SLUG],
    );
    await expect(loadDemo(db.database, db.config, ASOF)).rejects.toThrow(StartupError);
    await expect(loadDemo(db.database, db.config, ASOF)).rejects.toThrow(/left alone/);
    expect(await sql('SELECT 1 FROM clubs WHERE club_id = $1', [id])).toHaveLength(1);
    await sql('DELETE FROM clubs WHERE club_id = $1', [id]);
  });
});

/** Flights of the demo club that are back. */
const flown = async (): Promise<number> => {
  const [row] = await sql<{ count: number }>(
    `SELECT count(*)::int AS count FROM bookings WHERE club_id = $1 AND status = 'returned'`,
    [DEMO_CLUB_ID],
  );
  return row!.count;
};

/** Flights of the demo club that are out: handed out this morning, one of them late. */
const OUT = 2;

describe('the first start of a day', () => {
  it(
    'makes the club and books what the rules allow',
    async () => {
      const loaded = await loadDemo(db.database, db.config, ASOF);
      expect(loaded).toMatchObject({ outcome: 'made', before: null });
      expect(loaded.bookings!.booked).toBeGreaterThan(80);
      // Not every wish may be granted: people's papers run out, landings are wanting.
      expect(loaded.bookings!.refused).toBeGreaterThan(0);
      const answers = await sql<{ answer: string }>(
        `SELECT DISTINCT d.answer FROM bookings b JOIN decisions d ON d.club_id = b.club_id AND d.id = b.decision_id
         WHERE b.club_id = $1 AND b.kind = 'flight'`,
        [DEMO_CLUB_ID],
      );
      expect(answers.every(({ answer }) => answer === 'yes' || answer === 'yes-with-conditions')).toBe(true);
      const counts = await census(DEMO_CLUB_ID);
      expect(counts).toMatchObject({
        members: 60,
        accounts: 60,
        aircraft: 7,
        airfields: 4,
        decisions: loaded.bookings!.booked + (await flown()) + OUT,
      });
      // Flights that are charged were booked too; the rest takes aircraft off the calendar.
      expect(await flown()).toBeGreaterThan(20);
      expect(counts.bookings).toBe(loaded.bookings!.booked + (await flown()) + 5 + OUT);
    },
    LONG,
  );

  it(
    'gives every try its printed answer, from facts gathered as the service gathers them',
    async () => {
      const wrong: object[] = [];
      await db.tenantDb.run(
        DEMO_CLUB_ID,
        async (em) => {
          for (const one of triesAsOf(ASOF)) {
            const { ask, person, aircraft, answer, what } = one;
            const { sheets, policy } = await gatherSheets(em, {
              request: ask,
              memberId: person.id,
              aircraftIds: [aircraftBy(aircraft).id],
              knownAt: ASOF,
            });
            const decision = decide(sheets[0]!, policy, rulesetFor('US', policy), ask.departs, {
              days: 0,
              stepsPerRule: 1,
            });
            if (decision.answer !== answer)
              wrong.push({
                who: person.story.key,
                what,
                answer,
                is: decision.answer,
                blocking: decision.findings
                  .filter(blocks)
                  .map((finding) => `${finding.rule}: ${finding.says}`),
              });
          }
        },
        { readOnly: true },
      );
      expect(wrong).toEqual([]);
    },
    LONG,
  );
});

describe('the middle of a day', () => {
  it('has one flight out, one that is late, somebody on standby, pasted weather and a log taken over', async () => {
    const out = await sql<{ registration: string; late: boolean; meters: number }>(
      `SELECT a.registration, o.due_back_at < $2 AS late,
              (SELECT count(*)::int FROM dispatch_meters m WHERE m.club_id = d.club_id AND m.dispatch_id = d.id) AS meters
         FROM aircraft_out o JOIN bookings b ON b.club_id = o.club_id AND b.id = o.booking_id
         JOIN aircraft a ON a.club_id = b.club_id AND a.id = b.aircraft_id
         JOIN dispatches d ON d.club_id = b.club_id AND d.booking_id = b.id
        WHERE o.club_id = $1 AND b.status = 'dispatched' ORDER BY o.due_back_at`,
      [DEMO_CLUB_ID, ASOF],
    );
    expect(out.map(({ registration, late }) => [registration, late])).toEqual([
      [aircraftBy('wicket').registration, true],
      [aircraftBy('traverse').registration, false],
    ]);
    expect(out.every(({ meters }) => meters > 0)).toBe(true);
    expect(await census(DEMO_CLUB_ID)).toMatchObject({
      ...{ standby_entries: 1, weather_reports: 3, log_imports: 1 },
    });
    const [log] = await sql<{ entries: number; said: number }>(
      `SELECT count(*)::int AS entries, min(i.entries) AS said FROM log_entries e
         JOIN log_imports i ON i.club_id = e.club_id AND i.id = e.import_id WHERE e.club_id = $1`,
      [DEMO_CLUB_ID],
    );
    expect(log).toEqual({ entries: 24, said: 24 });
    // Members owe and have paid.
    const kinds = await sql<{ kind: string }>(
      'SELECT DISTINCT kind FROM ledger_entries WHERE club_id = $1 ORDER BY 1',
      [DEMO_CLUB_ID],
    );
    expect(kinds.map(({ kind }) => kind)).toEqual(['flight', 'receipt', 'reversal']);
  });

  it('reads its weather at any hour of any day', () => {
    for (const start of ['2027-02-27T00:10:00Z', '2026-12-31T23:40:00Z', '2028-02-29T05:30:00Z'])
      for (let hour = 0; hour < 48; hour += 1) {
        const now = plusSeconds(start, hour * 3600);
        for (const { kind, text, place } of reportTexts(toSeconds(now))) {
          const report = readReport(kind, text, now);
          expect({ text, airfield: report.airfield, unread: report.unread }).toEqual({
            ...{ text, airfield: place.code, unread: [] },
          });
          expect(report.issuedAt <= now).toBe(true);
          if (kind === 'taf')
            expect([report.from! <= plusSeconds(now, 1800), report.to! > now]).toEqual([true, true]);
        }
      }
  });
});

describe('over HTTP, with the printed sign-in data', () => {
  let app: NestExpressApplication;

  beforeAll(async () => {
    const config = new AppConfig({ ...db.config, trustProxy: 1 });
    const testing = await Test.createTestingModule({ imports: [AppModule.register(config, db.database)] })
      .overrideProvider(Clock)
      .useValue(new FixedClock(ASOF))
      .compile();
    app = configureApp(testing.createNestApplication<NestExpressApplication>(APP_OPTIONS), config);
    await app.listen(0, '127.0.0.1');
  });
  afterAll(() => app.close());

  it.each([
    ['luis', 'yes'],
    ['walter', 'yes-with-conditions'],
    ['olga', 'dual-only'],
    ['rex', 'ask-officer'],
    ['roscoe', 'no'],
  ])(
    '%s signs in, asks, and is told "%s"',
    async (key, answer) => {
      const one = triesAsOf(ASOF).find((each) => each.person.story.key === key && each.answer === answer)!;
      const signedIn = await request(app.getHttpServer())
        .post('/api/v1/auth/sign-in')
        .send({ club: DEMO_SLUG, email: one.person.email, password: DEMO_PASSWORD })
        .expect(200);
      const asked = await request(app.getHttpServer())
        .post('/api/v1/decisions')
        .set('Authorization', `Bearer ${(signedIn.body as { accessToken: string }).accessToken}`)
        .send({ ...one.ask, aircraftIds: [aircraftBy(one.aircraft).id] });
      expect(asked.status).toBeLessThan(300);
      const text = JSON.stringify(asked.body);
      const [first] = (asked.body as { decisions: Decision[] }).decisions;
      expect({ text: first ? '' : text, answer: first?.answer }).toEqual({ text: '', answer });
    },
    60_000,
  );
});

describe('later starts', () => {
  it('keep the club of the same day, with what was changed in it', async () => {
    await sql(`UPDATE members SET name = 'Changed Name' WHERE club_id = $1 AND name = 'Luis Amaya'`, [
      DEMO_CLUB_ID,
    ]);
    const before = await census(DEMO_CLUB_ID);
    const loaded = await loadDemo(db.database, db.config, '2027-02-28T02:00:00Z');
    expect(loaded).toEqual({ outcome: 'kept', before: '2027-02-27', bookings: null });
    expect(await census(DEMO_CLUB_ID)).toEqual(before);
  });

  it(
    'make it anew on another day, and touch no other club',
    async () => {
      const other = await census(OTHER_CLUB);
      expect(Object.values(other).some((count) => count > 0)).toBe(true);
      const loaded = await loadDemo(db.database, db.config, NEXT_DAY);
      expect(loaded).toMatchObject({ outcome: 'made-anew', before: '2027-02-27' });
      expect(await census(OTHER_CLUB)).toEqual(other);
      expect(await sql(`SELECT 1 FROM members WHERE name = 'Changed Name'`)).toHaveLength(0);
      const counts = await census(DEMO_CLUB_ID);
      expect(counts).toMatchObject({
        ...{ clubs: 1, members: 60 },
        decisions: loaded.bookings!.booked + (await flown()) + OUT,
      });
      // Nothing of the day before is left, and what guards the records works again.
      const [asleep] = await sql<{ count: string }>(
        `SELECT count(*) FROM pg_trigger WHERE NOT tgisinternal AND tgenabled = 'D'`,
      );
      expect(Number(asleep!.count)).toBe(0);
      await expect(sql('DELETE FROM decisions WHERE club_id = $1', [DEMO_CLUB_ID])).rejects.toMatchObject({
        constraint: 'decisions_append_only',
      });
    },
    LONG,
  );
});
