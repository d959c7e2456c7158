/** What the database itself refuses about the chain of decisions, whatever a service might try. */
import '../../src/decisions/audit/chain.constraints.js';
import { linkOf, NO_LINK } from '../../src/decisions/audit/links.js';
import { registeredConstraints } from '../../src/platform/database/constraint-problems.js';
import { createTestDatabase, type TestDatabase } from '../../src/platform/database/testing.js';
import { newId } from '../../src/platform/ids.js';
import { sha256 } from '../../src/rules/index.js';
import { expectWrittenOnce, insertion, refusal, type Row } from '../support/refusals.js';
import { seedFleet } from '../support/seed-fleet.js';

const CLUB = newId();
const OTHER_CLUB = newId();
const ids = { member: newId(), first: newId(), second: newId(), booking: newId(), override: newId() };
const SEALED_AT = '2026-03-10T15:00:00Z';
let db: TestDatabase;
let firstLink: string;

/** A link that fits whatever it is given. */
function linked(row: Row): Row {
  const of = { seq: 2, previous: firstLink, entry: sha256('second'), sealed_at: SEALED_AT, ...row };
  const { seq, previous, entry } = of as { seq: number; previous: string; entry: string };
  const link = linkOf({ club: CLUB, seq, sealedAt: SEALED_AT, previous, entry });
  return { id: undefined, decision_id: ids.second, link, ...of };
}

const CHECK = '23514';
const FOREIGN_KEY = '23503';
const UNIQUE = '23505';

const CASES: [constraint: string, state: string, bad: () => Row][] = [
  ['decision_chain_pkey', UNIQUE, () => linked({ seq: 1, previous: NO_LINK })],
  ['decision_chain_seq_chk', CHECK, () => linked({ seq: 0, previous: NO_LINK })],
  ['decision_chain_entry_chk', CHECK, () => linked({ entry: 'short' })],
  ['decision_chain_second_chk', CHECK, () => linked({ sealed_at: '2026-03-10T15:00:00.5Z' })],
  ['decision_chain_one_chk', CHECK, () => linked({ override_id: ids.override })],
  ['decision_chain_first_chk', CHECK, () => linked({ seq: 1 })],
  ['decision_chain_link_chk', CHECK, () => ({ ...linked({}), link: sha256('another') })],
  ['decision_chain_decision_uq', UNIQUE, () => linked({ decision_id: ids.first })],
  ['decision_chain_decision_fk', FOREIGN_KEY, () => linked({ decision_id: newId() })],
  ['decision_chain_override_fk', FOREIGN_KEY, () => linked({ decision_id: null, override_id: newId() })],
  // A gap, and a fork: a link after one that is not there.
  ['decision_chain_previous_fk', FOREIGN_KEY, () => linked({ seq: 3 })],
  ['decision_chain_previous_fk', FOREIGN_KEY, () => linked({ previous: sha256('another') })],
];

beforeAll(async () => {
  db = await createTestDatabase();
  const put = (table: string, row: Row, club = CLUB) => db.admin.query(...insertion(club, table, row));
  for (const club of [CLUB, OTHER_CLUB])
    await put(
      'clubs',
      { id: undefined, slug: `c-${club.slice(-12)}`, name: 'Larkfield', zone: 'UTC', jurisdiction: 'US' },
      club,
    );
  await put('members', {
    ...{ id: ids.member, name: 'Wren', email: 'wren@larkfield.example' },
    ...{ standing_since: '2026-01-01', membership_from: '2026-01-01' },
  });
  const sql = async <T>(text: string, params?: unknown[]) => (await db.admin.query(text, params)).rows as T[];
  const { aircraftId } = await seedFleet(sql, CLUB);
  for (const id of [ids.first, ids.second])
    await put('decisions', {
      ...{ id, member_id: ids.member, aircraft_id: aircraftId, asked_by: ids.member, answer: 'yes' },
      ...{ known_at: SEALED_AT, as_of: '2026-03-11T18:00:00Z', fact_keys: [], parts: {}, rules: {} },
      ...{ digest: sha256('a'), body: '{}' },
    });
  await put('bookings', {
    ...{ id: ids.booking, kind: 'flight', aircraft_id: aircraftId, member_id: ids.member, request: {} },
    ...{ during: '[2026-03-11 18:00Z,2026-03-11 20:00Z)', expected_tenths: 20, decision_id: ids.first },
  });
  await put('overrides', {
    ...{ id: ids.override, booking_id: ids.booking, decision_id: ids.first, rule_id: 'club.standing' },
    ...{ weight: 'club', officer_id: ids.member, reason: 'Paid at the desk' },
  });
  const first = linked({ seq: 1, previous: NO_LINK, entry: sha256('first'), decision_id: ids.first });
  firstLink = first.link as string;
  await put('decision_chain', first);
});
afterAll(() => db.drop());

const tryIn = (club: string, row: Row) => refusal(db, club, ...insertion(CLUB, 'decision_chain', row));

describe('the database refuses', () => {
  it.each(CASES)('%s', async (constraint, state, bad) => {
    expect(await tryIn(CLUB, bad())).toEqual({ state, constraint });
  });

  it('each time for the constraint alone: the good link passes', async () => {
    expect(await tryIn(CLUB, linked({}))).toBeNull();
    expect(
      await tryIn(
        CLUB,
        linked({ seq: 3, previous: linked({}).link, decision_id: null, override_id: ids.override }),
      ),
    ).toBeNull();
    // And is then there: the same record, or the same number, no more.
    expect(
      await tryIn(CLUB, linked({ seq: 4, previous: NO_LINK, decision_id: null, override_id: ids.override })),
    ).toMatchObject({
      constraint: 'decision_chain_override_uq',
    });
  });

  it('changes of what was sealed: no right to them, and a trigger for who has the right', async () => {
    await expectWrittenOnce(db, CLUB, [['decision_chain', 'entry']]);
  });

  it('by every constraint that has words for people', () => {
    const tried = [
      ...new Set(CASES.map(([constraint]) => constraint)),
      // The key of the link holds what the key of the number holds already; it is there to be referred to.
      ...['decision_chain_link_uq', 'decision_chain_override_uq', 'decision_chain_append_only'],
    ];
    const worded = registeredConstraints().map(({ constraint }) => constraint);
    expect(tried.sort()).toEqual(worded.sort());
  });

  it('to take out a decision that was sealed, even from its owner with triggers asleep', async () => {
    await db.admin.query('BEGIN');
    await db.admin.query('ALTER TABLE decisions DISABLE TRIGGER USER');
    await expect(db.admin.query('DELETE FROM decisions WHERE id = $1', [ids.second])).rejects.toMatchObject({
      constraint: 'decision_chain_decision_fk',
    });
    await db.admin.query('ROLLBACK');
  });
});

describe('clubs are kept apart', () => {
  it('decision_chain', async () => {
    const seen = await db.tenantDb.run(OTHER_CLUB, (em) =>
      em.query('SELECT 1 FROM decision_chain WHERE club_id = $1', [CLUB]),
    );
    expect(seen).toEqual([]);
    expect(await db.dataSource.query('SELECT 1 FROM decision_chain')).toEqual([]);
    expect(await tryIn(OTHER_CLUB, linked({}))).toMatchObject({ state: '42501' });
  });
});
