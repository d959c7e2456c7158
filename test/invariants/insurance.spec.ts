/** Insurance terms and checks of members: what the database refuses when the service is gone round. */
import { createTestDatabase, type TestDatabase } from '../../src/platform/database/testing.js';
import { newId } from '../../src/platform/ids.js';
import { expectWrittenOnce, refusal, type Row } from '../support/refusals.js';
import { type FleetIds } from './fleet-rows.js';
import {
  constraintsToProve,
  fleetIds,
  insertAircraft,
  insertRow,
  plantClub,
  rowRefusal,
} from './refusals.js';

const TABLES = ['insurance_terms', 'insurance_named_pilots', 'member_checks', 'member_check_voids'];

interface Scene extends FleetIds {
  officerId: string;
  termsId: string;
  checkId: string;
  voidedId: string;
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
  const of: Scene = {
    ...fleetIds({ clubId, memberId }),
    ...{ officerId: newId(), termsId: newId(), checkId: newId(), voidedId: newId() },
  };
  await db.tenantDb.run(clubId, async (em) => {
    await insertAircraft(em, of);
    await insertRow(em, 'members', {
      ...{ club_id: clubId, id: of.officerId, name: 'Ola Officer', email: `${newId()}@larkfield.example` },
      ...{ standing_since: '2026-01-01', membership_from: '2026-01-01' },
    });
    await insertRow(em, 'insurance_terms', terms(of, { id: of.termsId }));
    await insertRow(em, 'insurance_named_pilots', named(of));
    await insertRow(em, 'member_checks', check(of, { id: of.checkId }));
    await insertRow(em, 'member_checks', check(of, { id: of.voidedId }));
    await insertRow(em, 'member_check_voids', taken(of, { check_id: of.voidedId }));
  });
  return of;
}

const ASKED = {
  ...{ leastLevel: null, instrumentRating: false, checkoutInModel: false },
  ...{ totalTenths: 1000, classTenths: null, retractableTenths: null, tailwheelTenths: null },
  ...{ modelTenths: null, dualInModelTenths: null, recentTenths: null, recentDays: null },
  ...{ leastAgeYears: null, mostAgeYears: null, reviewMonths: null },
};
const asking = (more: object): Row => ({ minimums: JSON.stringify({ ...ASKED, ...more }) });
/** Of the second aircraft and of a year that nothing else is about, unless a case says otherwise. */
const terms = (of: Scene, more: Row = {}): Row => ({
  ...{ club_id: of.clubId, id: newId(), aircraft_id: of.aircraftId, source: 'Pilot clause' },
  ...{ valid_from: '2026-01-01', valid_through: '2026-12-31', recorded_by: of.officerId },
  ...asking({}),
  ...more,
});
const other = (of: Scene, more: Row): Row => terms(of, { aircraft_id: of.secondAircraftId, ...more });
const named = (of: Scene, more: Row = {}): Row => ({
  ...{ club_id: of.clubId, id: undefined, terms_id: of.termsId, member_id: of.memberId },
  ...more,
});
const check = (of: Scene, more: Row = {}): Row => ({
  ...{ club_id: of.clubId, id: newId(), member_id: of.memberId, kind: 'identity' },
  ...{ seen_on: '2026-01-15', seen_by: of.officerId },
  ...more,
});
const taken = (of: Scene, more: Row = {}): Row => ({
  ...{ club_id: of.clubId, id: undefined, check_id: of.checkId, voided_by: of.officerId },
  ...{ reason: 'Of somebody else' },
  ...more,
});

const CASES: [constraint: string, table: string, wrong: (of: Scene) => Row][] = [
  ['insurance_terms_source_chk', 'insurance_terms', (of) => other(of, { source: ' ' })],
  ['insurance_terms_minimums_chk', 'insurance_terms', (of) => other(of, asking({ totalTenths: 0 }))],
  ['insurance_terms_because_chk', 'insurance_terms', (of) => other(of, { ended_because: 'no' })],
  ['insurance_terms_span_chk', 'insurance_terms', (of) => other(of, { valid_through: '2025-12-31' })],
  ['insurance_terms_void_chk', 'insurance_terms', (of) => other(of, { voided_at: '2026-02-01T00:00:00Z' })],
  ['insurance_terms_once', 'insurance_terms', (of) => terms(of, { valid_from: '2026-12-31' })],
  ['insurance_terms_aircraft_fk', 'insurance_terms', (of) => other(of, { aircraft_id: foreign.aircraftId })],
  ['insurance_terms_recorder_fk', 'insurance_terms', (of) => other(of, { recorded_by: foreign.officerId })],
  ['insurance_named_pilots_pkey', 'insurance_named_pilots', (of) => named(of)],
  [
    'insurance_named_pilots_terms_fk',
    'insurance_named_pilots',
    (of) => named(of, { terms_id: foreign.termsId }),
  ],
  [
    'insurance_named_pilots_member_fk',
    'insurance_named_pilots',
    (of) => named(of, { member_id: foreign.memberId }),
  ],
  ['member_checks_kind_chk', 'member_checks', (of) => check(of, { kind: 'reading' })],
  ['member_checks_own_chk', 'member_checks', (of) => check(of, { seen_by: of.memberId })],
  ['member_checks_span_chk', 'member_checks', (of) => check(of, { expires_on: '2026-01-14' })],
  ['member_checks_member_fk', 'member_checks', (of) => check(of, { member_id: foreign.memberId })],
  ['member_checks_seer_fk', 'member_checks', (of) => check(of, { seen_by: foreign.officerId })],
  ['member_check_voids_pkey', 'member_check_voids', (of) => taken(of, { check_id: of.voidedId })],
  ['member_check_voids_reason_chk', 'member_check_voids', (of) => taken(of, { reason: 'no' })],
  ['member_check_voids_check_fk', 'member_check_voids', (of) => taken(of, { check_id: foreign.checkId })],
  ['member_check_voids_by_fk', 'member_check_voids', (of) => taken(of, { voided_by: foreign.officerId })],
];

const stateFor = (constraint: string): string => {
  if (constraint.endsWith('_once')) return '23P01';
  if (constraint.endsWith('_pkey')) return '23505';
  return constraint.endsWith('_fk') ? '23503' : '23514';
};

it.each(CASES)('%s', async (constraint, table, wrong) => {
  expect(await rowRefusal(db, own.clubId, table, wrong(own))).toEqual({
    state: stateFor(constraint),
    constraint,
  });
});

it.each([
  ['hours without their days', { recentTenths: 100 }],
  ['days without their hours', { recentDays: 90 }],
  ['more days than the log is kept for', { recentTenths: 100, recentDays: 731 }],
  ['hours in words', { totalTenths: 'many' }],
  ['a figure left out', { totalTenths: undefined }],
  ['an age below one', { mostAgeYears: 0 }],
])('insurance_terms_minimums_chk: %s', async (_what, more) => {
  expect(await rowRefusal(db, own.clubId, 'insurance_terms', other(own, asking(more)))).toEqual({
    ...{ state: '23514', constraint: 'insurance_terms_minimums_chk' },
  });
});

it('takes terms for named pilots only, the day after others end, and beside those taken back', async () => {
  const insert = (row: Row) => rowRefusal(db, own.clubId, 'insurance_terms', row);
  expect(await insert(other(own, { minimums: null }))).toBeNull();
  expect(await insert(terms(own, { valid_from: '2027-01-01', valid_through: '2027-12-31' }))).toBeNull();
  const back = { voided_at: '2026-02-01T00:00:00Z', ended_because: 'Of another aircraft' };
  expect(await insert(terms(own, back))).toBeNull();
});

it('insurance_terms_kept_chk: terms are ended earlier or taken back, in no other way', async () => {
  const change = (sql: string) =>
    refusal(db, own.clubId, `UPDATE insurance_terms SET ${sql} WHERE id = $1`, [own.termsId]);
  const kept = { state: '23514', constraint: 'insurance_terms_kept_chk' };
  const because = `ended_because = 'The policy was changed'`;
  expect(await change(`source = 'Another clause', ${because}`)).toEqual(kept);
  expect(await change(`minimums = NULL, ${because}`)).toEqual(kept);
  expect(await change(`valid_from = '2026-02-01', ${because}`)).toEqual(kept);
  expect(await change(`valid_through = '2026-11-30'`)).toEqual(kept);
  expect(await change(`valid_through = '2027-01-01', ${because}`)).toEqual(kept);
  expect(await refusal(db, own.clubId, 'DELETE FROM insurance_terms WHERE id = $1', [own.termsId])).toEqual(
    kept,
  );
  expect(await change(`valid_through = '2026-11-30', ${because}`)).toBeNull();
  expect(await change(`voided_at = now(), ${because}`)).toBeNull();
  expect(await change(`voided_at = NULL, ${because}`)).toEqual(kept);
});

it('insurance_named_pilots_append_only, member_checks_append_only, member_check_voids_append_only', async () => {
  await expectWrittenOnce(db, own.clubId, [
    ['member_checks', 'kind'],
    ['member_check_voids', 'reason'],
  ]);
  for (const sql of [
    'UPDATE insurance_named_pilots SET recorded_at = now()',
    'DELETE FROM insurance_named_pilots',
  ]) {
    expect(await refusal(db, own.clubId, sql)).toMatchObject({ state: '42501' });
    await expect(db.admin.query(sql)).rejects.toMatchObject({
      constraint: 'insurance_named_pilots_append_only',
    });
  }
});

it('has a case for every constraint of these tables', async () => {
  const proven = CASES.map(([constraint]) => constraint);
  expect(proven.filter((one) => !one.endsWith('_pkey')).sort()).toEqual(await constraintsToProve(db, TABLES));
});

it("shows and takes nothing of another club's", async () => {
  for (const table of TABLES)
    await db.tenantDb.run(own.clubId, async (em) => {
      const count = async (clubId: string): Promise<number> =>
        (await em.query(`SELECT count(*)::int AS n FROM ${table} WHERE club_id = $1`, [clubId]))[0].n;
      expect([table, await count(foreign.clubId)]).toEqual([table, 0]);
      expect([table, (await count(own.clubId)) > 0]).toEqual([table, true]);
    });
  expect(await rowRefusal(db, own.clubId, 'member_checks', check(foreign))).toMatchObject({ state: '42501' });
});
