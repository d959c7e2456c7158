/** Personal limits: what the database refuses when the service is gone round. */
import { createTestDatabase, type TestDatabase } from '../../src/platform/database/testing.js';
import { newId } from '../../src/platform/ids.js';
import { refusal, type Row } from '../support/refusals.js';
import { constraintsToProve, insertRow, plantClub, rowRefusal } from './refusals.js';

const TABLE = 'personal_limits';

interface Scene {
  clubId: string;
  memberId: string;
  teacherId: string;
}

let db: TestDatabase;
let own: Scene;
let foreign: Scene;

beforeAll(async () => {
  db = await createTestDatabase();
  own = await plant();
  foreign = await plant();
}, 60_000);
afterAll(() => db.drop());

async function plant(): Promise<Scene> {
  const { clubId, memberId } = await plantClub(db);
  const scene: Scene = { clubId, memberId, teacherId: newId() };
  await db.tenantDb.run(clubId, async (em) => {
    await insertRow(em, 'members', {
      ...{
        club_id: clubId,
        id: scene.teacherId,
        name: 'Tess Teacher',
        email: `${newId()}@larkfield.example`,
      },
      ...{ standing_since: '2026-01-01', membership_from: '2026-01-01' },
    });
    await insertRow(em, TABLE, limits(scene));
  });
  return scene;
}

const limits = (of: Scene, more: Row = {}): Row => ({
  ...{ club_id: of.clubId, id: newId(), member_id: of.memberId, set_by: of.memberId },
  ...{ valid_from: '2026-03-01', wind_kt: 20, night: false },
  ...more,
});

const CASES: [constraint: string, wrong: (of: Scene) => Row][] = [
  ['personal_limits_wind_chk', (of) => limits(of, { wind_kt: 81 })],
  ['personal_limits_crosswind_chk', (of) => limits(of, { crosswind_kt: -1 })],
  ['personal_limits_gust_chk', (of) => limits(of, { gust_spread_kt: 81 })],
  ['personal_limits_ceiling_day_chk', (of) => limits(of, { ceiling_day_ft_agl: 20_001 })],
  ['personal_limits_ceiling_night_chk', (of) => limits(of, { ceiling_night_ft_agl: -1 })],
  ['personal_limits_visibility_day_chk', (of) => limits(of, { visibility_day_sm: 50.1 })],
  ['personal_limits_visibility_night_chk', (of) => limits(of, { visibility_night_sm: -0.1 })],
  ['personal_limits_runway_chk', (of) => limits(of, { runway_ft: 99 })],
  ['personal_limits_note_chk', (of) => limits(of, { note: 'x'.repeat(2001) })],
  ['personal_limits_through_chk', (of) => limits(of, { binds_through: '2026-04-01' })],
  ['personal_limits_through_chk', (of) => limits(of, { set_by: of.teacherId, binds_through: '2026-02-28' })],
  ['personal_limits_member_fk', (of) => limits(of, { member_id: foreign.memberId })],
  ['personal_limits_setter_fk', (of) => limits(of, { set_by: foreign.memberId })],
];

it.each(CASES)('%s', async (constraint, wrong) => {
  const state = constraint.endsWith('_fk') ? '23503' : '23514';
  expect(await rowRefusal(db, own.clubId, TABLE, wrong(own))).toEqual({ state, constraint });
});

it('personal_limits_through_chk: an instructor’s bind through a day, their first one too', async () => {
  const bound = limits(own, { set_by: own.teacherId, binds_through: '2026-03-01' });
  expect(await rowRefusal(db, own.clubId, TABLE, bound)).toBeNull();
});

it('has a case for every constraint of the table', async () => {
  const needed = await constraintsToProve(db, [TABLE]);
  expect([...new Set(CASES.map(([constraint]) => constraint))].sort()).toEqual([...needed].sort());
});

it('personal_limits_append_only: limits on record are never edited', async () => {
  const sql = "UPDATE personal_limits SET note = 'better'";
  expect(await refusal(db, own.clubId, sql)).toEqual({ state: '42501', constraint: undefined });
  await expect(db.admin.query(sql)).rejects.toMatchObject({ constraint: 'personal_limits_append_only' });
});

it('personal_limits_append_only: they are not deleted but by the erasure of their member', async () => {
  const sql = `DELETE FROM personal_limits WHERE club_id = '${own.clubId}'`;
  expect(await refusal(db, own.clubId, sql)).toMatchObject({ constraint: 'personal_limits_append_only' });
});

it('keeps the order in which rows were written, within one transaction too', async () => {
  const [first, second] = [newId(), newId()];
  await db.tenantDb.run(own.clubId, async (em) => {
    await insertRow(em, TABLE, limits(own, { id: first }));
    await insertRow(em, TABLE, limits(own, { id: second }));
    const rows: { id: string }[] = await em.query(
      'SELECT id FROM personal_limits WHERE id = ANY ($1) ORDER BY recorded_at',
      [[first, second]],
    );
    expect(rows.map(({ id }) => id)).toEqual([first, second]);
  });
});

it("shows and takes nothing of another club's", async () => {
  await db.tenantDb.run(own.clubId, async (em) => {
    const count = async (clubId: string): Promise<number> =>
      (await em.query(`SELECT count(*)::int AS n FROM personal_limits WHERE club_id = $1`, [clubId]))[0].n;
    expect(await count(foreign.clubId)).toBe(0);
    expect(await count(own.clubId)).toBeGreaterThan(0);
  });
  expect(await rowRefusal(db, own.clubId, TABLE, limits(foreign))).toMatchObject({ state: '42501' });
});
