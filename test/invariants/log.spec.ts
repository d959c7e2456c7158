/** What the database itself refuses about logs and checkouts, whatever a service might try. */
import '../../src/checkouts/checkouts.constraints.js';
import '../../src/logbook/logbook.constraints.js';
import { registeredConstraints } from '../../src/platform/database/constraint-problems.js';
import { createTestDatabase, type TestDatabase } from '../../src/platform/database/testing.js';
import { newId } from '../../src/platform/ids.js';
import { expectWrittenOnce, insertion, refusal, type Row } from '../support/refusals.js';
import { seedFleet, type SeededFleet } from '../support/seed-fleet.js';

const CLUB = newId();
const OTHER_CLUB = newId();
const NOBODY = newId();
const ids = { member: newId(), instructor: newId(), stranger: newId(), checkout: newId(), taken: newId() };
let db: TestDatabase;
let fleet: SeededFleet;
let theirs: SeededFleet;

/** A row of each table that the database takes. */
const good: Record<string, () => Row> = {
  log_entries: () => ({
    ...{
      member_id: ids.member,
      aircraft_id: fleet.aircraftId,
      model_id: fleet.modelId,
      aircraft_words: 'Sparrow 150, N-100',
    },
    ...{
      category: 'airplane',
      class: 'single-engine-land',
      tailwheel: false,
      role: 'pilot-in-command',
      sole_manipulator: true,
    },
    ...{ departed_at: '2026-03-01T10:00:00Z', arrived_at: '2026-03-01T11:00:00Z', flown_on: '2026-03-01' },
    ...{ from_airfield: 'XLF', to_airfield: 'XLF', takeoffs: 2, landings: 2, full_stop_landings: 1 },
    ...{ night_takeoffs: 0, night_full_stop_landings: 0, total_tenths: 10 },
  }),
  checkouts: () => ({
    member_id: ids.member,
    kind: 'annual-check',
    signed_on: '2026-03-01',
    signed_by: ids.instructor,
  }),
  checkout_voids: () => ({
    id: undefined,
    checkout_id: ids.checkout,
    voided_by: ids.instructor,
    reason: 'Wrong member',
  }),
};

const CHECK = '23514';
const FOREIGN_KEY = '23503';

const CASES: [constraint: string, state: string, table: string, bad: () => Row][] = [
  ['log_entries_aircraft_chk', CHECK, 'log_entries', () => ({ aircraft_words: ' ' })],
  ['log_entries_category_chk', CHECK, 'log_entries', () => ({ category: 'balloon' })],
  ['log_entries_role_chk', CHECK, 'log_entries', () => ({ role: 'passenger' })],
  ['log_entries_approaches_chk', CHECK, 'log_entries', () => ({ approaches: -1 })],
  ['log_entries_device_chk', CHECK, 'log_entries', () => ({ device: 'toy' })],
  ['log_entries_night_hours_chk', CHECK, 'log_entries', () => ({ night_tenths: 11 })],
  ['log_entries_dual_chk', CHECK, 'log_entries', () => ({ dual_given_tenths: 11 })],
  ['log_entries_cross_country_chk', CHECK, 'log_entries', () => ({ cross_country_tenths: 11 })],
  ['log_entries_actual_chk', CHECK, 'log_entries', () => ({ actual_instrument_tenths: 11 })],
  [
    'log_entries_simulated_chk',
    CHECK,
    'log_entries',
    () => ({ actual_instrument_tenths: 4, simulated_instrument_tenths: 7 }),
  ],
  ['log_entries_span_chk', CHECK, 'log_entries', () => ({ arrived_at: '2026-03-01T10:00:00Z' })],
  ['log_entries_full_stop_chk', CHECK, 'log_entries', () => ({ full_stop_landings: 3 })],
  ['log_entries_night_takeoffs_chk', CHECK, 'log_entries', () => ({ night_takeoffs: 3 })],
  ['log_entries_night_landings_chk', CHECK, 'log_entries', () => ({ night_full_stop_landings: 2 })],
  ['log_entries_member_fk', FOREIGN_KEY, 'log_entries', () => ({ member_id: ids.stranger })],
  ['log_entries_aircraft_fk', FOREIGN_KEY, 'log_entries', () => ({ aircraft_id: theirs.aircraftId })],
  ['log_entries_model_fk', FOREIGN_KEY, 'log_entries', () => ({ model_id: theirs.modelId })],
  ['checkouts_kind_chk', CHECK, 'checkouts', () => ({ kind: 'solo' })],
  ['checkouts_own_chk', CHECK, 'checkouts', () => ({ signed_by: ids.member })],
  ['checkouts_span_chk', CHECK, 'checkouts', () => ({ expires_on: '2026-02-28' })],
  ['checkouts_shape_chk', CHECK, 'checkouts', () => ({ kind: 'model' })],
  ['checkouts_member_fk', FOREIGN_KEY, 'checkouts', () => ({ member_id: ids.stranger })],
  ['checkouts_model_fk', FOREIGN_KEY, 'checkouts', () => ({ kind: 'model', model_id: theirs.modelId })],
  [
    'checkouts_aircraft_fk',
    FOREIGN_KEY,
    'checkouts',
    () => ({ kind: 'differences', aircraft_id: theirs.aircraftId }),
  ],
  ['checkouts_signer_fk', FOREIGN_KEY, 'checkouts', () => ({ signed_by: ids.stranger })],
  ['checkout_voids_reason_chk', CHECK, 'checkout_voids', () => ({ reason: ' ' })],
  ['checkout_voids_checkout_fk', FOREIGN_KEY, 'checkout_voids', () => ({ checkout_id: NOBODY })],
  ['checkout_voids_by_fk', FOREIGN_KEY, 'checkout_voids', () => ({ voided_by: ids.stranger })],
  ['checkout_voids_pkey', '23505', 'checkout_voids', () => ({ checkout_id: ids.taken })],
];

/** Checks that others imply: PostgreSQL reports the first by name, so they show only when those are out of the way. */
const IMPLIED: [constraint: string, by: string[], bad: Row][] = [
  ['log_entries_takeoffs_chk', ['log_entries_night_takeoffs_chk'], { takeoffs: -1 }],
  ['log_entries_landings_chk', ['log_entries_full_stop_chk'], { landings: -1 }],
  [
    'log_entries_total_chk',
    [
      'log_entries_actual_chk',
      'log_entries_cross_country_chk',
      'log_entries_dual_chk',
      'log_entries_night_hours_chk',
      'log_entries_simulated_chk',
    ],
    { total_tenths: -1 },
  ],
];

beforeAll(async () => {
  db = await createTestDatabase();
  const put = (table: string, row: Row, club = CLUB) => {
    const [text, params] = insertion(club, table, row);
    return db.admin.query(text, params);
  };
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
  await put('members', person(ids.member));
  await put('members', person(ids.instructor));
  await put('members', person(ids.stranger), OTHER_CLUB);
  const sql = async <T>(text: string, params?: unknown[]) => (await db.admin.query(text, params)).rows as T[];
  fleet = await seedFleet(sql, CLUB);
  theirs = await seedFleet(sql, OTHER_CLUB);
  for (const id of [ids.checkout, ids.taken]) await put('checkouts', { ...good['checkouts']!(), id });
  await put('checkout_voids', { ...good['checkout_voids']!(), checkout_id: ids.taken });
});
afterAll(() => db.drop());

const tryIn = (club: string, table: string, row: Row) => refusal(db, club, ...insertion(club, table, row));

describe('the database refuses', () => {
  it.each(CASES)('%s', async (constraint, state, table, bad) => {
    expect(await tryIn(CLUB, table, { ...good[table]!(), ...bad() })).toEqual({ state, constraint });
  });

  it.each(IMPLIED)('%s, which %j imply', async (constraint, by, bad) => {
    const row = { ...good['log_entries']!(), ...bad };
    expect(await tryIn(CLUB, 'log_entries', row)).toEqual({ state: CHECK, constraint: by[0] });
    await db.admin.query('BEGIN');
    try {
      for (const implying of by) await db.admin.query(`ALTER TABLE log_entries DROP CONSTRAINT ${implying}`);
      await expect(db.admin.query(...insertion(CLUB, 'log_entries', row))).rejects.toMatchObject({
        code: CHECK,
        constraint,
      });
    } finally {
      await db.admin.query('ROLLBACK');
    }
  });

  it('each time for the constraint alone: the good rows pass', async () => {
    for (const [table, row] of Object.entries(good))
      expect([table, await tryIn(CLUB, table, row())]).toEqual([table, null]);
  });

  it('changes of what was signed: no right to them, and a trigger for who has the right', async () => {
    await expectWrittenOnce(db, CLUB, [
      ['checkouts', 'remarks'],
      ['checkout_voids', 'reason'],
    ]);
  });

  it('by every constraint that has words for people', () => {
    const tried = [
      ...[...CASES, ...IMPLIED].map(([constraint]) => constraint),
      'checkouts_append_only',
      'checkout_voids_append_only',
    ];
    expect(tried.sort()).toEqual(
      registeredConstraints()
        .map(({ constraint }) => constraint)
        .sort(),
    );
  });
});

describe('clubs are kept apart', () => {
  it.each(Object.keys(good))('%s', async (table) => {
    const seen = await db.tenantDb.run(OTHER_CLUB, (em) =>
      em.query(`SELECT 1 FROM ${table} WHERE club_id = $1`, [CLUB]),
    );
    expect(seen).toEqual([]);
    expect(await db.dataSource.query(`SELECT 1 FROM ${table}`)).toEqual([]);
    const answer = await refusal(db, OTHER_CLUB, ...insertion(CLUB, table, good[table]!()));
    expect(answer).toMatchObject({ state: '42501' });
  });
});

describe('the audit log', () => {
  it('keeps what an entry said before it was changed', async () => {
    const id = newId();
    const actor = ids.instructor;
    await db.tenantDb.run(
      CLUB,
      (em) => em.query(...insertion(CLUB, 'log_entries', { ...good['log_entries']!(), id })),
      { actorId: actor },
    );
    await db.tenantDb.run(CLUB, (em) => em.query('UPDATE log_entries SET landings = 5 WHERE id = $1', [id]), {
      actorId: actor,
    });
    const { rows } = await db.admin.query(
      `SELECT action, actor_id, before->>'landings' AS before, after->>'landings' AS after FROM audit_log WHERE row_id = $1 ORDER BY id`,
      [id],
    );
    expect(rows).toEqual([
      { action: 'insert', actor_id: actor, before: null, after: '2' },
      { action: 'update', actor_id: actor, before: '2', after: '5' },
    ]);
    expect(await refusal(db, CLUB, 'DELETE FROM audit_log')).toMatchObject({ state: '42501' });
  });
});
