/** Directives, findings and templates of items: what the database refuses when the service is gone round. */
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
const TABLES = ['directives', 'directive_models', 'directive_findings', 'item_templates'];

interface Scene extends FleetIds {
  directiveId: string;
  oldId: string;
  newerId: string;
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
    ...{ directiveId: id(), oldId: id(), newerId: id() },
  };
  await db.tenantDb.run(clubId, async (em) => {
    await insertAircraft(em, ids);
    await insertRow(em, 'directives', directive(ids, { id: ids.directiveId, number: 'first' }));
    await insertRow(em, 'directives', directive(ids, { id: ids.oldId, number: 'old' }));
    await insertRow(
      em,
      'directives',
      directive(ids, { id: ids.newerId, number: 'newer', supersedes: ids.oldId }),
    );
    await em.query(MODEL, modelValues(model(ids)));
    await insertRow(em, 'directive_findings', finding(ids));
    await insertRow(em, 'item_templates', template(ids, { title: 'Oil' }));
    await insertRow(em, 'airworthiness_items', item(ids));
  });
  return ids;
}

const directive = (ids: Scene, more: Row = {}): Row => ({
  ...{ club_id: ids.clubId, id: newId(), issuer: 'FAA', number: newId(), title: 'Seat rails', scope: 'all' },
  ...{ effective_on: '2026-01-10', applies_to: 'aircraft', recurring: true, calendar_months: 12 },
  ...more,
});
const model = (ids: Scene, more: Row = {}): Row => ({
  ...{ club_id: ids.clubId, directive_id: ids.directiveId, model_id: ids.modelId },
  ...more,
});
// This table has no id of its own.
const MODEL = 'INSERT INTO directive_models (club_id, directive_id, model_id) VALUES ($1, $2, $3)';
const modelValues = (row: Row): unknown[] => [row['club_id'], row['directive_id'], row['model_id']];
const refusalOf = (table: string, row: Row) =>
  table === 'directive_models'
    ? refusal(db, own.clubId, MODEL, modelValues(row))
    : rowRefusal(db, own.clubId, table, row);
const finding = (ids: Scene, more: Row = {}): Row => ({
  ...{ club_id: ids.clubId, id: newId(), directive_id: ids.directiveId, aircraft_id: ids.aircraftId },
  ...{ applies: false, because: 'Rails replaced', signed_by: 'Mo Wrench', found_by: ids.memberId },
  ...more,
});
const template = (ids: Scene, more: Row = {}): Row => ({
  ...{ club_id: ids.clubId, id: newId(), kind: 'club', title: newId(), scope: 'all' },
  ...more,
});
const item = (ids: Scene, more: Row = {}): Row =>
  fleetRows(ids).airworthiness_items({
    kind: 'directive',
    directive_id: ids.directiveId,
    equipment_id: null,
    ...more,
  });

const intervals = (
  table: string,
  make: (of: Scene, more: Row) => Row,
): [string, string, (of: Scene) => Row][] => [
  [`${table}_scope_chk`, table, (of) => make(of, { scope: 'some' })],
  [`${table}_calendar_chk`, table, (of) => make(of, { calendar_months: 0 })],
  [`${table}_plain_chk`, table, (of) => make(of, { plain_months: 0 })],
  [`${table}_days_chk`, table, (of) => make(of, { days: 0 })],
  [`${table}_interval_chk`, table, (of) => make(of, { interval_tenths: 0 })],
];

const CASES: [constraint: string, table: string, wrong: (of: Scene) => Row][] = [
  ...intervals('directives', directive),
  ...intervals('item_templates', template),
  ['directives_issuer_chk', 'directives', (of) => directive(of, { issuer: ' ' })],
  ['directives_number_chk', 'directives', (of) => directive(of, { number: '' })],
  ['directives_title_chk', 'directives', (of) => directive(of, { title: ' ' })],
  ['directives_applies_chk', 'directives', (of) => directive(of, { applies_to: 'people' })],
  ['directives_serials_chk', 'directives', (of) => directive(of, { serials: '{}' })],
  ['directives_within_days_chk', 'directives', (of) => directive(of, { within_days: 0 })],
  ['directives_within_hours_chk', 'directives', (of) => directive(of, { within_tenths: 0 })],
  ['directives_number_uq', 'directives', (of) => directive(of, { number: 'first' })],
  ['directives_supersedes_uq', 'directives', (of) => directive(of, { supersedes: of.oldId })],
  ['directives_supersedes_fk', 'directives', (of) => directive(of, { supersedes: NOBODY })],
  ['directives_equipment_chk', 'directives', (of) => directive(of, { applies_to: 'equipment' })],
  ['directives_withdrawn_chk', 'directives', (of) => directive(of, { withdrawn_on: '2026-01-09' })],
  ['directives_recurs_chk', 'directives', (of) => directive(of, { calendar_months: null })],
  ['directive_models_directive_fk', 'directive_models', (of) => model(of, { directive_id: NOBODY })],
  ['directive_models_model_fk', 'directive_models', (of) => model(of, { model_id: NOBODY })],
  ['directive_findings_because_chk', 'directive_findings', (of) => finding(of, { because: 'no' })],
  ['directive_findings_signed_chk', 'directive_findings', (of) => finding(of, { signed_by: ' ' })],
  ['directive_findings_directive_fk', 'directive_findings', (of) => finding(of, { directive_id: NOBODY })],
  ['directive_findings_aircraft_fk', 'directive_findings', (of) => finding(of, { aircraft_id: NOBODY })],
  ['directive_findings_equipment_fk', 'directive_findings', (of) => finding(of, { equipment_id: NOBODY })],
  ['directive_findings_member_fk', 'directive_findings', (of) => finding(of, { found_by: NOBODY })],
  ['item_templates_kind_chk', 'item_templates', (of) => template(of, { kind: 'directive' })],
  ['item_templates_title_chk', 'item_templates', (of) => template(of, { title: ' ' })],
  ['item_templates_tolerance_chk', 'item_templates', (of) => template(of, { tolerance_tenths: -1 })],
  ['item_templates_title_uq', 'item_templates', (of) => template(of, { title: 'Oil' })],
];
/** Of items, which have their other constraints in fleet.spec.ts. */
const OF_ITEMS: [constraint: string, wrong: (of: Scene) => Row][] = [
  ['airworthiness_items_directive_fk', (of) => item(of, { directive_id: NOBODY })],
  ['airworthiness_items_directive_chk', (of) => item(of, { kind: 'club' })],
  ['airworthiness_items_directive_uq', (of) => item(of)],
];

const stateFor = (constraint: string) =>
  constraint.endsWith('_uq') ? '23505' : constraint.endsWith('_fk') ? '23503' : '23514';

it.each([
  ...CASES,
  ...OF_ITEMS.map(([constraint, wrong]) => [constraint, 'airworthiness_items', wrong] as const),
])('%s', async (constraint, table, wrong) => {
  expect(await refusalOf(table, wrong(own))).toEqual({
    state: stateFor(constraint),
    constraint,
  });
});

it('directives_itself_chk: none supersedes itself', async () => {
  const sql = 'UPDATE directives SET supersedes = id WHERE id = $1';
  expect(await refusal(db, own.clubId, sql, [own.directiveId])).toEqual({
    ...{ state: '23514', constraint: 'directives_itself_chk' },
  });
});

it('directive_models_pkey: a model is named once', async () => {
  expect(await refusalOf('directive_models', model(own))).toEqual({
    ...{ state: '23505', constraint: 'directive_models_pkey' },
  });
});

it('has a case for every constraint of these tables', async () => {
  const proven = [...CASES.map(([constraint]) => constraint), 'directives_itself_chk'];
  expect(proven.sort()).toEqual(await constraintsToProve(db, TABLES));
});

it('directive_findings_append_only: what was found is not edited', async () => {
  const sql = 'UPDATE directive_findings SET applies = true';
  expect(await refusal(db, own.clubId, sql)).toEqual({ state: '42501', constraint: undefined });
  await expect(db.admin.query(sql)).rejects.toMatchObject({ constraint: 'directive_findings_append_only' });
});

it.each(TABLES)("shows and changes nothing of another club's %s", async (table) => {
  await db.tenantDb.run(own.clubId, async (em) => {
    const count = async (clubId: string): Promise<number> =>
      (await em.query(`SELECT count(*)::int AS n FROM ${table} WHERE club_id = $1`, [clubId]))[0].n;
    expect(await count(foreign.clubId)).toBe(0);
    expect(await count(own.clubId)).toBeGreaterThan(0);
  });
  const make = {
    directives: directive,
    directive_models: model,
    directive_findings: finding,
    item_templates: template,
  }[table]!;
  expect(await refusalOf(table, make(foreign))).toEqual({
    state: '42501',
    constraint: undefined,
  });
});
