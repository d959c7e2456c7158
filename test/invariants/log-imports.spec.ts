/** Imports of logs: what the database refuses when the service is gone round. */
import { createTestDatabase, type TestDatabase } from '../../src/platform/database/testing.js';
import { newId } from '../../src/platform/ids.js';
import { refusal, type Row } from '../support/refusals.js';
import { constraintsToProve, insertRow, plantClub, rowRefusal } from './refusals.js';

const TABLE = 'log_imports';
const SHA = 'a'.repeat(64);

interface Scene {
  clubId: string;
  memberId: string;
  importId: string;
}

let db: TestDatabase;
let own: Scene;
let foreign: Scene;

const imported = (of: Scene, more: Row = {}): Row => ({
  ...{ club_id: of.clubId, id: newId(), member_id: of.memberId, imported_by: of.memberId },
  ...{ file_sha256: SHA, headings_sha256: SHA, choices: '{}', file_rows: 10, entries: 6 },
  ...{ unreadable_rows: 2, repeated_rows: 1, first_flown_on: '2026-01-01', last_flown_on: '2026-02-01' },
  ...more,
});
const entry = (of: Scene, more: Row = {}): Row => ({
  ...{ club_id: of.clubId, id: newId(), member_id: of.memberId, aircraft_words: 'Sparrow 150', role: 'solo' },
  ...{ category: 'airplane', class: 'single-engine-land', tailwheel: false, sole_manipulator: true },
  ...{ departed_at: '2026-03-01T10:00:00Z', arrived_at: '2026-03-01T11:00:00Z', flown_on: '2026-03-01' },
  ...{ from_airfield: 'XLF', to_airfield: 'XLF', takeoffs: 1, landings: 1, full_stop_landings: 1 },
  ...{ night_takeoffs: 0, night_full_stop_landings: 0, total_tenths: 10 },
  ...more,
});

beforeAll(async () => {
  db = await createTestDatabase();
  const plant = async (): Promise<Scene> => {
    const { clubId, memberId } = await plantClub(db);
    const scene = { clubId, memberId, importId: newId() };
    await db.tenantDb.run(clubId, (em) => insertRow(em, TABLE, imported(scene, { id: scene.importId })));
    return scene;
  };
  own = await plant();
  foreign = await plant();
}, 60_000);
afterAll(() => db.drop());

const CASES: [constraint: string, wrong: (of: Scene) => Row][] = [
  ['log_imports_file_chk', (of) => imported(of, { file_sha256: 'A' })],
  ['log_imports_headings_chk', (of) => imported(of, { headings_sha256: '' })],
  ['log_imports_choices_chk', (of) => imported(of, { choices: '[]' })],
  ['log_imports_rows_chk', (of) => imported(of, { file_rows: 20_001 })],
  ['log_imports_entries_chk', (of) => imported(of, { entries: 0 })],
  ['log_imports_unreadable_chk', (of) => imported(of, { unreadable_rows: -1 })],
  ['log_imports_repeated_chk', (of) => imported(of, { repeated_rows: -1 })],
  ['log_imports_counts_chk', (of) => imported(of, { entries: 8 })],
  ['log_imports_span_chk', (of) => imported(of, { last_flown_on: '2025-12-31' })],
  ['log_imports_back_chk', (of) => imported(of, { taken_back_at: '2026-03-01T00:00:00Z' })],
  ['log_imports_member_fk', (of) => imported(of, { member_id: foreign.memberId })],
  ['log_imports_by_fk', (of) => imported(of, { imported_by: foreign.memberId })],
  [
    'log_imports_back_fk',
    (of) => imported(of, { taken_back_at: '2026-03-01T00:00:00Z', taken_back_by: foreign.memberId }),
  ],
];
const stateFor = (constraint: string) => (constraint.endsWith('_fk') ? '23503' : '23514');

it.each(CASES)('%s', async (constraint, wrong) => {
  expect(await rowRefusal(db, own.clubId, TABLE, wrong(own))).toEqual({
    ...{ state: stateFor(constraint), constraint },
  });
});

it('each time for the constraint alone: a good row passes', async () => {
  expect(await rowRefusal(db, own.clubId, TABLE, imported(own))).toBeNull();
});

it('has a case for every constraint of the table; log_imports_owner_uq only carries references', async () => {
  const proven = [
    ...CASES.map(([constraint]) => constraint),
    'log_imports_owner_uq',
    'log_imports_append_only',
  ];
  const needed = await constraintsToProve(db, [TABLE]);
  for (const constraint of needed) expect(proven).toContain(constraint);
  expect(needed.length).toBeGreaterThan(12);
});

it('log_entries_import_fk: an entry came with an import into the same log', async () => {
  const of = (more: Row) => rowRefusal(db, own.clubId, 'log_entries', entry(own, more));
  const refused = { state: '23503', constraint: 'log_entries_import_fk' };
  expect(await of({ import_id: foreign.importId })).toEqual(refused);
  expect(await of({ import_id: newId() })).toEqual(refused);
  expect(await of({ import_id: own.importId })).toBeNull();
});

it('log_entries_times_chk: only a flight from a file is without its times', async () => {
  const of = (more: Row) => rowRefusal(db, own.clubId, 'log_entries', entry(own, more));
  expect(await of({ times_known: false })).toEqual({ state: '23514', constraint: 'log_entries_times_chk' });
  expect(await of({ times_known: false, import_id: own.importId })).toBeNull();
});

it('log_imports_append_only: taken back once, not changed otherwise, never deleted', async () => {
  const back = `taken_back_at = '2026-03-02T00:00:00Z', taken_back_by = '${own.memberId}'`;
  const set = (what: string) => `UPDATE ${TABLE} SET ${what} WHERE club_id = '${own.clubId}'`;
  expect(await refusal(db, own.clubId, set('entries = 5'))).toEqual({
    state: '42501',
    constraint: undefined,
  });
  expect(await refusal(db, own.clubId, `DELETE FROM ${TABLE}`)).toEqual({
    state: '42501',
    constraint: undefined,
  });
  const kept = { constraint: 'log_imports_append_only' };
  await expect(db.admin.query(set(`entries = 5, ${back}`))).rejects.toMatchObject(kept);
  await expect(db.admin.query(`DELETE FROM ${TABLE}`)).rejects.toMatchObject(kept);
  expect(await refusal(db, own.clubId, set(back))).toBeNull();
  expect(await refusal(db, own.clubId, set(back))).toMatchObject(kept);
  expect(await refusal(db, own.clubId, set('taken_back_at = NULL, taken_back_by = NULL'))).toMatchObject(
    kept,
  );
});

it("shows and takes nothing of another club's", async () => {
  await db.tenantDb.run(own.clubId, async (em) => {
    const seen: unknown[] = await em.query(`SELECT 1 FROM ${TABLE} WHERE club_id = $1`, [foreign.clubId]);
    expect(seen).toEqual([]);
  });
  expect(await refusal(db, own.clubId, ...insertionOf(imported(foreign)))).toMatchObject({ state: '42501' });
});
const insertionOf = (row: Row): [string, unknown[]] => [
  `INSERT INTO ${TABLE} (${Object.keys(row).join(', ')}) VALUES (${Object.keys(row).map((_name, at) => `$${at + 1}`)})`,
  Object.values(row),
];
