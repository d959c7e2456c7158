/** The fleet: what the database refuses when the service is gone round. */
import pg from 'pg';
import { createTestDatabase, type TestDatabase } from '../../src/platform/database/testing.js';
import { newId } from '../../src/platform/ids.js';
import { refusal } from '../support/refusals.js';
import { FLEET_INSERTS, FLEET_TABLES, fleetRows, type FleetIds, photoOf } from './fleet-rows.js';
import {
  constraintsToProve,
  fleetIds,
  insertAircraft,
  insertRow,
  plantClub,
  rowRefusal,
} from './refusals.js';

const NOBODY = '01900000-0000-7000-8000-000000000000';

let db: TestDatabase;
let ids: FleetIds;
let foreign: FleetIds;

beforeAll(async () => {
  db = await createTestDatabase();
  ids = await plantFleet();
  foreign = await plantFleet();
}, 60_000);
afterAll(() => db.drop());

/** A club with one row in every table of the fleet. */
async function plantFleet(): Promise<FleetIds> {
  const { clubId, memberId } = await plantClub(db);
  const made = fleetIds({ clubId, memberId });
  const rows = fleetRows(made);
  await db.tenantDb.run(clubId, async (em) => {
    await insertAircraft(em, made);
    await insertRow(
      em,
      'equipment',
      rows.equipment({ id: made.secondEquipmentId, aircraft_id: made.secondAircraftId }),
    );
    await insertRow(em, 'airworthiness_items', rows.airworthiness_items({ id: made.itemId }));
    await insertRow(em, 'squawks', rows.squawks({ id: made.squawkId }));
    await insertRow(em, 'equipment_changes', rows.equipment_changes({ id: made.changeId }));
    for (const table of [
      'registrations',
      'permits',
      'meter_readings',
      'compliances',
      'deferrals',
      'differences',
      'weighings',
      'upgrade_wishes',
      'squawk_parts',
      'attachments',
      'loading_sheets',
      'performance_sheets',
    ] as const) {
      await insertRow(em, table, rows[table]());
    }
  });
  return made;
}

const stateFor = (constraint: string) =>
  constraint.endsWith('_uq') ? '23505' : constraint.endsWith('_fk') ? '23503' : '23514';

it.each(FLEET_INSERTS)('%s', async (constraint, table, wrong) => {
  const row = fleetRows(ids)[table](wrong(ids));
  expect(await rowRefusal(db, ids.clubId, table, row)).toEqual({
    state: stateFor(constraint),
    constraint,
  });
});

it('has a case for every constraint of these tables', async () => {
  // Holds more than the primary key does, so that one is always broken first; it is there for foreign keys to point at.
  const implied = [
    ...['equipment_aircraft_uq', 'equipment_changes_aircraft_uq', 'squawks_aircraft_uq'],
    ...['airworthiness_items_aircraft_uq', 'upgrade_wishes_aircraft_uq'],
  ];
  const fromTrigger = [
    ...['meter_readings_not_below_last_chk', 'meter_readings_not_above_next_chk', 'meter_readings_at_uq'],
    'squawks_duplicate_weaker_chk',
  ];
  const proven = new Set(FLEET_INSERTS.map(([constraint]) => constraint));
  // In directives.spec.ts.
  proven.add('airworthiness_items_directive_fk').add('airworthiness_items_directive_chk');
  // Below: a second sheet of a model.
  proven.add('loading_sheets_model_uq').add('performance_sheets_model_uq');
  // Below: a row of the same photo.
  proven.add('attachments_once_uq');
  const wanted = [...(await constraintsToProve(db, FLEET_TABLES)), ...fromTrigger];
  expect([...proven, ...implied].sort()).toEqual(wanted.sort());
});

it.each(['loading_sheets', 'performance_sheets'] as const)(
  'keeps one of the %s of a model',
  async (table) => {
    const ofModel = () => fleetRows(ids)[table]({ aircraft_id: null, model_id: ids.modelId });
    expect(await rowRefusal(db, ids.clubId, table, ofModel())).toBeNull();
    expect(await rowRefusal(db, ids.clubId, table, ofModel())).toEqual({
      state: '23505',
      constraint: `${table}_model_uq`,
    });
  },
);

it.each(FLEET_TABLES)("shows and changes nothing of another club's %s", async (table) => {
  await db.tenantDb.run(ids.clubId, async (em) => {
    const [{ count }] = await em.query(`SELECT count(*)::int AS count FROM ${table} WHERE club_id = $1`, [
      foreign.clubId,
    ]);
    expect(count).toBe(0);
    const [{ own }] = await em.query(`SELECT count(*)::int AS own FROM ${table} WHERE club_id = $1`, [
      ids.clubId,
    ]);
    expect(own).toBeGreaterThan(0);
  });
  const row = fleetRows(foreign)[table as keyof ReturnType<typeof fleetRows>]({ id: newId() });
  expect(await rowRefusal(db, ids.clubId, table, row)).toEqual({ state: '42501', constraint: undefined });
});

it.each([
  ['aircraft', { model_id: 'modelId' }, 'aircraft_model_fk'],
  ['aircraft', { home_airfield_id: 'airfieldId' }, 'aircraft_home_fk'],
  ['equipment', { aircraft_id: 'aircraftId' }, 'equipment_aircraft_fk'],
  ['meter_readings', { aircraft_id: 'aircraftId' }, 'meter_readings_aircraft_fk'],
  ['compliances', { item_id: 'itemId' }, 'compliances_item_fk'],
  ['squawks', { reported_by: 'memberId' }, 'squawks_reporter_fk'],
  ['deferrals', { squawk_id: 'squawkId' }, 'deferrals_squawk_fk'],
] as const)("refuses %s that name another club's %j", async (table, names, constraint) => {
  const [column, key] = Object.entries(names)[0] as [string, keyof FleetIds];
  const row = fleetRows(ids)[table]({ registration: 'XB-303', [column]: foreign[key] });
  if (table !== 'aircraft') delete row['registration'];
  expect(await rowRefusal(db, ids.clubId, table, row)).toEqual({
    state: '23503',
    constraint,
  });
});

it.each([
  ['aircraft_models', 'modelId', 'aircraft_model_fk'],
  ['equipment', 'equipmentId', 'airworthiness_items_equipment_fk'],
  ['airworthiness_items', 'itemId', 'compliances_item_fk'],
  ['squawks', 'squawkId', 'deferrals_squawk_fk'],
] as const)('keeps %s that other rows name', async (table, key, constraint) => {
  const refused = await refusal(db, ids.clubId, `DELETE FROM ${table} WHERE id = $1`, [ids[key]]);
  expect(refused).toEqual({ state: '23503', constraint });
});

describe('squawks', () => {
  it('are duplicates of open ones only, and never of themselves', async () => {
    const closed = newId();
    const at = '2026-03-02T12:00:00Z';
    const row = (more: Record<string, unknown>) => fleetRows(ids).squawks(more);
    const fixed = { state: 'fixed', closed_at: at, corrective_action: 'Lamp', signed_by: 'Mo' };
    await db.tenantDb.run(ids.clubId, (em) => insertRow(em, 'squawks', row({ id: closed, ...fixed })));
    const own = newId();
    for (const [id, of] of [
      [newId(), closed],
      [own, own],
    ]) {
      const twin = row({ id, state: 'duplicate', closed_at: at, duplicate_of: of });
      expect(await rowRefusal(db, ids.clubId, 'squawks', twin)).toEqual({
        ...{ state: '23514', constraint: 'squawks_duplicate_open_chk' },
      });
    }
    const refused = await refusal(
      db,
      ids.clubId,
      "UPDATE squawks SET state = 'duplicate', closed_at = now(), duplicate_of = id WHERE id = $1",
      [ids.squawkId],
    );
    expect(refused).toEqual({ state: '23514', constraint: 'squawks_duplicate_open_chk' });
  });

  it('keep the equipment of their duplicates', async () => {
    const [kept, twin] = [newId(), newId()];
    const about = { equipment_id: ids.equipmentId };
    const closed = { state: 'duplicate', closed_at: '2026-03-02T12:00:00Z', duplicate_of: kept };
    await db.tenantDb.run(ids.clubId, async (em) => {
      await insertRow(em, 'squawks', fleetRows(ids).squawks({ id: kept, ...about }));
      await insertRow(em, 'squawks', fleetRows(ids).squawks({ id: twin, ...about, ...closed }));
    });
    const sql = 'UPDATE squawks SET equipment_id = NULL WHERE id = $1';
    expect(await refusal(db, ids.clubId, sql, [kept])).toEqual({
      ...{ state: '23514', constraint: 'squawks_kept_equipment_chk' },
    });
  });

  it('hold six photos, each once, that nobody changes', async () => {
    const squawk = newId();
    const photo = (text: string) => fleetRows(ids).attachments({ squawk_id: squawk, ...photoOf(text) });
    await db.tenantDb.run(ids.clubId, async (em) => {
      await insertRow(em, 'squawks', fleetRows(ids).squawks({ id: squawk }));
      for (const text of ['1', '2', '3', '4', '5']) await insertRow(em, 'attachments', photo(text));
    });
    expect(await rowRefusal(db, ids.clubId, 'attachments', photo('1'))).toEqual({
      ...{ state: '23505', constraint: 'attachments_once_uq' },
    });
    await db.tenantDb.run(ids.clubId, (em) => insertRow(em, 'attachments', photo('6')));
    expect(await rowRefusal(db, ids.clubId, 'attachments', photo('7'))).toEqual({
      ...{ state: '23514', constraint: 'attachments_count_chk' },
    });
    for (const table of ['attachments', 'squawk_parts']) {
      const sql = `DELETE FROM ${table}`;
      expect(await refusal(db, ids.clubId, sql)).toEqual({ state: '42501', constraint: undefined });
      await expect(db.admin.query(sql)).rejects.toMatchObject({ constraint: `${table}_append_only` });
    }
  });
});

describe('meter readings', () => {
  it.each(['UPDATE meter_readings SET shown_tenths = 1', 'DELETE FROM meter_readings'])(
    'refuse %s',
    async (sql) => {
      expect(await refusal(db, ids.clubId, sql)).toEqual({ state: '42501', constraint: undefined });
      await expect(db.admin.query(sql)).rejects.toMatchObject({
        code: '23514',
        constraint: 'meter_readings_append_only',
      });
    },
  );

  it('taken back leave their time free, and the order is that of those that stand', async () => {
    const reading = (more: object) => fleetRows(ids).meter_readings({ kind: 'airframe', ...more });
    const [wrong, right] = [newId(), newId()];
    const VOID = `INSERT INTO meter_reading_voids (club_id, reading_id, reason, voided_by)
      VALUES (bellcrank_club(), $1, $2, $3)`;
    await db.tenantDb.run(ids.clubId, async (em) => {
      await insertRow(em, 'meter_readings', reading({ id: wrong, shown_tenths: 9000 }));
      await em.query(VOID, [wrong, 'Two digits swapped', ids.memberId]);
      await insertRow(em, 'meter_readings', reading({ id: right, shown_tenths: 900 }));
    });
    expect(await rowRefusal(db, ids.clubId, 'meter_readings', reading({ shown_tenths: 900 }))).toEqual({
      ...{ state: '23505', constraint: 'meter_readings_at_uq' },
    });
    for (const [values, constraint] of [
      [[wrong, 'Two digits swapped', ids.memberId], 'meter_reading_voids_pkey'],
      [[NOBODY, 'Two digits swapped', ids.memberId], 'meter_reading_voids_reading_fk'],
      [[right, 'Two digits swapped', NOBODY], 'meter_reading_voids_member_fk'],
      [[right, 'Oh', ids.memberId], 'meter_reading_voids_reason_chk'],
    ] as const)
      expect(await refusal(db, ids.clubId, VOID, [...values])).toMatchObject({ constraint });
    await expect(db.admin.query('DELETE FROM meter_reading_voids')).rejects.toMatchObject({
      constraint: 'meter_reading_voids_append_only',
    });
  });

  it('make their total themselves', async () => {
    const row = { ...fleetRows(ids).meter_readings(), total_tenths: 5 };
    expect(await rowRefusal(db, ids.clubId, 'meter_readings', row)).toEqual({
      state: '428C9',
      constraint: undefined,
    });
  });

  it('queue: a lower one waits for a higher one before it, and is refused', async () => {
    const [first, second] = [await serviceClient(), await serviceClient()];
    const reading = (more: object) => fleetRows(ids).meter_readings({ kind: 'hobbs', ...more });
    try {
      await insertRow(
        first,
        'meter_readings',
        reading({ shown_tenths: 1000, read_at: '2026-02-01T12:00:00Z' }),
      );
      const late = insertRow(
        second,
        'meter_readings',
        reading({ shown_tenths: 500, read_at: '2026-02-02T12:00:00Z' }),
      ).then(
        () => 'let through',
        (error: { constraint?: string }) => error.constraint,
      );
      expect(await Promise.race([late, new Promise((done) => setTimeout(() => done('waiting'), 300))])).toBe(
        'waiting',
      );
      await first.query('COMMIT');
      expect(await late).toBe('meter_readings_not_below_last_chk');
    } finally {
      for (const client of [first, second]) await client.end();
    }
  });

  /** A connection of the service role in a transaction of the club. */
  async function serviceClient(): Promise<pg.Client> {
    const client = new pg.Client({ connectionString: db.serviceUrl });
    await client.connect();
    await client.query('BEGIN');
    await client.query("SELECT set_config('bellcrank.club_id', $1, true)", [ids.clubId]);
    return client;
  }
});

it('counts the edits itself', async () => {
  await db.tenantDb.run(ids.clubId, async (em) => {
    await em.query('UPDATE squawks SET row_version = 99 WHERE id = $1', [ids.squawkId]);
    expect(await em.query('SELECT row_version FROM squawks WHERE id = $1', [ids.squawkId])).toEqual([
      { row_version: 2 },
    ]);
  });
});
