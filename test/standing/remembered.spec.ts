/**
 * What is remembered of facts is what the tables say, whatever happened in between: through random events, through transactions that
 * overlap or are taken back, and through time alone. `REMEMBERED_EVENTS` sets how many things happen, `PROPERTY_SEED` which.
 */
import type { EntityManager } from 'typeorm';
import { forgetOldMarks } from '../../src/platform/database/old-marks.js';
import {
  gatherAnew,
  gatherRemembered,
  type GatheredFacts,
} from '../../src/decisions/gather/remember/gather-remembered.js';
import { readMarks } from '../../src/decisions/gather/remember/marks.sql.js';
import { TenantDb } from '../../src/platform/database/tenant.js';
import { newId } from '../../src/platform/ids.js';
import { NOW, startApi, type Api } from '../support/api.js';
import { insertInto, readyClub, tomorrow } from '../support/ready-club.js';
import { book, Draw, happen, numbers, plantScene, type Scene } from './events.js';

const HAPPENINGS = Number(process.env['REMEMBERED_EVENTS'] ?? 400);
const SEED = Number(process.env['PROPERTY_SEED'] ?? 38);

let api: Api;
let scene: Scene;
beforeAll(async () => {
  api = await startApi();
  scene = await plantScene(api);
}, 120_000);
beforeEach(() => api.clock.set(NOW));
afterAll(() => api.stop());

const inClub = <T>(work: (em: EntityManager) => Promise<T>): Promise<T> =>
  api.app.get(TenantDb).run(scene.ready.club.clubId, work);
const asked = (more: { memberIds?: string[]; aircraftIds?: string[] | null } = {}) => ({
  ...{ memberIds: [scene.pilots[0]!.memberId], aircraftIds: [scene.aircraftIds[0]!] as string[] | null },
  ...{ knownAt: api.clock.now(), exceptBookingId: null, ...more },
});
/** Facts without when they were read. */
function told({ club, people, aircraft }: GatheredFacts): object {
  const { snapshot: _snapshot, settled: _settled, standsUntil: _until, ...rest } = club;
  return {
    club: rest,
    people,
    aircraft: aircraft.map(({ homeAirfieldId, facts }) => ({ homeAirfieldId, facts })),
  };
}
/** Asks memory and tables in one transaction, and gives both. */
async function bothIn(em: EntityManager, of: ReturnType<typeof asked>): Promise<[object, object]> {
  const remembered = await gatherRemembered(em, of);
  return [told(remembered), told(await gatherAnew(em, of))];
}
async function expectTrue(of = asked()): Promise<void> {
  const [remembered, anew] = await inClub((em) => bothIn(em, of));
  expect(remembered).toEqual(anew);
}
const remembered = (of = asked()): Promise<GatheredFacts> => inClub((em) => gatherRemembered(em, of));
const clubId = () => scene.ready.club.clubId;

it(`is what the tables say, through ${HAPPENINGS} events`, async () => {
  const draw = new Draw(numbers(SEED));
  for (let day = 1; day <= 10; day += 1) await book(scene, draw, day);
  const again = { people: 0, aircraft: 0, club: 0, of: 0 };
  const last = new Map<string, object>();
  for (let n = 1; n <= HAPPENINGS; n += 1) {
    await happen(scene, draw);
    const memberIds = [...new Set([draw.one(scene.pilots).memberId, draw.one(scene.pilots).memberId])];
    const some = [draw.one(scene.aircraftIds), draw.one(scene.aircraftIds)];
    const of = asked({ memberIds, aircraftIds: draw.one([null, some, [some[0]!]]) });
    await inClub(async (em) => {
      const facts = await gatherRemembered(em, of);
      expect({ n, ...told(facts) }).toEqual({ n, ...told(await gatherAnew(em, of)) });
      again.of += 1;
      if (last.get('club') === facts.club) again.club += 1;
      last.set('club', facts.club);
      for (const { facts: plane } of facts.aircraft) {
        if (last.get(plane.id) === plane) again.aircraft += 1;
        last.set(plane.id, plane);
      }
      for (const [id, person] of Object.entries(facts.people)) {
        if (last.get(id) === person) again.people += 1;
        last.set(id, person);
      }
    });
  }
  console.info(`remembered: ${JSON.stringify(again)}`);
  // Much of it was remembered, or nothing was tried.
  expect(Math.min(again.club, again.people, again.aircraft)).toBeGreaterThan(HAPPENINGS / 10);
}, 600_000);

it('reads nothing but the marks where nothing changed', async () => {
  await remembered();
  const before = await remembered();
  const queries = api.countQueries();
  const facts = await remembered();
  // BEGIN, settings, marks, COMMIT.
  expect(await queries.stop()).toBe(4);
  expect(facts.people).toEqual(before.people);
  expect(facts.aircraft[0]).toBe(before.aircraft[0]);
});

describe('what others’ facts name', () => {
  const CHANGES: [what: string, change: () => Promise<unknown>][] = [
    [
      'who holds a reservation is called otherwise',
      () => api.sql("UPDATE members SET name = name || ' II' WHERE club_id = $1", [clubId()]),
    ],
    [
      'an aircraft has another registration',
      () =>
        api.sql("UPDATE aircraft SET registration = 'NX99Z' WHERE club_id = $1 AND id = $2", [
          clubId(),
          scene.aircraftIds[1],
        ]),
    ],
    [
      'a booking is of another aircraft',
      () =>
        api.sql(
          `UPDATE bookings SET aircraft_id = $2 WHERE club_id = $1 AND id = (SELECT booking_id FROM booking_people
             WHERE club_id = $1 AND member_id = $3 AND occupies AND lower(during) > $4::timestamptz ORDER BY booking_id LIMIT 1)`,
          [clubId(), scene.aircraftIds[3], scene.pilots[0]!.memberId, '2026-05-30T00:00:00Z'],
        ),
    ],
    [
      'a model that nobody has yet is retractable',
      () =>
        api.sql(
          `INSERT INTO aircraft_models SELECT (jsonb_populate_record(m, jsonb_build_object('id', $2::uuid,
             'make_model', 'Harrow Swift 200', 'retractable_gear', true))).* FROM aircraft_models m WHERE m.club_id = $1 LIMIT 1`,
          [clubId(), newId()],
        ),
    ],
    ['an aircraft joins the fleet', async () => void (await scene.ready.addAircraft('NX105B'))],
  ];
  beforeAll(async () => {
    const flight = { departs: '2026-06-01T15:00:00Z', arrives: '2026-06-01T16:00:00Z' };
    const terms = { validFrom: '2026-01-01', validThrough: '2027-01-01', source: 'Policy 7' };
    await scene.officer
      .post(`/aircraft/${scene.aircraftIds[0]}/insurance`, { ...terms, minimums: { retractableH: 10 } })
      .expect(201);
    await bookStraight(flight, scene.aircraftIds[2]!);
  });

  it.each(CHANGES)('%s', async (_what, change) => {
    const everything = asked({ memberIds: scene.pilots.map(({ memberId }) => memberId), aircraftIds: null });
    await remembered(everything);
    const before = told(await remembered(everything));
    await change();
    await expectTrue(everything);
    expect(told(await remembered(everything))).not.toEqual(before);
  });
});

describe('while others write', () => {
  const ground = (em: EntityManager) =>
    em.query(
      `INSERT INTO squawks (club_id, id, aircraft_id, title, state, reported_at, reported_by)
       VALUES (bellcrank_club(), $1, $2, 'Fuel leak', 'grounding', now(), $3)`,
      [newId(), scene.aircraftIds[0], scene.pilots[0]!.memberId],
    );

  it('sees what its own transaction changed, and forgets it when that is taken back', async () => {
    await remembered();
    const before = told(await remembered());
    const [inside, anew] = await inClub(async (em) => {
      await ground(em);
      return bothIn(em, asked());
    }).catch(() => [{}, {}]);
    expect(inside).toEqual(anew);
    expect(inside).not.toEqual(before);
    await api.sql("DELETE FROM squawks WHERE club_id = $1 AND title = 'Fuel leak'", [clubId()]);
    await remembered();
    const clean = told(await remembered());
    await expect(
      inClub(async (em) => {
        await ground(em);
        await gatherRemembered(em, asked());
        throw new Error('taken back');
      }),
    ).rejects.toThrow('taken back');
    expect(told(await remembered())).toEqual(clean);
    await expectTrue();
  });

  it('sees what was being written while it was gathered, once that is committed', async () => {
    let commit!: () => void;
    let wrote!: () => void;
    const written = new Promise<void>((resolve) => (wrote = resolve));
    const writing = inClub(async (em) => {
      await ground(em);
      wrote();
      await new Promise<void>((resolve) => (commit = resolve));
    });
    await written;
    // Gathered anew for want of the aircraft in memory, with the squawk not yet to be seen.
    await api.sql('UPDATE aircraft SET seats = seats + 1 WHERE club_id = $1 AND id = $2', [
      clubId(),
      scene.aircraftIds[0],
    ]);
    const during = await remembered();
    expect(JSON.stringify(during)).not.toContain('Fuel leak');
    expect(await remembered().then(({ aircraft }) => aircraft[0])).toBe(during.aircraft[0]);
    commit();
    await writing;
    expect(JSON.stringify(await remembered())).toContain('Fuel leak');
    await expectTrue();
  });

  // What any later transaction does: with it done, a snapshot lists the earlier ones that are still running.
  const another = () => api.sql('SELECT pg_current_xact_id()');
  const change = (em: EntityManager) =>
    em.query('UPDATE aircraft SET seats = seats + 1 WHERE id = $1', [scene.aircraftIds[0]]);

  it('sees what its own transaction wrote after gathering, once that is committed', async () => {
    // Whoever books locks a row, gathers, is judged and then writes, while others come and go.
    await inClub(change);
    const before = await inClub(async (em) => {
      await em.query('SELECT 1 FROM aircraft WHERE id = $1 FOR UPDATE', [scene.aircraftIds[0]]);
      await another();
      const facts = await gatherRemembered(em, asked());
      await change(em);
      return facts;
    });
    await expectTrue();
    expect((await remembered()).aircraft[0]).not.toEqual(before.aircraft[0]);
  });

  it('reads marks under a snapshot that lists its own transaction as running', async () => {
    const [snapshot, own] = await inClub(async (em) => {
      const [row]: [{ own: string }] = await em.query('SELECT pg_current_xact_id()::text AS own');
      await another();
      const marks = await readMarks(em, []);
      await change(em);
      return [marks.snapshot, row.own];
    });
    expect(snapshot.split(':')[2]?.split(',')).toContain(own);
    const { changed } = await inClub((em) => readMarks(em, [snapshot]));
    expect(changed.get(snapshot)).toContain(`aircraft:${scene.aircraftIds[0]}:type`);
  });

  it('is asked by many at once', async () => {
    const draw = new Draw(numbers(SEED));
    for (let round = 0; round < 5; round += 1) {
      const writing = happen(scene, draw);
      await Promise.all(Array.from({ length: 12 }, () => remembered()));
      await writing;
      await expectTrue();
    }
  });
});

describe('as time goes by', () => {
  it('a flight is over, a hold runs out, a day begins, and the clock is set back', async () => {
    const pilot = scene.pilots[1]!.memberId;
    const of = () => asked({ memberIds: [pilot], aircraftIds: [scene.aircraftIds[1]!] });
    await bookStraight(
      { departs: '2026-03-10T16:00:00Z', arrives: '2026-03-10T17:00:00Z' },
      scene.aircraftIds[1]!,
      pilot,
    );
    const at = async (now: string) => {
      api.clock.set(now);
      await expectTrue(of());
      return remembered(of());
    };
    const [before, over] = [await at('2026-03-10T16:59:59Z'), await at('2026-03-10T17:00:00Z')];
    expect(told(before)).not.toEqual(told(over));
    expect((await at('2026-03-10T17:30:00Z')).people[pilot]).toBe(over.people[pilot]);
    expect((await at('2026-03-11T00:00:00Z')).people[pilot]).not.toBe(over.people[pilot]);
    await at('2026-03-10T16:30:00Z');
    await at('2026-04-01T12:00:00Z');
  });
});

it('shows nobody the facts of another club', async () => {
  const other = await readyClub(api);
  await remembered();
  const facts = await api.app.get(TenantDb).run(other.club.clubId, (em) => gatherRemembered(em, asked()));
  expect([facts.people, facts.aircraft]).toEqual([{}, []]);
  expect(facts.club.airfields.map(({ id }) => id)).not.toEqual(
    (await remembered()).club.airfields.map(({ id }) => id),
  );
});

it('keeps marks for a day, longer than anything is remembered', async () => {
  const marks = () =>
    api.sql<{ n: number }>('SELECT count(*)::int AS n FROM fact_marks WHERE club_id = $1', [clubId()]);
  await api.sql("UPDATE fact_marks SET recorded_at = now() - interval '25 hours' WHERE club_id = $1", [
    clubId(),
  ]);
  await inClub((em) => em.query("UPDATE members SET name = name || '.' WHERE club_id = bellcrank_club()"));
  const [{ n: all }] = (await marks()) as [{ n: number }];
  await inClub(forgetOldMarks);
  const [{ n: left }] = (await marks()) as [{ n: number }];
  expect(left).toBeGreaterThan(0);
  expect(left).toBeLessThan(all);
});

/** Books past the service, for the flight's own sake. */
async function bookStraight(
  { departs, arrives }: { departs: string; arrives: string } = tomorrow,
  aircraftId = scene.aircraftIds[0]!,
  memberId = scene.pilots[0]!.memberId,
): Promise<void> {
  const { body } = await scene.pilots[0]!.post('/decisions', {
    ...tomorrow,
    purpose: 'solo',
    personsOnBoard: 1,
    aircraftIds: [aircraftId],
  }).expect(200);
  const insert = insertInto(api.sql, clubId());
  const during = `[${departs},${arrives})`;
  const id = newId();
  await insert('bookings', {
    ...{
      id,
      kind: 'flight',
      aircraft_id: aircraftId,
      member_id: memberId,
      during,
      expected_tenths: 10,
      request: {},
    },
    decision_id: (body as { decisions: [{ id: string }] }).decisions[0].id,
  });
  await insert('booking_people', {
    booking_id: id,
    member_id: memberId,
    role: 'pilot',
    during,
    occupies: true,
  });
}
