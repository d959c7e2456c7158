/** The club's own rules and their dry runs: what the database refuses when the service is gone round. */
import { createTestDatabase, type TestDatabase } from '../../src/platform/database/testing.js';
import { newId } from '../../src/platform/ids.js';
import { refusal, type Row } from '../support/refusals.js';
import { constraintsToProve, insertRow, plantClub, rowRefusal } from './refusals.js';

const NOBODY = '01900000-0000-7000-8000-000000000000';
const TABLES = ['club_rules', 'club_rule_dry_runs'];

let db: TestDatabase;
let clubId: string;
let memberId: string;
let other: { clubId: string; memberId: string };
let draftId: string;
let activeId: string;

const rule = (more: Row = {}): Row => ({
  ...{
    club_id: clubId,
    id: newId(),
    code: `club.own.r-${newId()}`,
    version: 1,
    title: 'Title',
    weight: 'club',
  },
  ...{ applies_when: 'true', requirement: 'flight.alone', message: 'No.', document: 'Handbook' },
  ...{ created_by: memberId, ...more },
});
const at = '2026-03-10T12:00:00Z';
const inForce = (from: string, more: Row = {}): Row =>
  rule({ state: 'active', in_force_from: from, activated_by: memberId, activated_at: at, ...more });
const over = (from: string, to: string, more: Row = {}): Row =>
  inForce(from, { state: 'ended', in_force_to: to, ended_by: memberId, ended_at: at, ...more });
const run = (more: Row = {}): Row => ({
  ...{
    club_id: clubId,
    id: newId(),
    rule_id: draftId,
    draft_version: 1,
    run_by: memberId,
    looked_at: 3,
    changed: 1,
  },
  ...{ result: '{}', ...more },
});

beforeAll(async () => {
  db = await createTestDatabase();
  ({ clubId, memberId } = await plantClub(db));
  other = await plantClub(db);
  draftId = newId();
  activeId = newId();
  await db.tenantDb.run(clubId, async (em) => {
    await insertRow(em, 'club_rules', rule({ id: draftId, code: 'club.own.draft' }));
    await insertRow(em, 'club_rules', inForce('2026-04-01', { id: activeId, code: 'club.own.active' }));
    await insertRow(
      em,
      'club_rules',
      over('2026-03-10', '2026-04-01', { code: 'club.own.active', version: 2 }),
    );
    await insertRow(em, 'club_rule_dry_runs', run());
  });
}, 60_000);
afterAll(() => db.drop());

const INSERTS: [constraint: string, table: (typeof TABLES)[number], wrong: () => Row][] = [
  ['club_rules_code_chk', 'club_rules', () => rule({ code: 'club.recency' })],
  ['club_rules_version_chk', 'club_rules', () => rule({ version: 0 })],
  ['club_rules_title_chk', 'club_rules', () => rule({ title: ' ' })],
  ['club_rules_weight_chk', 'club_rules', () => rule({ weight: 'law' })],
  ['club_rules_applies_chk', 'club_rules', () => rule({ applies_when: ' ' })],
  ['club_rules_requirement_chk', 'club_rules', () => rule({ requirement: 'x'.repeat(2001) })],
  ['club_rules_message_chk', 'club_rules', () => rule({ message: '' })],
  ['club_rules_condition_chk', 'club_rules', () => rule({ condition: ' ' })],
  ['club_rules_document_chk', 'club_rules', () => rule({ document: ' ' })],
  ['club_rules_state_chk', 'club_rules', () => over('2026-04-01', '2026-05-01', { state: 'paused' })],
  ['club_rules_dates_chk', 'club_rules', () => rule({ in_force_from: '2026-04-01' })],
  ['club_rules_created_fk', 'club_rules', () => rule({ created_by: NOBODY })],
  ['club_rules_activated_fk', 'club_rules', () => inForce('2026-04-01', { activated_by: NOBODY })],
  ['club_rules_ended_fk', 'club_rules', () => over('2026-04-01', '2026-05-01', { ended_by: NOBODY })],
  [
    'club_rules_version_uq',
    'club_rules',
    () => over('2025-01-01', '2025-02-01', { code: 'club.own.active' }),
  ],
  ['club_rules_draft_uq', 'club_rules', () => rule({ code: 'club.own.draft', version: 2 })],
  [
    'club_rules_one_weight_excl',
    'club_rules',
    () => rule({ code: 'club.own.active', version: 3, weight: 'advice' }),
  ],
  [
    'club_rules_in_force_excl',
    'club_rules',
    () => inForce('2026-06-01', { code: 'club.own.active', version: 3 }),
  ],
  ['club_rule_dry_runs_rule_fk', 'club_rule_dry_runs', () => run({ rule_id: NOBODY })],
  ['club_rule_dry_runs_member_fk', 'club_rule_dry_runs', () => run({ run_by: NOBODY })],
  ['club_rule_dry_runs_changed_chk', 'club_rule_dry_runs', () => run({ changed: 4 })],
];
const stateFor = (constraint: string): string => {
  if (constraint.endsWith('_uq')) return '23505';
  if (constraint.endsWith('_fk')) return '23503';
  return constraint.endsWith('_excl') ? '23P01' : '23514';
};

it.each(INSERTS)('%s', async (constraint, table, wrong) => {
  expect(await rowRefusal(db, clubId, table, wrong())).toEqual({ state: stateFor(constraint), constraint });
});

it('has a case for every constraint of these tables', async () => {
  // A unique index over drafts only is no constraint of the catalogue.
  const proven = INSERTS.map(([constraint]) => constraint).filter((name) => name !== 'club_rules_draft_uq');
  expect(proven.sort()).toEqual(await constraintsToProve(db, TABLES));
});

it.each([
  ['a day without who put it in force', () => rule({ state: 'active', in_force_from: '2026-04-01' })],
  [
    'an active version without a first day',
    () => rule({ state: 'active', activated_by: memberId, activated_at: at }),
  ],
  ['an active version with an end', () => inForce('2026-04-01', { in_force_to: '2026-05-01' })],
  ['an end before the beginning', () => over('2026-04-02', '2026-04-01')],
  [
    'an ended version without an end',
    () => inForce('2026-04-01', { state: 'ended', ended_by: memberId, ended_at: at }),
  ],
])('club_rules_dates_chk: %s', async (_what, wrong) => {
  expect(await rowRefusal(db, clubId, 'club_rules', wrong())).toEqual({
    state: '23514',
    constraint: 'club_rules_dates_chk',
  });
});

it('lets versions follow one another, and one that never took effect lie on any day', async () => {
  const code = 'club.own.in-a-row';
  await db.tenantDb.run(clubId, async (em) => {
    await insertRow(em, 'club_rules', over('2026-01-01', '2026-02-01', { code }));
    await insertRow(em, 'club_rules', over('2026-02-01', '2026-02-01', { code, version: 2 }));
    await insertRow(em, 'club_rules', inForce('2026-02-01', { code, version: 3 }));
    await insertRow(em, 'club_rules', rule({ code, version: 4 }));
  });
});

describe('club_rules_kept: a version that was put in force', () => {
  const kept = { state: '23514', constraint: 'club_rules_kept' };
  it.each([
    ['is not edited', "UPDATE club_rules SET requirement = 'true' WHERE id = $1"],
    ['keeps its first day', "UPDATE club_rules SET in_force_from = '2026-05-01' WHERE id = $1"],
    ['keeps its message', "UPDATE club_rules SET message = 'Other' WHERE id = $1"],
    ['keeps who put it in force', `UPDATE club_rules SET activated_at = now() WHERE id = $1`],
    [
      'becomes no draft again',
      "UPDATE club_rules SET state = 'draft', in_force_from = NULL, activated_by = NULL, activated_at = NULL WHERE id = $1",
    ],
    ['is not deleted', 'DELETE FROM club_rules WHERE id = $1'],
  ])('%s', async (_what, sql) => {
    expect(await refusal(db, clubId, sql, [activeId])).toEqual(kept);
    await expect(db.admin.query(sql, [activeId])).rejects.toMatchObject({
      code: '23514',
      constraint: 'club_rules_kept',
    });
  });

  it('is ended, and its end brought forward', async () => {
    const end = (to: string) =>
      refusal(
        db,
        clubId,
        `UPDATE club_rules SET state = 'ended', in_force_to = $2, ended_by = $3, ended_at = $4 WHERE id = $1`,
        [activeId, to, memberId, at],
      );
    expect(await end('2026-07-01')).toBeNull();
    expect(await end('2026-06-01')).toBeNull();
  });
});

describe('dry runs', () => {
  it('are written once', async () => {
    for (const sql of ['UPDATE club_rule_dry_runs SET changed = 0', 'DELETE FROM club_rule_dry_runs'])
      expect(await refusal(db, clubId, sql)).toMatchObject({ state: '42501' });
  });

  it('go with the draft that is thrown away', async () => {
    const id = newId();
    await db.tenantDb.run(clubId, async (em) => {
      await insertRow(em, 'club_rules', rule({ id }));
      await insertRow(em, 'club_rule_dry_runs', run({ rule_id: id }));
      await em.query('DELETE FROM club_rules WHERE id = $1', [id]);
      expect(await em.query('SELECT 1 FROM club_rule_dry_runs WHERE rule_id = $1', [id])).toEqual([]);
    });
  });
});

describe('clubs are kept apart', () => {
  it('shows and changes nothing of another club', async () => {
    await db.tenantDb.run(other.clubId, async (em) => {
      expect(await em.query('SELECT 1 FROM club_rules')).toEqual([]);
      expect(await em.query('SELECT 1 FROM club_rule_dry_runs')).toEqual([]);
      expect(await em.query("UPDATE club_rules SET title = 'Ours' WHERE id = $1", [draftId])).toEqual([
        [],
        0,
      ]);
    });
  });

  it('refuses rows for another club, and links to its members and rules', async () => {
    expect(await rowRefusal(db, clubId, 'club_rules', rule({ club_id: other.clubId }))).toEqual({
      state: '42501',
      constraint: undefined,
    });
    expect(await rowRefusal(db, clubId, 'club_rules', rule({ created_by: other.memberId }))).toEqual({
      state: '23503',
      constraint: 'club_rules_created_fk',
    });
    const foreign = run({ club_id: other.clubId, run_by: other.memberId });
    expect(await rowRefusal(db, other.clubId, 'club_rule_dry_runs', foreign)).toEqual({
      state: '23503',
      constraint: 'club_rule_dry_runs_rule_fk',
    });
  });
});
