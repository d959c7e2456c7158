/** Practice records: what the database refuses when the service is gone round. */
import { createTestDatabase, type TestDatabase } from '../../src/platform/database/testing.js';
import { newId } from '../../src/platform/ids.js';
import { refusal, type Row } from '../support/refusals.js';
import { constraintsToProve, insertRow, plantClub, rowRefusal } from './refusals.js';

const TABLE = 'practice_records';
const SHA = 'a'.repeat(64);

interface Scene {
  clubId: string;
  memberId: string;
  teacherId: string;
  ownId: string;
  signedId: string;
  correctedId: string;
  withdrawnId: string;
  /** Of the teacher. */
  logId: string;
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
  const ids: Scene = {
    ...{ clubId, memberId, teacherId: newId(), ownId: newId(), signedId: newId() },
    ...{ correctedId: newId(), withdrawnId: newId(), logId: newId() },
  };
  await db.tenantDb.run(clubId, async (em) => {
    await insertRow(em, 'members', {
      ...{ club_id: clubId, id: ids.teacherId, name: 'Tess Teacher', email: `${newId()}@larkfield.example` },
      ...{ standing_since: '2026-01-01', membership_from: '2026-01-01' },
    });
    await insertRow(em, 'log_entries', {
      ...{ club_id: clubId, id: ids.logId, member_id: ids.teacherId, aircraft_words: 'Sparrow 150' },
      ...{
        category: 'airplane',
        class: 'single-engine-land',
        tailwheel: false,
        role: 'solo',
        sole_manipulator: true,
      },
      ...{ departed_at: '2026-03-01T10:00:00Z', arrived_at: '2026-03-01T11:00:00Z', flown_on: '2026-03-01' },
      ...{ from_airfield: 'XLF', to_airfield: 'XLF', takeoffs: 1, landings: 1, full_stop_landings: 1 },
      ...{ night_takeoffs: 0, night_full_stop_landings: 0, total_tenths: 10 },
    });
    await insertRow(em, TABLE, record(ids, { id: ids.ownId, track_sha256: SHA, track_event: 'landing-1' }));
    await insertRow(em, TABLE, record(ids, { id: ids.signedId, ...signed(ids) }));
    await insertRow(em, TABLE, record(ids, { id: ids.correctedId }));
    await insertRow(
      em,
      TABLE,
      record(ids, {
        id: ids.withdrawnId,
        corrects: ids.correctedId,
        because: 'Another day',
        withdraws: true,
      }),
    );
  });
  return ids;
}

const VERDICT = { status: 'judged', within: true };
const record = (of: Scene, more: Row = {}): Row => ({
  ...{ club_id: of.clubId, id: newId(), member_id: of.memberId, recorded_by: of.memberId, seen_by: 'self' },
  ...{ flown_on: '2026-03-01', manoeuvre: 'steep_turn', level: 'private', measured: '{}', within: true },
  ...{ verdict: JSON.stringify(VERDICT) },
  ...more,
});
const signed = (of: Scene): Row => ({
  ...{ seen_by: 'instructor', instructor_id: of.teacherId, recorded_by: of.teacherId },
});
const correction = (of: Scene, corrects: string, more: Row = {}): Row =>
  record(of, { corrects, because: 'Another day', ...more });

const CASES: [constraint: string, wrong: (of: Scene) => Row][] = [
  ['practice_records_manoeuvre_chk', (of) => record(of, { manoeuvre: 'loop' })],
  ['practice_records_crosswind_chk', (of) => record(of, { crosswind_kt: -1 })],
  ['practice_records_gust_chk', (of) => record(of, { gust_spread_kt: 81 })],
  ['practice_records_runway_chk', (of) => record(of, { runway_ft: 99 })],
  [
    'practice_records_equipment_chk',
    (of) => record(of, { equipment: Array.from({ length: 21 }, () => 'x') }),
  ],
  ['practice_records_measured_chk', (of) => record(of, { measured: '{"bankDeg": {"least": 3, "most": 2}}' })],
  ['practice_records_level_chk', (of) => record(of, { level: 'student' })],
  ['practice_records_note_chk', (of) => record(of, { note: 'x'.repeat(2001) })],
  ['practice_records_track_chk', (of) => record(of, { track_sha256: 'x', track_event: 'landing-1' })],
  ['practice_records_event_chk', (of) => record(of, { track_sha256: SHA, track_event: 'landing' })],
  ['practice_records_because_chk', (of) => correction(of, of.ownId, { because: 'no' })],
  ['practice_records_instructor_chk', (of) => record(of, { instructor_id: of.teacherId })],
  ['practice_records_own_chk', (of) => record(of, { ...signed(of), instructor_id: of.memberId })],
  ['practice_records_pair_chk', (of) => record(of, { track_sha256: SHA })],
  ['practice_records_itself_chk', (of) => correction(of, of.ownId, { id: of.ownId })],
  ['practice_records_correction_chk', (of) => record(of, { withdraws: true })],
  ['practice_records_verdict_chk', (of) => record(of, { within: null })],
  ['practice_records_corrects_uq', (of) => correction(of, of.correctedId)],
  ['practice_records_track_uq', (of) => record(of, { track_sha256: SHA, track_event: 'landing-1' })],
  ['practice_records_member_fk', (of) => record(of, { member_id: foreign.memberId })],
  ['practice_records_instructor_fk', (of) => record(of, { ...signed(of), instructor_id: foreign.memberId })],
  ['practice_records_recorder_fk', (of) => record(of, { recorded_by: foreign.memberId })],
  ['practice_records_log_fk', (of) => record(of, { log_entry_id: of.logId })],
  ['practice_records_corrects_fk', (of) => correction(of, foreign.ownId)],
];
const stateFor = (constraint: string) =>
  constraint.endsWith('_uq') ? '23505' : constraint.endsWith('_fk') ? '23503' : '23514';

it.each(CASES)('%s', async (constraint, wrong) => {
  expect(await rowRefusal(db, own.clubId, TABLE, wrong(own))).toEqual({
    state: stateFor(constraint),
    constraint,
  });
});

it('practice_records_seen_chk: by the pilot or an instructor, nobody else', async () => {
  // The shape of who signed refuses it as well, and PostgreSQL names that one first.
  await db.admin.query(
    'ALTER TABLE practice_records DROP CONSTRAINT practice_records_instructor_chk, DROP CONSTRAINT practice_records_own_chk',
  );
  const wrong = record(own, { seen_by: 'friend' });
  expect(await rowRefusal(db, own.clubId, TABLE, wrong)).toEqual({
    ...{ state: '23514', constraint: 'practice_records_seen_chk' },
  });
});

it('practice_records_signed_chk: what an instructor signed is corrected under an instructor, what is withdrawn not at all', async () => {
  const named = { state: '23514', constraint: 'practice_records_signed_chk' };
  expect(await rowRefusal(db, own.clubId, TABLE, correction(own, own.signedId))).toEqual(named);
  expect(await rowRefusal(db, own.clubId, TABLE, correction(own, own.withdrawnId))).toEqual(named);
  expect(await rowRefusal(db, own.clubId, TABLE, correction(own, own.signedId, signed(own)))).toBeNull();
});

it('log_entries_owner_uq and practice_records_owner_uq only carry references: the key says more', async () => {
  expect(await rowRefusal(db, own.clubId, TABLE, record(own, { id: own.ownId }))).toMatchObject({
    state: '23505',
  });
});

it('has a case for every constraint of the table', async () => {
  const proven = [...CASES.map(([constraint]) => constraint), 'practice_records_owner_uq'];
  const needed = await constraintsToProve(db, [TABLE]);
  for (const constraint of needed)
    expect(proven.concat('practice_records_seen_chk', 'practice_records_signed_chk')).toContain(constraint);
  expect(needed.length).toBeGreaterThan(20);
});

it('practice_records_append_only: a record is never edited', async () => {
  const sql = "UPDATE practice_records SET note = 'better'";
  expect(await refusal(db, own.clubId, sql)).toEqual({ state: '42501', constraint: undefined });
  await expect(db.admin.query(sql)).rejects.toMatchObject({ constraint: 'practice_records_append_only' });
});

it('practice_records_append_only: a record is not deleted but by the erasure of its member', async () => {
  const sql = `DELETE FROM practice_records WHERE club_id = '${own.clubId}'`;
  expect(await refusal(db, own.clubId, sql)).toMatchObject({ constraint: 'practice_records_append_only' });
});

it("shows and takes nothing of another club's", async () => {
  await db.tenantDb.run(own.clubId, async (em) => {
    const count = async (clubId: string): Promise<number> =>
      (await em.query(`SELECT count(*)::int AS n FROM practice_records WHERE club_id = $1`, [clubId]))[0].n;
    expect(await count(foreign.clubId)).toBe(0);
    expect(await count(own.clubId)).toBeGreaterThan(0);
  });
  expect(await rowRefusal(db, own.clubId, TABLE, record(foreign))).toMatchObject({ state: '42501' });
});
