/** Teaching hours, standby and offers: what the database refuses when the service is gone round. */
import { createTestDatabase, type TestDatabase } from '../../src/platform/database/testing.js';
import { newId } from '../../src/platform/ids.js';
import type { FleetIds } from './fleet-rows.js';
import { refusal, type Row } from '../support/refusals.js';
import {
  constraintsToProve,
  fleetIds,
  insertAircraft,
  insertRow,
  plantClub,
  rowRefusal,
} from './refusals.js';

const TABLES = ['teaching_hours', 'standby_entries', 'standby_offers', 'standby_wakes'];
const OFFERED = '[2026-03-12 18:00Z,2026-03-12 20:00Z)';
const FREE = '[2026-03-14 18:00Z,2026-03-14 20:00Z)';

let db: TestDatabase;
let clubId: string;
let foreignClubId: string;
let memberId: string;
let otherId: string;
let fleet: FleetIds;
const ids = {
  decision: newId(),
  entry: newId(),
  other: newId(),
  done: newId(),
  open: newId(),
  booking: newId(),
};

beforeAll(async () => {
  db = await createTestDatabase();
  ({ clubId: foreignClubId } = await plantClub(db));
  ({ clubId, memberId } = await plantClub(db));
  otherId = newId();
  fleet = fleetIds({ clubId, memberId });
  await db.tenantDb.run(clubId, async (em) => {
    await insertAircraft(em, fleet);
    await insertRow(em, 'members', {
      ...{ club_id: clubId, id: otherId, name: 'Oda Other', email: `${otherId}@larkfield.example` },
      ...{ standing_since: '2026-01-01', membership_from: '2026-01-01' },
    });
    await insertRow(em, 'decisions', {
      ...{ club_id: clubId, id: ids.decision, member_id: memberId, aircraft_id: fleet.aircraftId },
      ...{ asked_by: memberId, known_at: '2026-03-10T15:00:00Z', as_of: '2026-03-11T18:00:00Z' },
      ...{ answer: 'yes', fact_keys: [], parts: {}, rules: {}, digest: 'b'.repeat(64), body: '{}' },
    });
    await insertRow(
      em,
      'bookings',
      booking({ id: ids.booking, during: '[2026-03-11 18:00Z,2026-03-11 20:00Z)' }),
    );
    await insertRow(em, 'standby_entries', entry({ id: ids.entry, during: OFFERED }));
    await insertRow(em, 'standby_entries', entry({ id: ids.other, member_id: otherId, during: OFFERED }));
    await insertRow(em, 'standby_entries', {
      ...entry({ id: ids.done, during: '[2026-03-11 18:00Z,2026-03-11 20:00Z)' }),
      state: 'booked',
    });
    await insertRow(em, 'standby_offers', offer({ id: ids.open, during: OFFERED }));
    await insertRow(em, 'standby_offers', accepted());
  });
}, 60_000);
afterAll(() => db.drop());

const booking = (more: Row = {}): Row => ({
  ...{ club_id: clubId, id: newId(), kind: 'flight', aircraft_id: fleet.aircraftId, member_id: memberId },
  ...{ during: FREE, expected_tenths: 20, request: {}, decision_id: ids.decision, ...more },
});
const hours = (more: Row = {}): Row => ({
  ...{ club_id: clubId, id: newId(), member_id: memberId, kind: 'weekly', weekday: 1 },
  ...{ opens_minutes: 540, closes_minutes: 1020, valid_from: '2026-03-01', ...more },
});
const entry = (more: Row = {}): Row => ({
  ...{ club_id: clubId, id: newId(), member_id: memberId, aircraft_id: fleet.aircraftId, during: FREE },
  ...{ request: {}, placed_at: '2026-03-10T15:00:00Z', ...more },
});
/** An open offer of the second aircraft, to whom nothing is offered yet. */
const offer = (more: Row = {}): Row => ({
  ...{
    club_id: clubId,
    id: newId(),
    entry_id: ids.entry,
    member_id: memberId,
    aircraft_id: fleet.aircraftId,
  },
  ...{ during: FREE, holds: true, decision_id: ids.decision, made_at: '2026-03-10T15:00:00Z' },
  ...{ expires_at: '2026-03-10T19:00:00Z', ...more },
});
const otherOffer = (more: Row = {}): Row =>
  offer({ entry_id: ids.other, member_id: otherId, aircraft_id: fleet.secondAircraftId, ...more });
const accepted = (more: Row = {}): Row =>
  offer({
    ...{ entry_id: ids.done, during: '[2026-03-11 18:00Z,2026-03-11 20:00Z)', state: 'accepted' },
    ...{ booking_id: ids.booking, answered_at: '2026-03-10T16:00:00Z', ...more },
  });

const CASES: [constraint: string, table: string, row: () => Row][] = [
  [
    'teaching_hours_kind_chk',
    'teaching_hours',
    () => hours({ kind: 'yearly', weekday: null, on_date: '2026-03-11', valid_from: null }),
  ],
  ['teaching_hours_weekday_chk', 'teaching_hours', () => hours({ weekday: 8 })],
  ['teaching_hours_shape_chk', 'teaching_hours', () => hours({ weekday: null })],
  ['teaching_hours_shape_chk', 'teaching_hours', () => hours({ kind: 'date', on_date: '2026-03-11' })],
  ['teaching_hours_shape_chk', 'teaching_hours', () => hours({ opens_minutes: null, closes_minutes: null })],
  ['teaching_hours_minutes_chk', 'teaching_hours', () => hours({ closes_minutes: 540 })],
  ['teaching_hours_minutes_chk', 'teaching_hours', () => hours({ closes_minutes: 1441 })],
  ['teaching_hours_minutes_chk', 'teaching_hours', () => hours({ closes_minutes: null })],
  ['teaching_hours_span_chk', 'teaching_hours', () => hours({ valid_through: '2026-02-28' })],
  ['teaching_hours_member_fk', 'teaching_hours', () => hours({ member_id: newId() })],
  ['standby_entries_note_chk', 'standby_entries', () => entry({ note: 'x'.repeat(501) })],
  ['standby_entries_state_chk', 'standby_entries', () => entry({ state: 'asleep' })],
  ['standby_entries_member_fk', 'standby_entries', () => entry({ member_id: newId() })],
  ['standby_entries_aircraft_fk', 'standby_entries', () => entry({ aircraft_id: newId() })],
  ['standby_entries_during_chk', 'standby_entries', () => entry({ during: 'empty' })],
  [
    'standby_entries_during_chk',
    'standby_entries',
    () => entry({ during: '[2026-03-14 18:00Z,2026-03-14 18:14Z)' }),
  ],
  [
    'standby_entries_once',
    'standby_entries',
    () => entry({ during: '[2026-03-12 19:59Z,2026-03-12 22:00Z)', aircraft_id: null }),
  ],
  [
    'standby_offers_state_chk',
    'standby_offers',
    () => otherOffer({ state: 'perhaps', answered_at: '2026-03-10T16:00:00Z' }),
  ],
  ['standby_offers_entry_fk', 'standby_offers', () => otherOffer({ entry_id: newId() })],
  ['standby_offers_member_fk', 'standby_offers', () => otherOffer({ member_id: newId() })],
  ['standby_offers_aircraft_fk', 'standby_offers', () => otherOffer({ aircraft_id: newId() })],
  ['standby_offers_decision_fk', 'standby_offers', () => otherOffer({ decision_id: newId() })],
  [
    'standby_offers_booking_fk',
    'standby_offers',
    () => otherOffer({ state: 'accepted', booking_id: newId(), answered_at: '2026-03-10T16:00:00Z' }),
  ],
  ['standby_offers_answered_chk', 'standby_offers', () => otherOffer({ state: 'declined' })],
  [
    'standby_offers_booked_chk',
    'standby_offers',
    () => otherOffer({ state: 'accepted', answered_at: '2026-03-10T16:00:00Z' }),
  ],
  ['standby_offers_expiry_chk', 'standby_offers', () => otherOffer({ expires_at: '2026-03-10T15:00:00Z' })],
  ['standby_offers_expiry_chk', 'standby_offers', () => otherOffer({ expires_at: '2026-03-14T18:00:01Z' })],
  // Another member, the same aircraft, an hour of the same time.
  [
    'standby_offers_slot_excl',
    'standby_offers',
    () => otherOffer({ aircraft_id: fleet.aircraftId, during: '[2026-03-12 19:00Z,2026-03-12 21:00Z)' }),
  ],
  [
    'standby_offers_one_open',
    'standby_offers',
    () => offer({ aircraft_id: fleet.secondAircraftId, during: FREE }),
  ],
  ['standby_offers_one_booked', 'standby_offers', () => accepted({ booking_id: ids.booking })],
  [
    'standby_offers_booking_uq',
    'standby_offers',
    () => accepted({ entry_id: ids.other, member_id: otherId }),
  ],
];

describe('the database refuses', () => {
  it.each(CASES)('%s', async (constraint, table, row) => {
    expect(await rowRefusal(db, clubId, table, row())).toMatchObject({ constraint });
  });

  it('bookings_held_chk: a slot that is kept, to everybody but whom it is offered to', async () => {
    const within = { during: '[2026-03-12 19:00Z,2026-03-12 20:00Z)' };
    const others = booking({ ...within, member_id: otherId });
    expect(await rowRefusal(db, clubId, 'bookings', others)).toEqual({
      ...{ state: '23514', constraint: 'bookings_held_chk' },
    });
    const own = booking({ during: '[2026-03-12 18:00Z,2026-03-12 18:30Z)' });
    expect(await rowRefusal(db, clubId, 'bookings', own)).toBeNull();
    const beside = booking({ member_id: otherId, during: '[2026-03-12 20:00Z,2026-03-12 21:00Z)' });
    expect(await rowRefusal(db, clubId, 'bookings', beside)).toBeNull();
    // Maintenance goes before.
    const shop = booking({
      ...{ during: '[2026-03-12 18:30Z,2026-03-12 19:00Z)', member_id: otherId },
      ...{ kind: 'maintenance', decision_id: null },
    });
    expect(await rowRefusal(db, clubId, 'bookings', shop)).toBeNull();
    // Nor is a booking moved there.
    const moved = `UPDATE bookings SET during = '${within.during}', member_id = $2 WHERE club_id = $1 AND id = $3`;
    expect(await refusal(db, clubId, moved, [clubId, otherId, ids.booking])).toMatchObject({
      constraint: 'bookings_held_chk',
    });
  });

  it('standby_offers_kept_chk: another answer to an offer that was answered, or another offer', async () => {
    const on = (set: string, id: string): [string, unknown[]] => [
      `UPDATE standby_offers SET ${set} WHERE club_id = $1 AND id = $2`,
      [clubId, id],
    ];
    const [answered]: { id: string }[] = (
      await db.admin.query(`SELECT id FROM standby_offers WHERE state = 'accepted'`)
    ).rows as { id: string }[];
    for (const [set, id] of [
      ["state = 'declined', booking_id = NULL", answered!.id],
      ["expires_at = '2026-03-11T18:00:00Z'", ids.open],
    ] as const)
      expect(await refusal(db, clubId, ...on(set, id))).toEqual({
        ...{ state: '23514', constraint: 'standby_offers_kept_chk' },
      });
    expect(await refusal(db, clubId, ...on("state = 'declined', answered_at = now()", ids.open))).toBeNull();
  });

  it('rows of another club', async () => {
    for (const [table, row] of [
      ['teaching_hours', hours()],
      ['standby_entries', entry()],
      ['standby_offers', otherOffer()],
      ['standby_wakes', { id: undefined, club_id: clubId, due_at: '2026-03-10T15:00:00Z' }],
    ] as const)
      expect([table, await rowRefusal(db, foreignClubId, table, row)]).toMatchObject([
        table,
        { state: '42501' },
      ]);
  });

  it('nothing of what is sound', async () => {
    for (const [table, row] of [
      ['teaching_hours', hours({ valid_through: '2026-03-01', opens_minutes: 0, closes_minutes: 1440 })],
      ['teaching_hours', hours({ kind: 'date', weekday: null, valid_from: null, on_date: '2026-03-11' })],
      [
        'teaching_hours',
        hours({
          ...{ kind: 'date', weekday: null, valid_from: null, on_date: '2026-03-11' },
          ...{ opens_minutes: null, closes_minutes: null },
        }),
      ],
      ['standby_entries', entry()],
      // Back to back.
      ['standby_entries', entry({ during: '[2026-03-12 20:00Z,2026-03-12 21:00Z)' })],
      ['standby_offers', otherOffer()],
      ['standby_wakes', { id: undefined, club_id: clubId, due_at: '2026-03-10T15:00:00Z' }],
    ] as [string, Row][])
      expect([table, await rowRefusal(db, clubId, table, row)]).toEqual([table, null]);
  });

  it('for every constraint of these tables, one by one', async () => {
    const proven = [...new Set(CASES.map(([constraint]) => constraint))].sort();
    expect(proven).toEqual(await constraintsToProve(db, TABLES));
  });
});

describe('time that comes free is noted', () => {
  const wakes = async (change: string): Promise<number> => {
    const count = 'SELECT count(*)::int AS n FROM standby_wakes WHERE club_id = bellcrank_club()';
    return db.tenantDb.run(
      clubId,
      async (em) => {
        const [before] = (await em.query(count)) as { n: number }[];
        await em.query(change, [ids.booking]);
        const [after] = (await em.query(count)) as { n: number }[];
        return after!.n - before!.n;
      },
      { rehearse: true },
    );
  };
  const where = 'WHERE club_id = bellcrank_club() AND id = $1';
  it.each([
    ['cancelled', `UPDATE bookings SET status = 'cancelled', cancelled_at = now() ${where}`, 1],
    ['brought back early', `UPDATE bookings SET status = 'returned' ${where}`, 1],
    ['shortened', `UPDATE bookings SET during = '[2026-03-11 18:00Z,2026-03-11 19:00Z)' ${where}`, 1],
    ['moved', `UPDATE bookings SET during = '[2026-03-15 18:00Z,2026-03-15 20:00Z)' ${where}`, 1],
    ['lengthened', `UPDATE bookings SET during = '[2026-03-11 18:00Z,2026-03-11 21:00Z)' ${where}`, 0],
    ['taken out', `UPDATE bookings SET status = 'dispatched' ${where}`, 0],
    ['noted', `UPDATE bookings SET note = 'Later' ${where}`, 0],
  ])('a booking %s', async (_what, change, more) => {
    expect(await wakes(change)).toBe(more);
  });
});
