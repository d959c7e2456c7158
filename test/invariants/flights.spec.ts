/** Dispatches, returns and overdue aircraft: what the database refuses when the service is gone round. */
import { createTestDatabase, type TestDatabase } from '../../src/platform/database/testing.js';
import { newId } from '../../src/platform/ids.js';
import { expectWrittenOnce, refusal, type Row } from '../support/refusals.js';
import { fleetRows, type FleetIds } from './fleet-rows.js';
import {
  constraintsToProve,
  fleetIds,
  insertAircraft,
  insertRow,
  plantClub,
  rowRefusal,
} from './refusals.js';

const TABLES = [
  ...['dispatches', 'dispatch_meters', 'dispatch_voids', 'returns', 'return_meters', 'return_entries'],
  ...['overdue_contacts', 'aircraft_out', 'overdue_alerts'],
];
const T = '2026-03-10T15:00:00Z';

let db: TestDatabase;
let clubId: string;
let memberId: string;
let fleet: FleetIds;
const ids = {
  ...{ yes: newId(), no: newId(), officer: newId(), booked: newId(), out: newId(), back: newId() },
  ...{
    dispatch: newId(),
    outDispatch: newId(),
    return: newId(),
    reading: newId(),
    entry: newId(),
    other: newId(),
  },
};

beforeAll(async () => {
  db = await createTestDatabase();
  ({ clubId, memberId } = await plantClub(db));
  fleet = fleetIds({ clubId, memberId });
  await db.tenantDb.run(clubId, async (em) => {
    await insertAircraft(em, fleet);
    await insertRow(em, 'members', {
      ...{ club_id: clubId, id: ids.other, name: 'Sam Second', email: `${ids.other}@larkfield.example` },
      ...{ standing_since: '2026-01-01', membership_from: '2026-01-01' },
    });
    const rows = fleetRows(fleet);
    await insertRow(em, 'meter_readings', rows.meter_readings({ id: ids.reading }));
    for (const [id, answer] of [
      [ids.yes, 'yes'],
      [ids.no, 'no'],
      [ids.officer, 'ask-officer'],
    ] as const)
      await insertRow(em, 'decisions', {
        ...{ club_id: clubId, id, member_id: memberId, aircraft_id: fleet.aircraftId, asked_by: memberId },
        ...{ known_at: T, as_of: T, answer, fact_keys: [], parts: {}, rules: {} },
        ...{ digest: 'b'.repeat(64), body: '{}' },
      });
    for (const [id, day] of [
      [ids.booked, 11],
      [ids.out, 12],
      [ids.back, 13],
    ] as const)
      await insertRow(em, 'bookings', {
        ...{ club_id: clubId, id, kind: 'flight', aircraft_id: fleet.aircraftId, member_id: memberId },
        ...{ during: `[2026-03-${day} 18:00Z,2026-03-${day} 20:00Z)`, expected_tenths: 20, request: {} },
        decision_id: ids.yes,
      });
    const status = (id: string, to: string) =>
      em.query('UPDATE bookings SET status = $2 WHERE id = $1', [id, to]);
    await insertRow(em, 'dispatches', dispatch({ id: ids.dispatch, booking_id: ids.back }));
    await status(ids.back, 'dispatched');
    await insertRow(em, 'returns', returned({ id: ids.return, booking_id: ids.back }));
    await status(ids.back, 'returned');
    await insertRow(em, 'dispatches', dispatch({ id: ids.outDispatch, booking_id: ids.out }));
    await status(ids.out, 'dispatched');
    await insertRow(em, 'log_entries', logged({ id: ids.entry, booking_id: ids.back }));
    await insertRow(em, 'dispatch_meters', meterOut());
    await insertRow(em, 'return_meters', meterIn());
    await insertRow(em, 'return_entries', entry());
    await insertRow(em, 'dispatch_voids', taken());
    await insertRow(em, 'overdue_alerts', alert());
    await insertRow(em, 'overdue_contacts', contact());
    await insertRow(em, 'aircraft_out', isOut());
  });
}, 120_000);
afterAll(() => db.drop());

const dispatch = (more: Row = {}): Row => ({
  ...{ club_id: clubId, id: newId(), booking_id: ids.booked, number: 1, decision_id: ids.yes },
  ...{ dispatched_by: memberId, dispatched_at: T, persons_on_board: 1, fuel_us_gal: 30 },
  ...{ self_assessed: true, squawks_seen: [], conditions_accepted: [], ...more },
});
const meterOut = (more: Row = {}): Row => ({
  ...{ id: undefined, club_id: clubId, dispatch_id: ids.outDispatch, kind: 'tachometer' },
  ...{ reading_id: ids.reading, total_tenths: 100, ...more },
});
const taken = (more: Row = {}): Row => ({
  ...{ id: undefined, club_id: clubId, dispatch_id: ids.dispatch, voided_by: memberId },
  ...{ reason: 'Magneto drop', ...more },
});
const returned = (more: Row = {}): Row => ({
  ...{ club_id: clubId, id: newId(), booking_id: ids.out, dispatch_id: ids.dispatch },
  ...{ returned_by: memberId, returned_at: T, departed_at: T, arrived_at: '2026-03-10T16:00:00Z' },
  ...{ from_airfield: 'XLF', to_airfield: 'XLF', payer_id: memberId, ...more },
});
const corrected = (more: Row = {}): Row =>
  returned({ booking_id: ids.back, replaces_id: ids.return, because: 'Misread', ...more });
const meterIn = (more: Row = {}): Row => ({
  ...{ id: undefined, club_id: clubId, return_id: ids.return, kind: 'tachometer' },
  ...{ reading_id: ids.reading, out_tenths: 100, in_tenths: 110, ...more },
});
const entry = (more: Row = {}): Row => ({
  ...{ id: undefined, club_id: clubId, return_id: ids.return, member_id: memberId },
  ...{ log_entry_id: ids.entry, given: {}, ...more },
});
const contact = (more: Row = {}): Row => ({
  ...{ id: undefined, club_id: clubId, member_id: memberId, after_minutes: 45, ...more },
});
const isOut = (more: Row = {}): Row => ({
  ...{ id: undefined, club_id: clubId, booking_id: ids.out, due_back_at: T, look_at: T, ...more },
});
const alert = (more: Row = {}): Row => ({
  ...{ club_id: clubId, id: newId(), booking_id: ids.out, dispatch_id: ids.outDispatch },
  ...{ member_id: memberId, stage: 'crew', due_back_at: T, told_at: T, ...more },
});
const logged = (more: Row = {}): Row => ({
  ...{ club_id: clubId, id: newId(), member_id: memberId, aircraft_words: 'Sparrow', category: 'airplane' },
  ...{ class: 'single-engine-land', tailwheel: false, departed_at: T, arrived_at: '2026-03-10T16:00:00Z' },
  ...{
    flown_on: '2026-03-10',
    from_airfield: 'XLF',
    to_airfield: 'XLF',
    role: 'solo',
    sole_manipulator: true,
  },
  ...{ takeoffs: 1, landings: 1, full_stop_landings: 1, night_takeoffs: 0, night_full_stop_landings: 0 },
  ...{ total_tenths: 10, ...more },
});

const CASES: [constraint: string, table: string, row: () => Row][] = [
  ['dispatches_number_chk', 'dispatches', () => dispatch({ number: 0 })],
  ['dispatches_persons_chk', 'dispatches', () => dispatch({ persons_on_board: 0 })],
  ['dispatches_fuel_chk', 'dispatches', () => dispatch({ fuel_us_gal: -1 })],
  ['dispatches_oil_chk', 'dispatches', () => dispatch({ oil_qt: 61 })],
  ['dispatches_self_assessed_chk', 'dispatches', () => dispatch({ self_assessed: false })],
  ['dispatches_booking_fk', 'dispatches', () => dispatch({ booking_id: newId() })],
  ['dispatches_decision_fk', 'dispatches', () => dispatch({ decision_id: newId() })],
  ['dispatches_by_fk', 'dispatches', () => dispatch({ dispatched_by: newId() })],
  ['dispatches_booked_chk', 'dispatches', () => dispatch({ booking_id: ids.out, number: 2 })],
  ['dispatches_answer_chk', 'dispatches', () => dispatch({ decision_id: ids.no })],
  ['dispatches_answer_chk', 'dispatches', () => dispatch({ decision_id: ids.officer })],
  ['dispatch_meters_kind_chk', 'dispatch_meters', () => meterOut({ kind: 'egg timer' })],
  ['dispatch_meters_gap_chk', 'dispatch_meters', () => meterOut({ kind: 'hobbs', gap_tenths: -1 })],
  [
    'dispatch_meters_because_chk',
    'dispatch_meters',
    () => meterOut({ kind: 'hobbs', gap_tenths: 1, gap_because: 'ghosts', gap_note: 'Ghosts' }),
  ],
  [
    'dispatch_meters_note_chk',
    'dispatch_meters',
    () => meterOut({ kind: 'hobbs', gap_tenths: 1, gap_because: 'engine-run', gap_note: ' ' }),
  ],
  ['dispatch_meters_resolved_chk', 'dispatch_meters', () => meterOut({ kind: 'hobbs', gap_tenths: 1 })],
  ['dispatch_meters_dispatch_fk', 'dispatch_meters', () => meterOut({ dispatch_id: newId() })],
  ['dispatch_meters_reading_fk', 'dispatch_meters', () => meterOut({ kind: 'hobbs', reading_id: newId() })],
  ['dispatch_meters_pkey', 'dispatch_meters', () => meterOut()],
  [
    'dispatch_voids_reason_chk',
    'dispatch_voids',
    () => taken({ dispatch_id: ids.outDispatch, reason: 'no' }),
  ],
  ['dispatch_voids_dispatch_fk', 'dispatch_voids', () => taken({ dispatch_id: newId() })],
  [
    'dispatch_voids_by_fk',
    'dispatch_voids',
    () => taken({ dispatch_id: ids.outDispatch, voided_by: newId() }),
  ],
  ['dispatch_voids_pkey', 'dispatch_voids', () => taken()],
  ['returns_because_chk', 'returns', () => corrected({ because: 'x' })],
  ['returns_corrected_chk', 'returns', () => returned({ because: 'Misread' })],
  ['returns_span_chk', 'returns', () => returned({ arrived_at: T })],
  ['returns_fuel_chk', 'returns', () => returned({ fuel_us_gal: -1 })],
  ['returns_bought_chk', 'returns', () => returned({ fuel_bought_us_gal: -1 })],
  ['returns_paid_chk', 'returns', () => returned({ fuel_paid_cents: -1 })],
  ['returns_oil_chk', 'returns', () => returned({ oil_added_qt: -1 })],
  ['returns_booking_fk', 'returns', () => returned({ booking_id: newId() })],
  ['returns_dispatch_fk', 'returns', () => returned({ dispatch_id: newId() })],
  ['returns_replaces_fk', 'returns', () => corrected({ replaces_id: newId() })],
  ['returns_by_fk', 'returns', () => returned({ returned_by: newId() })],
  ['returns_payer_fk', 'returns', () => returned({ payer_id: newId() })],
  ['returns_out_chk', 'returns', () => returned({ booking_id: ids.booked })],
  ['returns_same_flight_chk', 'returns', () => corrected({ booking_id: ids.out })],
  ['return_meters_kind_chk', 'return_meters', () => meterIn({ kind: 'egg timer' })],
  ['return_meters_forward_chk', 'return_meters', () => meterIn({ kind: 'hobbs', in_tenths: 99 })],
  ['return_meters_return_fk', 'return_meters', () => meterIn({ return_id: newId() })],
  ['return_meters_reading_fk', 'return_meters', () => meterIn({ kind: 'hobbs', reading_id: newId() })],
  ['return_meters_pkey', 'return_meters', () => meterIn()],
  ['return_entries_given_chk', 'return_entries', () => entry({ given: '[]' })],
  ['return_entries_return_fk', 'return_entries', () => entry({ return_id: newId() })],
  ['return_entries_member_fk', 'return_entries', () => entry({ member_id: newId() })],
  ['return_entries_log_fk', 'return_entries', () => entry({ log_entry_id: newId(), member_id: ids.other })],
  ['return_entries_pkey', 'return_entries', () => entry()],
  ['log_entries_booking_fk', 'log_entries', () => logged({ booking_id: newId() })],
  ['log_entries_flight_uq', 'log_entries', () => logged({ booking_id: ids.back })],
  ['overdue_contacts_after_chk', 'overdue_contacts', () => contact({ after_minutes: -1 })],
  ['overdue_contacts_member_fk', 'overdue_contacts', () => contact({ member_id: newId() })],
  ['overdue_contacts_pkey', 'overdue_contacts', () => contact()],
  ['aircraft_out_booking_fk', 'aircraft_out', () => isOut({ booking_id: newId() })],
  ['aircraft_out_pkey', 'aircraft_out', () => isOut()],
  ['overdue_alerts_stage_chk', 'overdue_alerts', () => alert({ stage: 'everybody' })],
  ['overdue_alerts_late_chk', 'overdue_alerts', () => alert({ told_at: '2026-03-10T14:59:59Z' })],
  ['overdue_alerts_seen_chk', 'overdue_alerts', () => alert({ seen_at: '2026-03-10T14:59:59Z' })],
  [
    'overdue_alerts_booking_fk',
    'overdue_alerts',
    () => alert({ booking_id: newId(), dispatch_id: ids.dispatch }),
  ],
  ['overdue_alerts_dispatch_fk', 'overdue_alerts', () => alert({ dispatch_id: newId() })],
  ['overdue_alerts_member_fk', 'overdue_alerts', () => alert({ member_id: newId() })],
  ['overdue_alerts_once_uq', 'overdue_alerts', () => alert()],
];

describe('the database refuses', () => {
  it.each(CASES)('%s', async (constraint, table, row) => {
    expect(await rowRefusal(db, clubId, table, row())).toMatchObject({ constraint });
  });

  it('dispatches_booking_uq: two dispatches of one number, though the first was taken back', async () => {
    const twice = async (): Promise<unknown> =>
      db.tenantDb
        .run(clubId, async (em) => {
          await insertRow(em, 'dispatches', dispatch());
          await insertRow(em, 'dispatches', dispatch());
        })
        .catch((error: { driverError?: { constraint?: string } }) => error.driverError?.constraint);
    expect(await twice()).toBe('dispatches_booking_uq');
  });

  it('returns_once_uq: a flight that comes back twice, even were it put out again by hand', async () => {
    const again = await db.tenantDb
      .run(clubId, async (em) => {
        await em.query("UPDATE bookings SET status = 'returned' WHERE id = $1", [ids.out]);
        await em.query("UPDATE bookings SET status = 'dispatched' WHERE id = $1", [ids.back]);
        await insertRow(em, 'returns', returned({ booking_id: ids.back }));
      })
      .catch((error: { driverError?: { constraint?: string } }) => error.driverError?.constraint);
    expect(again).toBe('returns_once_uq');
  });

  it('returns_replaces_uq: two corrections of one return', async () => {
    expect(await rowRefusal(db, clubId, 'returns', corrected())).toBeNull();
    expect(await rowRefusal(db, clubId, 'returns', corrected())).toMatchObject({
      constraint: 'returns_replaces_uq',
    });
  });

  it('changes of what was put in: dispatches_append_only, dispatch_meters_append_only, dispatch_voids_append_only, returns_append_only, return_meters_append_only, return_entries_append_only', async () => {
    await expectWrittenOnce(db, clubId, [
      ['dispatch_voids', 'reason'],
      ['returns', 'from_airfield'],
      ['dispatch_meters', 'kind'],
      ['return_meters', 'kind'],
    ]);
    for (const table of ['dispatches', 'return_entries']) {
      expect(await refusal(db, clubId, `DELETE FROM ${table}`)).toMatchObject({ state: '42501' });
      await expect(db.admin.query(`DELETE FROM ${table}`)).rejects.toMatchObject({
        constraint: `${table}_append_only`,
      });
    }
  });

  it('has a case for every constraint of the tables', async () => {
    const besides = ['dispatches_booking_uq', 'returns_replaces_uq'];
    const proven = new Set([...CASES.map(([constraint]) => constraint), ...besides]);
    const needed = await constraintsToProve(db, TABLES);
    expect(needed.length).toBeGreaterThan(40);
    expect(needed.filter((constraint) => !proven.has(constraint))).toEqual([]);
  });
});

it('whoever speaks for no club sees which aircraft are out by their ids, and nothing else', async () => {
  expect(await db.dataSource.query('SELECT booking_id FROM aircraft_out')).toEqual([{ booking_id: ids.out }]);
  expect(await db.dataSource.query('SELECT 1 FROM dispatches')).toEqual([]);
  expect(await db.dataSource.query('SELECT 1 FROM overdue_alerts')).toEqual([]);
});
