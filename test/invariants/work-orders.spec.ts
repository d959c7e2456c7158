/** Shop visits, signers and displaced flights: what the database refuses when the service is gone round. */
import { createTestDatabase, type TestDatabase } from '../../src/platform/database/testing.js';
import { newId } from '../../src/platform/ids.js';
import { refusal, type Row } from '../support/refusals.js';
import { fleetRows, type FleetIds } from './fleet-rows.js';
import {
  constraintsToProve,
  fleetIds,
  insertAircraft,
  insertRow,
  plantClub,
  rowRefusal,
} from './refusals.js';

const NOBODY = '01900000-0000-7000-8000-000000000000';
const TABLES = ['signers', 'work_orders', 'work_lines', 'displacements'];
const AT = '2026-03-10T12:00:00Z';

interface Scene extends FleetIds {
  wishId: string;
  weighingId: string;
  signerId: string;
  bookingId: string;
  flightId: string;
  orderId: string;
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
  const id = (): string => newId();
  const ids: Scene = {
    ...fleetIds({ clubId, memberId }),
    ...{ wishId: id(), weighingId: id(), signerId: id(), bookingId: id(), flightId: id(), orderId: id() },
  };
  const rows = fleetRows(ids);
  await db.tenantDb.run(clubId, async (em) => {
    await insertAircraft(em, ids);
    await insertRow(em, 'airworthiness_items', rows.airworthiness_items({ id: ids.itemId }));
    await insertRow(em, 'squawks', rows.squawks({ id: ids.squawkId }));
    await insertRow(em, 'equipment_changes', rows.equipment_changes({ id: ids.changeId }));
    await insertRow(em, 'weighings', rows.weighings({ id: ids.weighingId }));
    await insertRow(em, 'upgrade_wishes', rows.upgrade_wishes({ id: ids.wishId }));
    await insertRow(em, 'signers', signer(ids, { id: ids.signerId }));
    await insertRow(em, 'bookings', block(ids, { id: ids.bookingId }));
    await insertRow(em, 'bookings', block(ids, { id: ids.flightId, during: '[2026-05-01,2026-05-02)' }));
    await insertRow(em, 'work_orders', order(ids, { id: ids.orderId, booking_id: ids.bookingId }));
    await insertRow(em, 'work_lines', line(ids));
    await insertRow(em, 'displacements', displaced(ids));
  });
  return ids;
}

const row = (ids: Scene, sound: Row, more: Row): Row => ({
  club_id: ids.clubId,
  id: newId(),
  ...sound,
  ...more,
});
const signer = (ids: Scene, more: Row = {}): Row =>
  row(ids, { name: 'Mo Wrench', certificate: '1234567', holds: 'mechanic', valid_from: '2020-01-01' }, more);
const block = (ids: Scene, more: Row = {}): Row =>
  row(
    ids,
    {
      ...{ kind: 'maintenance', aircraft_id: ids.aircraftId, member_id: ids.memberId, request: '{}' },
      ...{ during: '[2026-04-01,2026-04-08)', expected_tenths: 0 },
    },
    more,
  );
const order = (ids: Scene, more: Row = {}): Row =>
  row(ids, { aircraft_id: ids.aircraftId, title: 'Annual inspection', made_by: ids.memberId }, more);
const signed = (ids: Scene, more: Row = {}): Row =>
  order(ids, {
    ...{ state: 'signed', begun_at: AT, signed_at: AT, signed_on: '2026-03-10', statement: 'Airworthy.' },
    ...{ signer_id: ids.signerId, signed_by: 'Mo Wrench, 1234567' },
    ...more,
  });
const line = (ids: Scene, more: Row = {}): Row =>
  row(ids, { order_id: ids.orderId, aircraft_id: ids.aircraftId, kind: 'other', title: 'Look at it' }, more);
const displaced = (ids: Scene, more: Row = {}): Row =>
  row(
    ids,
    {
      ...{ booking_id: ids.flightId, aircraft_id: ids.aircraftId, order_id: ids.orderId },
      ...{ member_id: ids.memberId },
    },
    more,
  );
const checked = {
  check_flight_because: 'Cables',
  check_flown_at: '2026-03-11T12:00:00Z',
  check_entry: 'Good.',
};

const CASES: [constraint: string, table: string, wrong: (ids: Scene) => Row][] = [
  ['signers_name_chk', 'signers', (of) => signer(of, { name: ' ' })],
  ['signers_certificate_chk', 'signers', (of) => signer(of, { certificate: '' })],
  ['signers_holds_chk', 'signers', (of) => signer(of, { holds: 'friend' })],
  ['signers_span_chk', 'signers', (of) => signer(of, { valid_through: '2019-12-31' })],
  ['work_orders_title_chk', 'work_orders', (of) => order(of, { title: ' ' })],
  ['work_orders_shop_chk', 'work_orders', (of) => order(of, { shop: 'x'.repeat(201) })],
  ['work_orders_state_chk', 'work_orders', (of) => order(of, { state: 'lost' })],
  [
    'work_orders_because_chk',
    'work_orders',
    (of) => order(of, { state: 'cancelled', cancelled_because: 'no' }),
  ],
  ['work_orders_statement_chk', 'work_orders', (of) => signed(of, { statement: ' ' })],
  ['work_orders_check_because_chk', 'work_orders', (of) => signed(of, { check_flight_because: ' ' })],
  [
    'work_orders_check_entry_chk',
    'work_orders',
    (of) => signed(of, { ...checked, check_flown_by: of.memberId, check_entry: ' ' }),
  ],
  ['work_orders_aircraft_fk', 'work_orders', (of) => order(of, { aircraft_id: NOBODY })],
  [
    'work_orders_booking_fk',
    'work_orders',
    (of) => order(of, { aircraft_id: of.secondAircraftId, booking_id: of.flightId }),
  ],
  ['work_orders_booking_uq', 'work_orders', (of) => order(of, { booking_id: of.bookingId })],
  ['work_orders_signer_fk', 'work_orders', (of) => signed(of, { signer_id: NOBODY })],
  ['work_orders_change_fk', 'work_orders', (of) => order(of, { equipment_change_id: NOBODY })],
  ['work_orders_weighing_fk', 'work_orders', (of) => order(of, { weighing_id: NOBODY })],
  ['work_orders_made_fk', 'work_orders', (of) => order(of, { made_by: NOBODY })],
  ['work_orders_flown_by_fk', 'work_orders', (of) => signed(of, { ...checked, check_flown_by: NOBODY })],
  ['work_orders_begun_chk', 'work_orders', (of) => order(of, { state: 'in-work' })],
  ['work_orders_cancelled_chk', 'work_orders', (of) => order(of, { state: 'cancelled' })],
  ['work_orders_signed_chk', 'work_orders', (of) => signed(of, { signer_id: null })],
  ['work_orders_order_chk', 'work_orders', (of) => signed(of, { begun_at: '2026-03-10T12:00:01Z' })],
  [
    'work_orders_check_chk',
    'work_orders',
    (of) => order(of, { state: 'in-work', begun_at: AT, check_flight_because: 'Cables' }),
  ],
  [
    'work_orders_flown_chk',
    'work_orders',
    (of) => signed(of, { ...checked, check_flown_by: of.memberId, check_flown_at: '2026-03-09T12:00:00Z' }),
  ],
  ['work_lines_kind_chk', 'work_lines', (of) => line(of, { kind: 'party' })],
  ['work_lines_title_chk', 'work_lines', (of) => line(of, { title: ' ' })],
  ['work_lines_outcome_chk', 'work_lines', (of) => line(of, { outcome: 'perhaps' })],
  ['work_lines_note_chk', 'work_lines', (of) => line(of, { note: 'x'.repeat(2001) })],
  ['work_lines_about_chk', 'work_lines', (of) => line(of, { kind: 'item' })],
  ['work_lines_order_fk', 'work_lines', (of) => line(of, { aircraft_id: of.secondAircraftId })],
  ['work_lines_item_fk', 'work_lines', (of) => line(of, { kind: 'item', item_id: NOBODY })],
  ['work_lines_squawk_fk', 'work_lines', (of) => line(of, { kind: 'squawk', squawk_id: NOBODY })],
  ['work_lines_wish_fk', 'work_lines', (of) => line(of, { kind: 'wish', wish_id: NOBODY })],
  ['displacements_booking_fk', 'displacements', (of) => displaced(of, { booking_id: NOBODY })],
  [
    'displacements_order_fk',
    'displacements',
    (of) => displaced(of, { booking_id: of.bookingId, order_id: NOBODY }),
  ],
  [
    'displacements_block_fk',
    'displacements',
    (of) => displaced(of, { booking_id: of.bookingId, order_id: null, block_id: NOBODY }),
  ],
  ['displacements_for_chk', 'displacements', (of) => displaced(of, { order_id: null })],
  ['displacements_member_fk', 'displacements', (of) => displaced(of, { member_id: NOBODY })],
  ['displacements_once_uq', 'displacements', (of) => displaced(of)],
];

const stateFor = (constraint: string) =>
  constraint.endsWith('_uq') ? '23505' : constraint.endsWith('_fk') ? '23503' : '23514';

it.each(CASES)('%s', async (constraint, table, wrong) => {
  expect(await rowRefusal(db, own.clubId, table, wrong(own))).toEqual({
    state: stateFor(constraint),
    constraint,
  });
});

it('has a case for every constraint of these tables', async () => {
  const below = ['work_lines_item_uq', 'work_lines_squawk_uq', 'work_lines_wish_uq'];
  // Of `bookings` there is one more of the kind, bookings_of_aircraft_uq: each holds more than the primary key does.
  const implied = ['work_orders_aircraft_uq'];
  const proven = CASES.map(([constraint]) => constraint);
  expect([...proven, ...below, ...implied].sort()).toEqual(await constraintsToProve(db, TABLES));
});

it.each(TABLES)("shows and changes nothing of another club's %s", async (table) => {
  await db.tenantDb.run(own.clubId, async (em) => {
    const count = async (clubId: string): Promise<number> =>
      (await em.query(`SELECT count(*)::int AS n FROM ${table} WHERE club_id = $1`, [clubId]))[0].n;
    expect(await count(foreign.clubId)).toBe(0);
    expect(await count(own.clubId)).toBeGreaterThan(0);
  });
  const make = { signers: signer, work_orders: order, work_lines: line, displacements: displaced }[table]!;
  expect(await rowRefusal(db, own.clubId, table, make(foreign))).toEqual({
    state: '42501',
    constraint: undefined,
  });
});

it('names each item, squawk and wish once on a visit', async () => {
  for (const [column, kind, id] of [
    ['item_id', 'item', own.itemId],
    ['squawk_id', 'squawk', own.squawkId],
    ['wish_id', 'wish', own.wishId],
  ] as const) {
    const about = () => line(own, { kind, [column]: id });
    await db.tenantDb.run(own.clubId, (em) => insertRow(em, 'work_lines', about()));
    const constraint = `work_lines_${kind}_uq`;
    expect([constraint, await rowRefusal(db, own.clubId, 'work_lines', about())]).toEqual([
      constraint,
      { state: '23505', constraint },
    ]);
  }
});

describe('a visit', () => {
  const update = (id: string, set: string) =>
    refusal(db, own.clubId, `UPDATE work_orders SET ${set} WHERE id = $1`, [id]);
  const refusedBy = (constraint: string) => ({ state: '23514', constraint });
  const plantOrder = async (made: Row): Promise<string> => {
    await db.tenantDb.run(own.clubId, (em) => insertRow(em, 'work_orders', made));
    return made['id'] as string;
  };
  const sign = `state = 'signed', signed_at = '${AT}', signed_on = '2026-03-10', statement = 'Airworthy.', signed_by = 'Mo'`;

  it('is not signed before it began, nor called off after, nor planned again', async () => {
    const planned = await plantOrder(order(own));
    expect(await update(planned, `${sign}, begun_at = '${AT}', signer_id = '${own.signerId}'`)).toEqual(
      refusedBy('work_orders_moves_chk'),
    );
    const inWork = await plantOrder(order(own, { state: 'in-work', begun_at: AT }));
    const off = "state = 'cancelled', cancelled_because = 'No parts', begun_at = NULL";
    expect(await update(inWork, off)).toEqual(refusedBy('work_orders_moves_chk'));
    expect(await update(inWork, "state = 'planned', begun_at = NULL")).toEqual(
      refusedBy('work_orders_moves_chk'),
    );
    expect(await update(planned, off)).toBeNull();
    expect(await update(planned, `state = 'in-work', cancelled_because = NULL, begun_at = '${AT}'`)).toEqual(
      refusedBy('work_orders_moves_chk'),
    );
  });

  it('is signed with every line said done or not, and then stays, but for the check flight', async () => {
    const id = await plantOrder(order(own, { state: 'in-work', begun_at: AT }));
    const open = line(own, { order_id: id });
    await db.tenantDb.run(own.clubId, (em) => insertRow(em, 'work_lines', open));
    const signing = `${sign}, signer_id = '${own.signerId}', check_flight_because = 'Cables'`;
    expect(await update(id, signing)).toEqual(refusedBy('work_orders_lines_chk'));
    await db.tenantDb.run(own.clubId, (em) =>
      em.query("UPDATE work_lines SET outcome = 'done' WHERE id = $1", [open['id']]),
    );
    await db.tenantDb.run(own.clubId, (em) =>
      em.query(`UPDATE work_orders SET ${signing} WHERE id = $1`, [id]),
    );
    expect(await update(id, "statement = 'Never mind.'")).toEqual(refusedBy('work_orders_kept_chk'));
    for (const sql of [
      "UPDATE work_lines SET outcome = 'not-done' WHERE order_id = $1",
      'DELETE FROM work_lines WHERE order_id = $1',
    ])
      expect(await refusal(db, own.clubId, sql, [id])).toEqual(refusedBy('work_lines_kept_chk'));
    expect(await rowRefusal(db, own.clubId, 'work_lines', line(own, { order_id: id }))).toEqual(
      refusedBy('work_lines_kept_chk'),
    );
    const flown = `check_flown_at = '2026-03-11T12:00:00Z', check_flown_by = '${own.memberId}', check_entry = 'Good.'`;
    await db.tenantDb.run(own.clubId, (em) =>
      em.query(`UPDATE work_orders SET ${flown} WHERE id = $1`, [id]),
    );
    expect(await update(id, "check_flown_at = '2026-03-12T12:00:00Z'")).toEqual(
      refusedBy('work_orders_kept_chk'),
    );
  });
});
