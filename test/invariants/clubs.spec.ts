/** Clubs, airfields, runways, policy: what the database refuses when the service is gone round. */
import { createTestDatabase, type TestDatabase } from '../../src/platform/database/testing.js';
import { newId } from '../../src/platform/ids.js';
import { refusal, type Row } from '../support/refusals.js';
import { constraintsToProve, insertRow, plantClub, rowRefusal } from './refusals.js';

const NOBODY = '01900000-0000-7000-8000-000000000000';
const TABLES = ['clubs', 'airfields', 'runways', 'policy_values', 'audit_log'];

let db: TestDatabase;
let clubId: string;
let otherClub: string;
let airfieldId: string;
let foreignAirfield: string;

const airfield = (more: Row = {}): Row => ({
  ...{
    club_id: clubId,
    id: newId(),
    code: `X${newId().slice(-7).toUpperCase()}`,
    name: 'Larkfield',
    zone: 'America/Chicago',
  },
  ...{ latitude_deg: 41.25, longitude_deg: -93.5, elevation_ft: 912, ...more },
});
const runway = (more: Row = {}): Row => ({
  ...{
    club_id: clubId,
    id: newId(),
    airfield_id: airfieldId,
    designator: '09',
    true_heading_deg: 91,
    length_ft: 3200,
  },
  ...{ surface: 'paved', lit: true, ...more },
});
const value = (more: Row = {}): Row => ({
  ...{
    club_id: clubId,
    id: newId(),
    parameter_id: 'club.model-recency.days',
    valid_from: '2026-01-01',
    value: '60',
  },
  ...{ reference: 'Handbook', ...more },
});

beforeAll(async () => {
  db = await createTestDatabase();
  ({ clubId } = await plantClub(db));
  ({ clubId: otherClub } = await plantClub(db));
  airfieldId = newId();
  foreignAirfield = newId();
  await db.tenantDb.run(clubId, async (em) => {
    await insertRow(em, 'airfields', airfield({ id: airfieldId, code: 'XLKF' }));
    await insertRow(em, 'runways', runway());
    await insertRow(em, 'policy_values', value());
  });
  await db.tenantDb.run(otherClub, (em) =>
    insertRow(em, 'airfields', airfield({ club_id: otherClub, id: foreignAirfield })),
  );
}, 60_000);
afterAll(() => db.drop());

/** Constraint, table, what is wrong. */
const INSERTS: [
  constraint: string,
  table: 'airfields' | 'runways' | 'policy_values' | 'audit_log',
  wrong: () => Row,
][] = [
  ['airfields_code_chk', 'airfields', () => airfield({ code: 'xlkf' })],
  ['airfields_code_uq', 'airfields', () => airfield({ code: 'XLKF' })],
  ['airfields_name_chk', 'airfields', () => airfield({ name: '  ' })],
  ['airfields_latitude_chk', 'airfields', () => airfield({ latitude_deg: 90.5 })],
  ['airfields_longitude_chk', 'airfields', () => airfield({ longitude_deg: -180.5 })],
  ['airfields_elevation_chk', 'airfields', () => airfield({ elevation_ft: -1501 })],
  ['runways_airfield_fk', 'runways', () => runway({ airfield_id: NOBODY })],
  ['runways_designator_chk', 'runways', () => runway({ designator: '9' })],
  ['runways_designator_uq', 'runways', () => runway()],
  ['runways_heading_chk', 'runways', () => runway({ designator: '18', true_heading_deg: 360 })],
  ['runways_length_chk', 'runways', () => runway({ designator: '18', length_ft: 99 })],
  ['runways_slope_chk', 'runways', () => runway({ designator: '18', slope_percent: 20.1 })],
  ['runways_surface_chk', 'runways', () => runway({ designator: '18', surface: 'sand' })],
  [
    'policy_values_parameter_chk',
    'policy_values',
    () => value({ parameter_id: 'us.passenger-recency.days' }),
  ],
  [
    'policy_values_value_chk',
    'policy_values',
    () => value({ valid_from: '2026-02-01', value: '{"days": 60}' }),
  ],
  ['policy_values_reference_chk', 'policy_values', () => value({ valid_from: '2026-02-01', reference: ' ' })],
  ['policy_values_from_uq', 'policy_values', () => value()],
  [
    'audit_log_action_chk',
    'audit_log',
    () => ({ club_id: clubId, id: undefined, action: 'truncate', table_name: 'x' }),
  ],
];
const UPDATES: [constraint: string, sql: string][] = [
  ['clubs_slug_chk', "UPDATE clubs SET slug = 'Not A Slug'"],
  ['clubs_slug_uq', 'UPDATE clubs SET slug = $1'],
  ['clubs_name_chk', "UPDATE clubs SET name = ' '"],
  ['clubs_jurisdiction_chk', "UPDATE clubs SET jurisdiction = 'UK'"],
];
const stateFor = (constraint: string) =>
  constraint.endsWith('_uq') ? '23505' : constraint.endsWith('_fk') ? '23503' : '23514';

it.each(INSERTS)('%s', async (constraint, table, wrong) => {
  const refused = await rowRefusal(db, clubId, table, wrong());
  expect(refused).toEqual({ state: stateFor(constraint), constraint });
});

it.each(UPDATES)('%s', async (constraint, sql) => {
  const [{ slug }] = (await db.admin.query('SELECT slug FROM clubs WHERE club_id = $1', [otherClub])).rows;
  const refused = await refusal(db, clubId, sql, sql.includes('$1') ? [slug] : []);
  expect(refused).toEqual({ state: stateFor(constraint), constraint });
});

it('has a case for every constraint of these tables', async () => {
  const proven = [...INSERTS.map(([constraint]) => constraint), ...UPDATES.map(([constraint]) => constraint)];
  expect(proven.sort()).toEqual(await constraintsToProve(db, TABLES));
});

describe('clubs are kept apart', () => {
  it('shows nothing of another club, and changes nothing', async () => {
    await db.tenantDb.run(clubId, async (em) => {
      expect(await em.query('SELECT club_id FROM clubs')).toEqual([{ club_id: clubId }]);
      expect(await em.query('SELECT 1 FROM airfields WHERE id = $1', [foreignAirfield])).toEqual([]);
      expect(await em.query("UPDATE airfields SET name = 'Ours' WHERE id = $1", [foreignAirfield])).toEqual([
        [],
        0,
      ]);
      expect(await em.query('DELETE FROM airfields WHERE id = $1', [foreignAirfield])).toEqual([[], 0]);
    });
  });

  it('refuses a row for another club, and a move to it', async () => {
    const forOther = airfield({ club_id: otherClub });
    const noRight = { state: '42501', constraint: undefined };
    expect(await rowRefusal(db, clubId, 'airfields', forOther)).toEqual(noRight);
    const move = 'UPDATE airfields SET club_id = $1 WHERE id = $2';
    expect(await refusal(db, clubId, move, [otherClub, airfieldId])).toEqual(noRight);
  });

  it("refuses a runway on another club's airfield", async () => {
    const refused = await rowRefusal(
      db,
      clubId,
      'runways',
      runway({ airfield_id: foreignAirfield, designator: '36' }),
    );
    expect(refused).toEqual({ state: '23503', constraint: 'runways_airfield_fk' });
  });

  it('lets the service make or delete no club', async () => {
    const id = newId();
    const row = {
      club_id: id,
      id: undefined,
      slug: 'new-club',
      name: 'New',
      zone: 'America/Chicago',
      jurisdiction: 'US',
    };
    expect(await rowRefusal(db, id, 'clubs', row)).toEqual({ state: '42501', constraint: undefined });
    expect(await refusal(db, clubId, 'DELETE FROM clubs')).toEqual({ state: '42501', constraint: undefined });
  });
});

describe('the audit log', () => {
  it('keeps the row before and after, and who acted', async () => {
    const actorId = newId();
    const id = newId();
    await db.tenantDb.run(clubId, (em) => insertRow(em, 'airfields', airfield({ id, code: 'XAUD' })), {
      actorId,
    });
    await db.tenantDb.run(
      clubId,
      (em) => em.query("UPDATE airfields SET name = 'Heron Point' WHERE id = $1", [id]),
      { actorId },
    );
    await db.tenantDb.run(clubId, (em) => em.query('DELETE FROM airfields WHERE id = $1', [id]), { actorId });
    const rows = await db.tenantDb.run(clubId, (em) =>
      em.query(
        `SELECT action, actor_id, before ->> 'name' AS before, after ->> 'name' AS after, after ->> 'row_version' AS version
           FROM audit_log WHERE row_id = $1 ORDER BY id`,
        [id],
      ),
    );
    expect(rows).toEqual([
      { action: 'insert', actor_id: actorId, before: null, after: 'Larkfield', version: '1' },
      { action: 'update', actor_id: actorId, before: 'Larkfield', after: 'Heron Point', version: '2' },
      { action: 'delete', actor_id: actorId, before: 'Heron Point', after: null, version: null },
    ]);
  });

  it.each(["UPDATE audit_log SET action = 'insert'", 'DELETE FROM audit_log'])('refuses %s', async (sql) => {
    expect(await refusal(db, clubId, sql)).toEqual({ state: '42501', constraint: undefined });
    // Not even the owner of the tables may.
    await expect(db.admin.query(sql)).rejects.toMatchObject({
      code: '23514',
      constraint: 'audit_log_append_only',
    });
  });
});
