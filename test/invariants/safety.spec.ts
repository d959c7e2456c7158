/** Reports, their steps and reviews of overrides: what the database refuses when the service is gone round. */
import { createTestDatabase, type TestDatabase } from '../../src/platform/database/testing.js';
import { newId } from '../../src/platform/ids.js';
import { expectWrittenOnce, refusal, type Row } from '../support/refusals.js';
import {
  constraintsToProve,
  fleetIds,
  insertAircraft,
  insertRow,
  plantClub,
  rowRefusal,
} from './refusals.js';

const NOBODY = '01900000-0000-7000-8000-000000000000';
const TABLES = ['safety_reports', 'safety_steps', 'override_reviews'];
const TAKEN = 'a'.repeat(64);
const CONFIDENTIAL = { confidential: true, reporter_id: null };

interface Scene {
  clubId: string;
  memberId: string;
  aircraftId: string;
  reportId: string;
  closedId: string;
  overrideId: string;
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
  const fleet = fleetIds({ clubId, memberId });
  const { aircraftId } = fleet;
  const ids: Scene = {
    ...{ clubId, memberId, aircraftId },
    ...{ reportId: newId(), closedId: newId(), overrideId: newId() },
  };
  const [decision, booking] = [newId(), newId()];
  await db.tenantDb.run(clubId, async (em) => {
    await insertAircraft(em, fleet);
    await insertRow(em, 'decisions', {
      ...{ club_id: clubId, id: decision, member_id: memberId, aircraft_id: aircraftId, asked_by: memberId },
      ...{ known_at: '2026-03-10T15:00:00Z', as_of: '2026-03-11T18:00:00Z', answer: 'ask-officer' },
      ...{ fact_keys: [], parts: {}, rules: {}, digest: 'b'.repeat(64), body: '{}' },
    });
    await insertRow(em, 'bookings', {
      ...{ club_id: clubId, id: booking, kind: 'flight', aircraft_id: aircraftId, member_id: memberId },
      ...{ during: '[2026-03-11 18:00Z,2026-03-11 20:00Z)', expected_tenths: 20, request: {} },
      decision_id: decision,
    });
    await insertRow(em, 'overrides', {
      ...{ club_id: clubId, id: ids.overrideId, booking_id: booking, decision_id: decision, weight: 'club' },
      ...{ rule_id: 'club.standing', officer_id: memberId, reason: 'Paid at the desk' },
    });
    await insertRow(em, 'safety_reports', report(ids, { id: ids.reportId }));
    await insertRow(em, 'safety_reports', report(ids, { ...CONFIDENTIAL, receipt_digest: TAKEN }));
    await insertRow(em, 'safety_reports', report(ids, { id: ids.closedId, ...closed(ids) }));
    await insertRow(em, 'safety_steps', step(ids));
    await insertRow(em, 'override_reviews', review(ids));
  });
  return ids;
}

const report = (ids: Scene, more: Row = {}): Row => ({
  ...{ club_id: ids.clubId, id: newId(), kind: 'hazard', happened_on: '2026-03-09', title: 'Gravel' },
  ...{ narrative: 'Gravel on the taxiway', confidential: false, reporter_id: ids.memberId },
  ...more,
});
const closed = (ids: Scene): Row => ({
  ...{ state: 'closed', finding: 'Swept every week', closed_at: '2026-03-10T15:00:00Z' },
  closed_by: ids.memberId,
});
const step = (ids: Scene, more: Row = {}): Row => ({
  ...{ club_id: ids.clubId, id: newId(), report_id: ids.reportId, what: 'Sweep it' },
  ...{ responsible_id: ids.memberId, due_on: '2026-03-20', ...more },
});
const review = (ids: Scene, more: Row = {}): Row => ({
  ...{ club_id: ids.clubId, id: newId(), override_id: ids.overrideId, review_on: '2026-04-01' },
  ...{ reviewed_by: ids.memberId, ...more },
});

const CASES: [constraint: string, table: string, wrong: (of: Scene) => Row][] = [
  ['safety_reports_kind_chk', 'safety_reports', (of) => report(of, { kind: 'rumour' })],
  ['safety_reports_place_chk', 'safety_reports', (of) => report(of, { place: ' ' })],
  ['safety_reports_title_chk', 'safety_reports', (of) => report(of, { title: '' })],
  ['safety_reports_narrative_chk', 'safety_reports', (of) => report(of, { narrative: ' ' })],
  [
    'safety_reports_receipt_chk',
    'safety_reports',
    (of) => report(of, { ...CONFIDENTIAL, receipt_digest: 'open' }),
  ],
  [
    'safety_reports_receipt_uq',
    'safety_reports',
    (of) => report(of, { ...CONFIDENTIAL, receipt_digest: TAKEN }),
  ],
  ['safety_reports_state_chk', 'safety_reports', (of) => report(of, { state: 'lost' })],
  ['safety_reports_finding_chk', 'safety_reports', (of) => report(of, { ...closed(of), finding: 'Short' })],
  ['safety_reports_closed_chk', 'safety_reports', (of) => report(of, { ...closed(of), closed_by: null })],
  [
    'safety_reports_named_chk',
    'safety_reports',
    (of) => report(of, { confidential: true, receipt_digest: 'c'.repeat(64) }),
  ],
  ['safety_reports_aircraft_fk', 'safety_reports', (of) => report(of, { aircraft_id: NOBODY })],
  ['safety_reports_reporter_fk', 'safety_reports', (of) => report(of, { reporter_id: NOBODY })],
  ['safety_reports_closer_fk', 'safety_reports', (of) => report(of, { ...closed(of), closed_by: NOBODY })],
  ['safety_steps_what_chk', 'safety_steps', (of) => step(of, { what: ' ' })],
  ['safety_steps_outcome_chk', 'safety_steps', (of) => step(of, { done_on: '2026-03-12', outcome: ' ' })],
  ['safety_steps_done_chk', 'safety_steps', (of) => step(of, { done_on: '2026-03-12' })],
  ['safety_steps_report_fk', 'safety_steps', (of) => step(of, { report_id: NOBODY })],
  ['safety_steps_responsible_fk', 'safety_steps', (of) => step(of, { responsible_id: NOBODY })],
  ['override_reviews_finding_chk', 'override_reviews', (of) => review(of, { finding: 'fine' })],
  ['override_reviews_says_chk', 'override_reviews', (of) => review(of, { review_on: null })],
  ['override_reviews_override_fk', 'override_reviews', (of) => review(of, { override_id: NOBODY })],
  ['override_reviews_member_fk', 'override_reviews', (of) => review(of, { reviewed_by: NOBODY })],
];
const stateFor = (constraint: string) =>
  constraint.endsWith('_uq') ? '23505' : constraint.endsWith('_fk') ? '23503' : '23514';

it.each(CASES)('%s', async (constraint, table, wrong) => {
  expect(await rowRefusal(db, own.clubId, table, wrong(own))).toEqual({
    ...{ state: stateFor(constraint), constraint },
  });
});

it('has a case for every constraint of these tables', async () => {
  expect(CASES.map(([constraint]) => constraint).sort()).toEqual(await constraintsToProve(db, TABLES));
});

it.each([
  ["reporter_id = NULL, confidential = true, receipt_digest = repeat('d', 64)"],
  ["narrative = 'Nothing happened'"],
  ["place = 'Elsewhere'"],
])('safety_reports_kept_chk: %s', async (set) => {
  const sql = `UPDATE safety_reports SET ${set} WHERE id = $1`;
  expect(await refusal(db, own.clubId, sql, [own.reportId])).toEqual({
    ...{ state: '23514', constraint: 'safety_reports_kept_chk' },
  });
});

it('safety_reports_steps_chk: not closed over an open step', async () => {
  const sql = `UPDATE safety_reports SET state = 'closed', finding = 'Swept every week', closed_at = now(), closed_by = $2
    WHERE id = $1`;
  expect(await refusal(db, own.clubId, sql, [own.reportId, own.memberId])).toEqual({
    ...{ state: '23514', constraint: 'safety_reports_steps_chk' },
  });
});

it('safety_steps_open_chk: no step of a closed report', async () => {
  expect(await rowRefusal(db, own.clubId, 'safety_steps', step(own, { report_id: own.closedId }))).toEqual({
    ...{ state: '23514', constraint: 'safety_steps_open_chk' },
  });
});

it('override_reviews_append_only: a review is not edited', async () => {
  await expectWrittenOnce(db, own.clubId, [['override_reviews', 'finding']]);
});

it.each(TABLES)("shows and changes nothing of another club's %s", async (table) => {
  await db.tenantDb.run(own.clubId, async (em) => {
    const count = async (clubId: string): Promise<number> =>
      (await em.query(`SELECT count(*)::int AS n FROM ${table} WHERE club_id = $1`, [clubId]))[0].n;
    expect(await count(foreign.clubId)).toBe(0);
    expect(await count(own.clubId)).toBeGreaterThan(0);
  });
  const make = { safety_reports: report, safety_steps: step, override_reviews: review }[table]!;
  expect(await rowRefusal(db, own.clubId, table, make(foreign))).toEqual({
    ...{ state: '42501', constraint: undefined },
  });
});
