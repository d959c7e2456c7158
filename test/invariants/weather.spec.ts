/** Weather reports: what the database refuses when the service is gone round. */
import { createTestDatabase, type TestDatabase } from '../../src/platform/database/testing.js';
import { newId } from '../../src/platform/ids.js';
import { refusal, type Row } from '../support/refusals.js';
import { fleetRows } from './fleet-rows.js';
import { constraintsToProve, fleetIds, insertRow, plantClub, rowRefusal } from './refusals.js';

const TABLE = 'weather_reports';

interface Scene {
  clubId: string;
  memberId: string;
  airfieldId: string;
}

let db: TestDatabase;
let own: Scene;
let foreign: Scene;

const report = (of: Scene, more: Row = {}): Row => ({
  ...{ club_id: of.clubId, id: newId(), airfield_id: of.airfieldId, kind: 'metar' },
  ...{
    text: `METAR XQLF 011953Z ${newId()}`,
    issued_at: '2026-03-01T19:53:00Z',
    obtained_at: '2026-03-01T20:00:00Z',
  },
  ...more,
});
const forecast = (of: Scene, more: Row = {}): Row =>
  report(of, { kind: 'taf', valid_from: '2026-03-01T18:00:00Z', valid_to: '2026-03-02T18:00:00Z', ...more });
const SAME = 'METAR XQLF 011953Z 09008KT 10SM CLR';

beforeAll(async () => {
  db = await createTestDatabase();
  const plant = async (): Promise<Scene> => {
    const planted = await plantClub(db);
    const scene = { ...planted, airfieldId: newId() };
    const { airfields } = fleetRows(fleetIds(planted));
    await db.tenantDb.run(scene.clubId, async (em) => {
      await insertRow(em, 'airfields', airfields({ id: scene.airfieldId }));
      await insertRow(em, TABLE, report(scene, { text: SAME }));
      await insertRow(em, TABLE, forecast(scene));
    });
    return scene;
  };
  own = await plant();
  foreign = await plant();
}, 60_000);
afterAll(() => db.drop());

const CASES: [constraint: string, wrong: (of: Scene) => Row][] = [
  ['weather_reports_kind_chk', (of) => report(of, { kind: 'sigmet' })],
  ['weather_reports_text_chk', (of) => report(of, { text: ' ' })],
  ['weather_reports_text_chk', (of) => report(of, { text: 'x'.repeat(2001) })],
  ['weather_reports_source_chk', (of) => report(of, { member_id: of.memberId })],
  ['weather_reports_source_chk', (of) => report(of, { pasted_by: of.memberId })],
  ['weather_reports_span_chk', (of) => report(of, { valid_from: '2026-03-01T18:00:00Z' })],
  ['weather_reports_span_chk', (of) => forecast(of, { valid_to: null })],
  ['weather_reports_span_chk', (of) => forecast(of, { valid_to: '2026-03-01T18:00:00Z' })],
  ['weather_reports_airfield_fk', (of) => report(of, { airfield_id: foreign.airfieldId })],
  ['weather_reports_member_fk', (of) => report(of, { member_id: foreign.memberId, pasted_by: of.memberId })],
  ['weather_reports_paster_fk', (of) => report(of, { member_id: of.memberId, pasted_by: foreign.memberId })],
  ['weather_reports_once', (of) => report(of, { text: SAME })],
];

it.each(CASES)('%s', async (constraint, wrong) => {
  const state = constraint.endsWith('_fk') ? '23503' : constraint.endsWith('_once') ? '23505' : '23514';
  expect(await rowRefusal(db, own.clubId, TABLE, wrong(own))).toEqual({ state, constraint });
});

it('has a case for every constraint of the table', async () => {
  const needed = await constraintsToProve(db, [TABLE]);
  expect([...new Set(CASES.map(([constraint]) => constraint))].sort()).toEqual([...needed].sort());
});

it('weather_fetches_airfield_fk, weather_fetches_pkey: one time for each airfield of the club', async () => {
  const fetched = (of: Scene): Row => ({
    ...{ id: undefined, club_id: own.clubId, airfield_id: of.airfieldId, fetched_at: '2026-03-01T20:00:00Z' },
  });
  const table = 'weather_fetches';
  expect(await rowRefusal(db, own.clubId, table, fetched(foreign))).toMatchObject({
    constraint: 'weather_fetches_airfield_fk',
  });
  expect(await rowRefusal(db, own.clubId, table, fetched(own))).toBeNull();
  expect(await rowRefusal(db, own.clubId, table, fetched(own))).toMatchObject({
    constraint: 'weather_fetches_pkey',
  });
  const proven = ['weather_fetches_airfield_fk', 'weather_fetches_pkey'];
  expect((await constraintsToProve(db, [table])).filter((one) => !proven.includes(one))).toEqual([]);
});

it('weather_reports_kept_chk: a text stays as it was written', async () => {
  const sql = `UPDATE weather_reports SET text = 'METAR XQLF 011953Z CAVOK' WHERE club_id = '${own.clubId}'`;
  expect(await refusal(db, own.clubId, sql)).toMatchObject({ constraint: 'weather_reports_kept_chk' });
});

it('a forecast that was cancelled tells no span', async () => {
  expect(
    await rowRefusal(db, own.clubId, TABLE, forecast(own, { valid_from: null, valid_to: null })),
  ).toBeNull();
});

it('a report that comes in is noted for whoever flies there', async () => {
  await db.tenantDb.run(own.clubId, async (em) => {
    const noted = async (): Promise<number> =>
      (
        await em.query(
          'SELECT count(*)::int AS n FROM fact_changes WHERE subject = $1 AND noted_by = pg_current_xact_id()',
          [`airfield:${own.airfieldId}`],
        )
      )[0].n;
    expect(await noted()).toBe(0);
    await insertRow(em, TABLE, report(own));
    expect(await noted()).toBe(1);
  });
});

it('goes with its airfield', async () => {
  const gone = newId();
  const { airfields } = fleetRows(fleetIds(own));
  await db.tenantDb.run(own.clubId, async (em) => {
    await insertRow(em, 'airfields', airfields({ id: gone, code: 'XQGN' }));
    await insertRow(em, TABLE, report({ ...own, airfieldId: gone }));
    await em.query('DELETE FROM airfields WHERE id = $1', [gone]);
    expect(await em.query('SELECT 1 FROM weather_reports WHERE airfield_id = $1', [gone])).toEqual([]);
  });
});

it("shows and takes nothing of another club's", async () => {
  await db.tenantDb.run(own.clubId, async (em) => {
    const count = async (clubId: string): Promise<number> =>
      (await em.query('SELECT count(*)::int AS n FROM weather_reports WHERE club_id = $1', [clubId]))[0].n;
    expect(await count(foreign.clubId)).toBe(0);
    expect(await count(own.clubId)).toBeGreaterThan(0);
  });
  expect(await rowRefusal(db, own.clubId, TABLE, report(foreign))).toMatchObject({ state: '42501' });
});
