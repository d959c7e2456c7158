/** What the database itself refuses about bookings and decisions, whatever a service might try. */
import { createHash } from 'node:crypto';
import '../../src/bookings/bookings.constraints.js';
import { registeredConstraints } from '../../src/platform/database/constraint-problems.js';
import { createTestDatabase, type TestDatabase } from '../../src/platform/database/testing.js';
import { newId } from '../../src/platform/ids.js';
import { expectWrittenOnce, insertion, refusal, type Row } from '../support/refusals.js';
import { seedFleet, type SeededFleet } from '../support/seed-fleet.js';

const CLUB = newId();
const OTHER_CLUB = newId();
const NOBODY = newId();
const ids = {
  member: newId(),
  other: newId(),
  officer: newId(),
  stranger: newId(),
  decision: newId(),
  taken: newId(),
};
const TAKEN = '[2026-03-11 18:00Z,2026-03-11 20:00Z)';
const FREE = '[2026-03-12 18:00Z,2026-03-12 20:00Z)';
let db: TestDatabase;
let fleet: SeededFleet;
let theirs: SeededFleet;

const digest = (text: string): string => createHash('sha256').update(text).digest('hex');

/** A row of each table that the database takes. */
const good: Record<string, () => Row> = {
  fact_parts: () => ({ id: undefined, digest: digest('{}'), body: '{}' }),
  decisions: () => ({
    member_id: ids.member,
    aircraft_id: fleet.aircraftId,
    asked_by: ids.member,
    known_at: '2026-03-10T15:00:00Z',
    as_of: '2026-03-11T18:00:00Z',
    answer: 'yes',
    fact_keys: ['pic.log'],
    parts: {},
    rules: {},
    digest: digest('a'),
    body: '{}',
  }),
  bookings: () => ({
    kind: 'flight',
    aircraft_id: fleet.aircraftId,
    member_id: ids.member,
    during: FREE,
    expected_tenths: 20,
    request: {},
    decision_id: ids.decision,
  }),
  booking_people: () => ({
    id: undefined,
    booking_id: ids.taken,
    member_id: ids.other,
    role: 'instructor',
    during: TAKEN,
    occupies: true,
  }),
  overrides: () => ({
    booking_id: ids.taken,
    decision_id: ids.decision,
    rule_id: 'club.standing',
    weight: 'club',
    officer_id: ids.officer,
    reason: 'Paid at the desk',
  }),
  idempotency_keys: () => ({
    id: undefined,
    member_id: ids.member,
    key: 'k-1',
    request_digest: digest('a'),
    status: 201,
    body: '{}',
  }),
};

const CHECK = '23514';
const FOREIGN_KEY = '23503';
const EXCLUSION = '23P01';
const UNIQUE = '23505';

const CASES: [constraint: string, state: string, table: string, bad: () => Row][] = [
  ['fact_parts_body_chk', CHECK, 'fact_parts', () => ({ body: '{"tampered":true}' })],
  ['decisions_answer_chk', CHECK, 'decisions', () => ({ answer: 'perhaps' })],
  ['decisions_digest_chk', CHECK, 'decisions', () => ({ digest: 'short' })],
  ['decisions_member_fk', FOREIGN_KEY, 'decisions', () => ({ member_id: ids.stranger })],
  ['decisions_aircraft_fk', FOREIGN_KEY, 'decisions', () => ({ aircraft_id: theirs.aircraftId })],
  ['decisions_asked_fk', FOREIGN_KEY, 'decisions', () => ({ asked_by: ids.stranger })],
  [
    'bookings_aircraft_excl',
    EXCLUSION,
    'bookings',
    () => ({ during: '[2026-03-11 19:59:59Z,2026-03-11 21:00Z)' }),
  ],
  ['bookings_out_uq', UNIQUE, 'bookings', () => ({ status: 'dispatched' })],
  ['bookings_kind_chk', CHECK, 'bookings', () => ({ kind: 'party' })],
  ['bookings_status_chk', CHECK, 'bookings', () => ({ status: 'maybe' })],
  ['bookings_expected_chk', CHECK, 'bookings', () => ({ expected_tenths: -1 })],
  ['bookings_during_chk', CHECK, 'bookings', () => ({ during: '(2026-03-12 18:00Z,2026-03-12 20:00Z]' })],
  ['bookings_length_chk', CHECK, 'bookings', () => ({ during: '[2026-03-12 18:00Z,2026-03-12 18:14:59Z)' })],
  ['bookings_decided_chk', CHECK, 'bookings', () => ({ decision_id: null })],
  ['bookings_cancelled_chk', CHECK, 'bookings', () => ({ cancelled_at: '2026-03-10T15:00:00Z' })],
  ['bookings_aircraft_fk', FOREIGN_KEY, 'bookings', () => ({ aircraft_id: theirs.aircraftId })],
  ['bookings_member_fk', FOREIGN_KEY, 'bookings', () => ({ member_id: ids.stranger })],
  ['bookings_decision_fk', FOREIGN_KEY, 'bookings', () => ({ decision_id: NOBODY })],
  ['booking_people_role_chk', CHECK, 'booking_people', () => ({ role: 'mascot' })],
  ['booking_people_member_fk', FOREIGN_KEY, 'booking_people', () => ({ member_id: ids.stranger })],
  ['booking_people_booking_fk', FOREIGN_KEY, 'booking_people', () => ({ during: FREE })],
  ['booking_people_pkey', UNIQUE, 'booking_people', () => ({ member_id: ids.member })],
  ['overrides_weight_chk', CHECK, 'overrides', () => ({ weight: 'law' })],
  ['overrides_reason_chk', CHECK, 'overrides', () => ({ reason: 'because' })],
  ['overrides_booking_fk', FOREIGN_KEY, 'overrides', () => ({ booking_id: NOBODY })],
  ['overrides_decision_fk', FOREIGN_KEY, 'overrides', () => ({ decision_id: NOBODY })],
  ['overrides_officer_fk', FOREIGN_KEY, 'overrides', () => ({ officer_id: ids.stranger })],
  ['overrides_rule_uq', UNIQUE, 'overrides', () => ({ rule_id: 'club.taken' })],
  ['idempotency_keys_key_chk', CHECK, 'idempotency_keys', () => ({ key: 'k'.repeat(129) })],
  ['idempotency_keys_member_fk', FOREIGN_KEY, 'idempotency_keys', () => ({ member_id: ids.stranger })],
];

beforeAll(async () => {
  db = await createTestDatabase();
  const put = (table: string, row: Row, club = CLUB) => db.admin.query(...insertion(club, table, row));
  for (const [club, slug] of [
    [CLUB, 'one'],
    [OTHER_CLUB, 'two'],
  ] as const) {
    await put('clubs', { id: undefined, slug, name: slug, zone: 'UTC', jurisdiction: 'US' }, club);
  }
  const person = (id: string) => ({
    id,
    name: 'Wren',
    email: `${id}@larkfield.example`,
    standing_since: '2026-01-01',
    membership_from: '2026-01-01',
  });
  for (const id of [ids.member, ids.other, ids.officer]) await put('members', person(id));
  await put('members', person(ids.stranger), OTHER_CLUB);
  const sql = async <T>(text: string, params?: unknown[]) => (await db.admin.query(text, params)).rows as T[];
  fleet = await seedFleet(sql, CLUB);
  theirs = await seedFleet(sql, OTHER_CLUB);
  await put('decisions', { ...good['decisions']!(), id: ids.decision });
  await put('bookings', { ...good['bookings']!(), id: ids.taken, during: TAKEN });
  const out = '[2026-03-13 18:00Z,2026-03-13 20:00Z)';
  await put('bookings', { ...good['bookings']!(), id: newId(), during: out, status: 'dispatched' });
  await put('booking_people', { ...good['booking_people']!(), member_id: ids.member, role: 'pilot' });
  await put('overrides', { ...good['overrides']!(), rule_id: 'club.taken' });
});
afterAll(() => db.drop());

const tryIn = (club: string, table: string, row: Row) => refusal(db, club, ...insertion(club, table, row));

describe('the database refuses', () => {
  it.each(CASES)('%s', async (constraint, state, table, bad) => {
    expect(await tryIn(CLUB, table, { ...good[table]!(), ...bad() })).toEqual({ state, constraint });
  });

  it('booking_people_excl: one person in two aircraft, in whatever part', async () => {
    const sql = async <T>(text: string, params?: unknown[]) =>
      (await db.admin.query(text, params)).rows as T[];
    const second = newId();
    await sql(
      `INSERT INTO aircraft SELECT (jsonb_populate_record(a, jsonb_build_object('id', $1::text, 'registration', 'N-200'))).*
       FROM aircraft a WHERE a.id = $2`,
      [second, fleet.aircraftId],
    );
    const booking = newId();
    const during = '[2026-03-11 19:00Z,2026-03-11 22:00Z)';
    const row = { ...good['bookings']!(), id: booking, aircraft_id: second, during };
    expect(await tryIn(CLUB, 'bookings', row)).toBeNull();
    const person = { ...good['booking_people']!(), booking_id: booking, member_id: ids.member, during };
    expect(await tryIn(CLUB, 'booking_people', person)).toEqual({
      state: EXCLUSION,
      constraint: 'booking_people_excl',
    });
  });

  it('bookings_occupancy_uq: times that the people of a booking do not follow cannot be', async () => {
    // The people's rows follow by cascade: moving the booking moves them, and frees or takes them up with it.
    await db.tenantDb.run(CLUB, async (em) => {
      await em.query('UPDATE bookings SET during = $2 WHERE id = $1', [ids.taken, FREE]);
      expect(
        await em.query('SELECT during::text AS d FROM booking_people WHERE booking_id = $1', [ids.taken]),
      ).toEqual([{ d: expect.stringContaining('2026-03-12') }]);
      await em.query('UPDATE bookings SET during = $2 WHERE id = $1', [ids.taken, TAKEN]);
    });
    expect(await tryIn(CLUB, 'booking_people', { ...good['booking_people']!(), occupies: false })).toEqual({
      state: FOREIGN_KEY,
      constraint: 'booking_people_booking_fk',
    });
  });

  it('an empty or endless time, which would slip through the exclusion', async () => {
    for (const during of ['empty', '[2026-03-12 18:00Z,)', '(,2026-03-12 18:00Z)']) {
      expect([during, await tryIn(CLUB, 'bookings', { ...good['bookings']!(), during })]).toEqual([
        during,
        { state: CHECK, constraint: 'bookings_during_chk' },
      ]);
    }
  });

  it('each time for the constraint alone: the good rows pass', async () => {
    for (const [table, row] of Object.entries(good)) {
      expect([table, await tryIn(CLUB, table, row())]).toEqual([table, null]);
    }
  });

  it('changes of what was decided: no right to them, and a trigger for who has the right', async () => {
    await expectWrittenOnce(db, CLUB, [
      ['decisions', 'body'],
      ['fact_parts', 'body'],
      ['overrides', 'reason'],
    ]);
  });

  it('by every constraint that has words for people', () => {
    const tried = [
      ...CASES.map(([constraint]) => constraint),
      'booking_people_excl',
      'bookings_occupancy_uq',
      'decisions_append_only',
      'fact_parts_append_only',
      'overrides_append_only',
    ];
    const worded = registeredConstraints().map(({ constraint }) => constraint);
    expect(tried.sort()).toEqual(worded.sort());
  });
});

describe('clubs are kept apart', () => {
  it.each(Object.keys(good))('%s', async (table) => {
    const seen = await db.tenantDb.run(OTHER_CLUB, (em) =>
      em.query(`SELECT 1 FROM ${table} WHERE club_id = $1`, [CLUB]),
    );
    expect(seen).toEqual([]);
    expect(await db.dataSource.query(`SELECT 1 FROM ${table}`)).toEqual([]);
    expect(await refusal(db, OTHER_CLUB, ...insertion(CLUB, table, good[table]!()))).toMatchObject({
      state: '42501',
    });
  });
});
