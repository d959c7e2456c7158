/** Changed, offered, held and repeated bookings: what the database refuses when the service is gone round. */
import '../../src/bookings/changes/changes.constraints.js';
import { registeredConstraints } from '../../src/platform/database/constraint-problems.js';
import { createTestDatabase, type TestDatabase } from '../../src/platform/database/testing.js';
import { newId } from '../../src/platform/ids.js';
import { expectWrittenOnce, refusal, type Row } from '../support/refusals.js';
import { seedFleet } from '../support/seed-fleet.js';
import { constraintsToProve, insertRow, plantClub, rowRefusal } from './refusals.js';

const TABLES = ['booking_series', 'booking_changes', 'hand_overs'];
const DURING = '[2026-03-12 18:00Z,2026-03-12 20:00Z)';

interface Scene {
  clubId: string;
  memberId: string;
  otherId: string;
  aircraftId: string;
  bookingId: string;
  blockId: string;
  seriesId: string;
}

let db: TestDatabase;
let own: Scene;
let foreign: Scene;

beforeAll(async () => {
  db = await createTestDatabase();
  own = await plant();
  foreign = await plant();
}, 120_000);
afterAll(() => db.drop());

async function plant(): Promise<Scene> {
  const { clubId, memberId } = await plantClub(db);
  const sql = async <T>(text: string, params?: unknown[]) => (await db.admin.query(text, params)).rows as T[];
  const { aircraftId } = await seedFleet(sql, clubId);
  const scene = { clubId, memberId, aircraftId, otherId: newId() };
  const more = { bookingId: newId(), blockId: newId(), seriesId: newId() };
  const full: Scene = { ...scene, ...more };
  await db.tenantDb.run(clubId, async (em) => {
    await insertRow(em, 'members', {
      ...{ club_id: clubId, id: full.otherId, name: 'Tess Other', email: `${newId()}@larkfield.example` },
      ...{ standing_since: '2026-01-01', membership_from: '2026-01-01' },
    });
    await insertRow(em, 'booking_series', series(full, { id: full.seriesId }));
    await insertRow(em, 'bookings', booking(full, { id: full.bookingId }));
    const later = '[2026-03-13 18:00Z,2026-03-13 20:00Z)';
    await insertRow(em, 'bookings', booking(full, { id: full.blockId, kind: 'club', during: later }));
    await insertRow(em, 'booking_changes', change(full));
    await insertRow(em, 'hand_overs', offer(full));
  });
  return full;
}

const series = (of: Scene, more: Row = {}): Row => ({
  ...{ club_id: of.clubId, id: newId(), member_id: of.memberId, made_by: of.memberId },
  ...{ recurrence: 'FREQ=WEEKLY;COUNT=3', zone: 'America/Chicago', first_departs: '2026-03-12T18:00:00Z' },
  ...more,
});
/** A block needs no decision, which is all the better here. */
const booking = (of: Scene, more: Row = {}): Row => ({
  ...{
    club_id: of.clubId,
    id: newId(),
    kind: 'maintenance',
    aircraft_id: of.aircraftId,
    member_id: of.memberId,
  },
  ...{ during: DURING, expected_tenths: 0, request: {} },
  ...more,
});
const FREE = '[2026-04-12 18:00Z,2026-04-12 20:00Z)';
const change = (of: Scene, more: Row = {}): Row => ({
  ...{ club_id: of.clubId, id: newId(), booking_id: of.bookingId, act: 'edited', by_id: of.memberId },
  ...{ before: { kind: 'club' }, after: { kind: 'maintenance' }, at: '2026-03-10T15:00:00Z' },
  ...more,
});
const offer = (of: Scene, more: Row = {}): Row => ({
  ...{ club_id: of.clubId, id: newId(), booking_id: of.bookingId, from_id: of.memberId, to_id: of.otherId },
  offered_by: of.memberId,
  ...more,
});
const displaced = (of: Scene, more: Row = {}): Row => ({
  ...{ club_id: of.clubId, id: newId(), booking_id: of.bookingId, aircraft_id: of.aircraftId },
  ...{ member_id: of.memberId, block_id: of.blockId },
  ...more,
});
const free = (of: Scene, more: Row): Row => booking(of, { during: FREE, ...more });
const GONE = { status: 'cancelled', cancelled_at: '2026-03-10T15:00:00Z' };

const CASES: [constraint: string, table: string, wrong: (of: Scene) => Row][] = [
  ['booking_series_recurrence_chk', 'booking_series', (of) => series(of, { recurrence: 'FREQ=SECONDLY' })],
  ['booking_series_zone_chk', 'booking_series', (of) => series(of, { zone: ' ' })],
  ['booking_series_member_fk', 'booking_series', (of) => series(of, { member_id: foreign.memberId })],
  ['booking_series_maker_fk', 'booking_series', (of) => series(of, { made_by: foreign.memberId })],
  ['bookings_reason_chk', 'bookings', (of) => free(of, { ...GONE, cancel_reason: 'x'.repeat(501) })],
  ['bookings_series_fk', 'bookings', (of) => free(of, { series_id: foreign.seriesId })],
  ['bookings_canceller_fk', 'bookings', (of) => free(of, { ...GONE, cancelled_by: foreign.memberId })],
  ['bookings_hold_chk', 'bookings', (of) => free(of, { kind: 'hold' })],
  ['bookings_hold_chk', 'bookings', (of) => free(of, { hold_until: '2026-04-01T00:00:00Z' })],
  ['bookings_hold_chk', 'bookings', (of) => free(of, { kind: 'hold', hold_until: '2026-04-12T18:00:01Z' })],
  ['bookings_late_chk', 'bookings', (of) => free(of, { cancel_reason: 'A cold' })],
  ['bookings_late_chk', 'bookings', (of) => free(of, { cancelled_by: of.memberId })],
  ['bookings_late_chk', 'bookings', (of) => free(of, { ...GONE, cancelled_late: true })],
  ['booking_changes_act_chk', 'booking_changes', (of) => change(of, { act: 'painted' })],
  ['booking_changes_booking_fk', 'booking_changes', (of) => change(of, { booking_id: foreign.bookingId })],
  ['booking_changes_by_fk', 'booking_changes', (of) => change(of, { by_id: foreign.memberId })],
  ['booking_changes_decision_fk', 'booking_changes', (of) => change(of, { decision_id: newId() })],
  ['booking_changes_other_chk', 'booking_changes', (of) => change(of, { before: {}, after: {} })],
  ['booking_changes_by_chk', 'booking_changes', (of) => change(of, { by_id: null })],
  ['booking_changes_by_chk', 'booking_changes', (of) => change(of, { act: 'lapsed' })],
  ['booking_changes_decided_chk', 'booking_changes', (of) => change(of, { act: 'handed-over' })],
  ['hand_overs_outcome_chk', 'hand_overs', (of) => offer(of, { outcome: 'lost', closed_at: '2026-03-10' })],
  ['hand_overs_booking_fk', 'hand_overs', (of) => offer(of, { booking_id: foreign.bookingId })],
  [
    'hand_overs_from_fk',
    'hand_overs',
    (of) => offer(of, { booking_id: of.blockId, from_id: foreign.memberId }),
  ],
  ['hand_overs_to_fk', 'hand_overs', (of) => offer(of, { booking_id: of.blockId, to_id: foreign.memberId })],
  [
    'hand_overs_offered_fk',
    'hand_overs',
    (of) => offer(of, { booking_id: of.blockId, offered_by: foreign.memberId }),
  ],
  ['hand_overs_other_chk', 'hand_overs', (of) => offer(of, { to_id: of.memberId })],
  ['hand_overs_closed_chk', 'hand_overs', (of) => offer(of, { outcome: 'declined' })],
  ['hand_overs_open_uq', 'hand_overs', (of) => offer(of)],
  ['displacements_block_fk', 'displacements', (of) => displaced(of, { block_id: foreign.blockId })],
  ['displacements_for_chk', 'displacements', (of) => displaced(of, { block_id: null })],
];

const stateOf = (constraint: string): string =>
  constraint.endsWith('_fk') ? '23503' : constraint.endsWith('_uq') ? '23505' : '23514';

it.each(CASES)('%s', async (constraint, table, wrong) => {
  expect(await rowRefusal(db, own.clubId, table, wrong(own))).toEqual({
    state: stateOf(constraint),
    constraint,
  });
});

it('takes the good rows, so each refusal was for the constraint alone', async () => {
  const good: [string, Row][] = [
    ['booking_series', series(own)],
    ['bookings', free(own, { kind: 'hold', hold_until: '2026-04-12T18:00:00Z' })],
    ['bookings', free(own, { ...GONE, cancel_reason: 'A cold', cancelled_by: own.memberId })],
    ['booking_changes', change(own, { act: 'lapsed', by_id: null })],
    ['hand_overs', offer(own, { outcome: 'declined', closed_at: '2026-03-10T15:00:00Z' })],
    ['displacements', displaced(own)],
  ];
  for (const [table, row] of good)
    expect([table, await rowRefusal(db, own.clubId, table, row)]).toEqual([table, null]);
});

it('booking_changes_append_only, booking_series_append_only: what was written is not written again', async () => {
  await expectWrittenOnce(db, own.clubId, [
    ['booking_changes', 'act'],
    ['booking_series', 'zone'],
  ]);
});

it('keeps clubs apart', async () => {
  for (const table of TABLES) {
    const seen = await db.tenantDb.run(foreign.clubId, (em) =>
      em.query(`SELECT 1 FROM ${table} WHERE club_id = $1`, [own.clubId]),
    );
    expect([table, seen]).toEqual([table, []]);
  }
  expect(
    await refusal(db, foreign.clubId, `UPDATE hand_overs SET outcome = 'declined', closed_at = now()`),
  ).toBeNull();
  const [row] = (
    await db.admin.query('SELECT outcome FROM hand_overs WHERE club_id = $1 AND outcome IS NULL', [
      own.clubId,
    ])
  ).rows;
  expect(row).toEqual({ outcome: null });
});

it('has a case for every constraint of the tables, and for every one with words for people', async () => {
  const proven = new Set([...CASES.map(([constraint]) => constraint)]);
  const needed = await constraintsToProve(db, TABLES);
  expect(needed.filter((one) => !proven.has(one))).toEqual([]);
  const worded = registeredConstraints().map(({ constraint }) => constraint);
  const tried = [...proven, 'booking_changes_append_only', 'booking_series_append_only'];
  expect(tried.sort()).toEqual(worded.sort());
});
