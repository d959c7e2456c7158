/** Answers booked flights stand at: what the database refuses when the service is gone round. */
import { createTestDatabase, type TestDatabase } from '../../src/platform/database/testing.js';
import { newId } from '../../src/platform/ids.js';
import type { Row } from '../support/refusals.js';
import {
  constraintsToProve,
  fleetIds,
  insertAircraft,
  insertRow,
  plantClub,
  rowRefusal,
} from './refusals.js';

const TABLES = ['fact_changes', 'fact_marks', 'standing_answers', 'standing_changes', 'standing_clubs'];

let db: TestDatabase;
let clubId: string;
let foreignClubId: string;
let bookingId: string;
let answeredId: string;

beforeAll(async () => {
  db = await createTestDatabase();
  ({ clubId: foreignClubId } = await plantClub(db));
  const planted = await plantClub(db);
  clubId = planted.clubId;
  const { memberId } = planted;
  const fleet = fleetIds({ clubId, memberId });
  const decision = newId();
  [bookingId, answeredId] = [newId(), newId()];
  await db.tenantDb.run(clubId, async (em) => {
    await insertAircraft(em, fleet);
    await insertRow(em, 'decisions', {
      ...{
        club_id: clubId,
        id: decision,
        member_id: memberId,
        aircraft_id: fleet.aircraftId,
        asked_by: memberId,
      },
      ...{ known_at: '2026-03-10T15:00:00Z', as_of: '2026-03-11T18:00:00Z', answer: 'yes' },
      ...{ fact_keys: [], parts: {}, rules: {}, digest: 'b'.repeat(64), body: '{}' },
    });
    for (const [id, day] of [
      [bookingId, 11],
      [answeredId, 12],
    ] as const)
      await insertRow(em, 'bookings', {
        ...{ club_id: clubId, id, kind: 'flight', aircraft_id: fleet.aircraftId, member_id: memberId },
        ...{ during: `[2026-03-${day} 18:00Z,2026-03-${day} 20:00Z)`, expected_tenths: 20, request: {} },
        decision_id: decision,
      });
    await insertRow(em, 'standing_answers', answer({ booking_id: answeredId }));
  });
}, 60_000);
afterAll(() => db.drop());

const answer = (more: Row = {}): Row => ({
  ...{
    id: undefined,
    club_id: clubId,
    booking_id: bookingId,
    answer: 'yes',
    because: '[]',
    reads: ['club:rules'],
  },
  ...{ judged_at: '2026-03-10T15:00:00Z', ...more },
});
const change = (more: Row = {}): Row => ({
  ...{ club_id: clubId, id: newId(), booking_id: bookingId, before: 'yes', after: 'no', because: '[]' },
  ...{ caused_by: [], at: '2026-03-10T15:00:00Z', ...more },
});
const fact = (more: Row = {}): Row => ({
  ...{ id: undefined, club_id: clubId, subject: 'club:rules', ...more },
});
const law = (more: Row = {}): Row => ({
  ...{ id: undefined, club_id: clubId, law: 'c'.repeat(64), ...more },
});

const CASES: [constraint: string, table: string, row: () => Row][] = [
  ['fact_changes_subject_chk', 'fact_changes', () => fact({ subject: 'something' })],
  ['fact_marks_subject_chk', 'fact_marks', () => fact({ subject: 'something' })],
  ['standing_answers_answer_chk', 'standing_answers', () => answer({ answer: 'perhaps' })],
  ['standing_answers_because_chk', 'standing_answers', () => answer({ because: '{}' })],
  ['standing_answers_reads_chk', 'standing_answers', () => answer({ reads: [] })],
  ['standing_answers_booking_fk', 'standing_answers', () => answer({ booking_id: newId() })],
  ['standing_changes_before_chk', 'standing_changes', () => change({ before: 'perhaps' })],
  ['standing_changes_after_chk', 'standing_changes', () => change({ after: 'perhaps' })],
  ['standing_changes_because_chk', 'standing_changes', () => change({ because: '{}' })],
  ['standing_changes_other_chk', 'standing_changes', () => change({ after: 'yes' })],
  ['standing_changes_booking_fk', 'standing_changes', () => change({ booking_id: newId() })],
  ['standing_clubs_law_chk', 'standing_clubs', () => law({ law: 'none' })],
];

describe('the database refuses', () => {
  it.each(CASES)('%s', async (constraint, table, row) => {
    expect(await rowRefusal(db, clubId, table, row())).toMatchObject({ constraint });
  });

  it('standing_answers_pkey: a second answer of one booking', async () => {
    expect(
      await rowRefusal(db, clubId, 'standing_answers', answer({ booking_id: answeredId })),
    ).toMatchObject({ constraint: 'standing_answers_pkey' });
  });

  it('fact_marks_pkey: one fact marked twice by a transaction', async () => {
    const twice = { noted_by: '7', subject: 'club:rules' };
    await db.tenantDb.run(clubId, (em) => insertRow(em, 'fact_marks', fact(twice)));
    expect(await rowRefusal(db, clubId, 'fact_marks', fact(twice))).toMatchObject({
      constraint: 'fact_marks_pkey',
    });
  });

  it('rows of another club', async () => {
    for (const [table, row] of [
      ['fact_changes', fact()],
      ['fact_marks', fact()],
      ['standing_answers', answer()],
      ['standing_changes', change()],
      ['standing_clubs', law()],
    ] as const)
      expect(await rowRefusal(db, foreignClubId, table, row)).toMatchObject({ state: '42501' });
  });

  it('nothing of what is sound', async () => {
    for (const [table, row] of [
      ['fact_changes', fact()],
      ['fact_marks', fact()],
      ['standing_answers', answer()],
      ['standing_changes', change()],
      ['standing_clubs', law()],
    ] as const)
      expect([table, await rowRefusal(db, clubId, table, row)]).toEqual([table, null]);
  });

  it('for every constraint of these tables, one by one', async () => {
    const proven = CASES.map(([constraint]) => constraint).sort();
    expect(proven).toEqual(await constraintsToProve(db, TABLES));
  });
});
