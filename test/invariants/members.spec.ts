/** What the database itself refuses about members, accounts and papers, whatever a service might try. */
import { createHash } from 'node:crypto';
import '../../src/accounts/accounts.constraints.js';
import '../../src/members/members.constraints.js';
import { registeredConstraints } from '../../src/platform/database/constraint-problems.js';
import { createTestDatabase, type TestDatabase } from '../../src/platform/database/testing.js';
import { newId } from '../../src/platform/ids.js';
import { insertion, refusal, type Row } from '../support/refusals.js';

const CLUB = newId();
const OTHER_CLUB = newId();
const NOBODY = newId();
const ids = {
  member: newId(),
  other: newId(),
  stranger: newId(),
  account: newId(),
  certificate: newId(),
  instructor: newId(),
  erased: newId(),
};
const HASH =
  '$argon2id$v=19$m=19456,t=2,p=1$c29tZXNhbHRzb21lc2FsdA$nf65EOgLrQMR/uIPnA4rEsF5h7TKyQwu9U1bMCHGi/4';
let db: TestDatabase;

/** A document of a certificate, with the content given. */
const scan = (content: string, more: Row = {}): Row => ({
  ...{
    member_id: ids.member,
    certificate_id: ids.certificate,
    media_type: 'image/png',
    added_by: ids.member,
  },
  ...{ content: Buffer.from(content), size_bytes: content.length },
  sha256: createHash('sha256').update(content).digest('hex'),
  ...more,
});
const UNSET = { certificate_id: null };

/** A row of each table that the database takes. */
const good: Record<string, () => Row> = {
  members: () => ({
    name: 'Wren',
    email: `${newId()}@larkfield.example`,
    standing_since: '2026-01-01',
    membership_from: '2026-01-01',
  }),
  member_roles: () => ({ id: undefined, member_id: ids.member, role: 'instructor' }),
  accounts: () => ({ member_id: ids.other, email: `${newId()}@larkfield.example`, password_hash: HASH }),
  refresh_tokens: () => ({
    ...{ account_id: ids.account, family_id: newId(), token_hash: newId().replaceAll('-', '').repeat(2) },
    ...{ issued_at: '2026-01-01T00:00:00Z', expires_at: '2026-01-31T00:00:00Z' },
  }),
  certificates: () => ({ member_id: ids.member, level: 'private', issued_on: '2020-01-01' }),
  certificate_ratings: () => ({ certificate_id: ids.certificate, kind: 'instrument', category: 'glider' }),
  instructor_certificates: () => ({ member_id: ids.member, issued_on: '2020-01-01', ratings: ['glider'] }),
  suspensions: () => ({ certificate_id: ids.certificate, suspended_from: '2026-01-01' }),
  medicals: () => ({ member_id: ids.member, class: 3, exam_on: '2026-01-01' }),
  basic_med: () => ({ member_id: ids.member }),
  reviews: () => ({ member_id: ids.member, kind: 'flight-review', reviewed_on: '2026-01-01' }),
  endorsements: () => ({ member_id: ids.member, kind: 'tailwheel', endorsed_on: '2026-01-01' }),
  documents: () => scan(newId()),
  erasures: () => ({ member_id: ids.other, erased_by: ids.member, reason: 'Asked in writing' }),
  ratings: () => ({ member_id: ids.member, kind: 'night', issued_on: '2026-01-01' }),
};
const PAPERS = [
  'certificates',
  'instructor_certificates',
  'medicals',
  'basic_med',
  'reviews',
  'endorsements',
  'ratings',
];

const CHECK = '23514';
const FOREIGN_KEY = '23503';
const UNIQUE = '23505';

/** Constraint, SQLSTATE, table, and what makes its good row bad. */
const CASES: [constraint: string, state: string, table: string, bad: () => Row][] = [
  ['members_club_id_fkey', FOREIGN_KEY, 'members', () => ({})], // tried in a club that does not exist
  ['members_name_chk', CHECK, 'members', () => ({ name: '  ' })],
  ['members_email_chk', CHECK, 'members', () => ({ email: 'Wren@larkfield.example' })],
  ['members_standing_chk', CHECK, 'members', () => ({ standing: 'banned' })],
  ['members_membership_chk', CHECK, 'members', () => ({ membership_through: '2025-12-31' })],
  ['members_email_uq', UNIQUE, 'members', () => ({ email: 'member@larkfield.example' })],
  ['member_roles_role_chk', CHECK, 'member_roles', () => ({ role: 'owner' })],
  ['member_roles_member_fk', FOREIGN_KEY, 'member_roles', () => ({ member_id: ids.stranger })],
  ['member_roles_pkey', UNIQUE, 'member_roles', () => ({ role: 'member' })],
  ['accounts_email_chk', CHECK, 'accounts', () => ({ email: 'Wren@larkfield.example' })],
  ['accounts_hash_chk', CHECK, 'accounts', () => ({ password_hash: 'in clear' })],
  ['accounts_failed_chk', CHECK, 'accounts', () => ({ failed_attempts: -1 })],
  ['accounts_member_fk', FOREIGN_KEY, 'accounts', () => ({ member_id: ids.stranger })],
  ['accounts_member_uq', UNIQUE, 'accounts', () => ({ member_id: ids.member })],
  ['accounts_email_uq', UNIQUE, 'accounts', () => ({ email: 'member@larkfield.example' })],
  ['refresh_tokens_hash_chk', CHECK, 'refresh_tokens', () => ({ token_hash: 'in clear' })],
  ['refresh_tokens_span_chk', CHECK, 'refresh_tokens', () => ({ expires_at: '2026-01-01T00:00:00Z' })],
  ['refresh_tokens_account_fk', FOREIGN_KEY, 'refresh_tokens', () => ({ account_id: NOBODY })],
  ['refresh_tokens_hash_uq', UNIQUE, 'refresh_tokens', () => ({ token_hash: 'a'.repeat(64) })],
  ['certificates_level_chk', CHECK, 'certificates', () => ({ level: 'master' })],
  ['certificates_span_chk', CHECK, 'certificates', () => ({ valid_through: '2019-12-31' })],
  [
    'certificate_ratings_kind_chk',
    CHECK,
    'certificate_ratings',
    () => ({ kind: 'other', category: null, type_designator: 'WREN' }),
  ],
  ['certificate_ratings_shape_chk', CHECK, 'certificate_ratings', () => ({ kind: 'category-class' })],
  [
    'certificate_ratings_certificate_fk',
    FOREIGN_KEY,
    'certificate_ratings',
    () => ({ certificate_id: NOBODY }),
  ],
  ['certificate_ratings_uq', UNIQUE, 'certificate_ratings', () => ({ category: 'airplane' })],
  [
    'instructor_certificates_ratings_chk',
    CHECK,
    'instructor_certificates',
    () => ({ ratings: ['glider', 'kite'] }),
  ],
  ['suspensions_one_chk', CHECK, 'suspensions', () => ({ instructor_certificate_id: ids.instructor })],
  ['suspensions_span_chk', CHECK, 'suspensions', () => ({ suspended_to: '2025-12-31' })],
  ['suspensions_certificate_fk', FOREIGN_KEY, 'suspensions', () => ({ certificate_id: NOBODY })],
  [
    'suspensions_instructor_fk',
    FOREIGN_KEY,
    'suspensions',
    () => ({ certificate_id: null, instructor_certificate_id: NOBODY }),
  ],
  ['medicals_class_chk', CHECK, 'medicals', () => ({ class: 5 })],
  ['reviews_kind_chk', CHECK, 'reviews', () => ({ kind: 'chat' })],
  ['reviews_ground_chk', CHECK, 'reviews', () => ({ ground_tenths: -1 })],
  ['reviews_flight_chk', CHECK, 'reviews', () => ({ flight_tenths: -1 })],
  ['endorsements_kind_chk', CHECK, 'endorsements', () => ({ kind: 'applause' })],
  ['endorsements_span_chk', CHECK, 'endorsements', () => ({ expires_on: '2025-12-31' })],
  ['endorsements_given_fk', FOREIGN_KEY, 'endorsements', () => ({ given_by: ids.stranger })],
  ['ratings_kind_chk', CHECK, 'ratings', () => ({ kind: 'kite' })],
  ['ratings_designator_chk', CHECK, 'ratings', () => ({ kind: 'language' })],
  ['ratings_span_chk', CHECK, 'ratings', () => ({ valid_through: '2025-12-31' })],
];
CASES.push(
  ['documents_media_chk', CHECK, 'documents', () => ({ media_type: 'text/html' })],
  ['documents_size_chk', CHECK, 'documents', () => scan('')],
  ['documents_one_chk', CHECK, 'documents', () => ({ instructor_certificate_id: ids.instructor })],
  ['documents_content_chk', CHECK, 'documents', () => ({ sha256: 'a'.repeat(64) })],
  [
    'documents_count_chk',
    CHECK,
    'documents',
    () => ({ ...UNSET, instructor_certificate_id: ids.instructor }),
  ],
  ['documents_once_uq', UNIQUE, 'documents', () => scan('the same')],
  ['documents_added_fk', FOREIGN_KEY, 'documents', () => ({ added_by: ids.stranger })],
  ['erasures_reason_chk', CHECK, 'erasures', () => ({ reason: '1234' })],
  ['erasures_other_chk', CHECK, 'erasures', () => ({ erased_by: ids.other })],
  ['erasures_member_uq', UNIQUE, 'erasures', () => ({ member_id: ids.erased })],
  ['erasures_member_fk', FOREIGN_KEY, 'erasures', () => ({ member_id: ids.stranger })],
  ['erasures_by_fk', FOREIGN_KEY, 'erasures', () => ({ erased_by: ids.stranger })],
);
// A paper that is not there, or another member's, is none of the member's own.
for (const [constraint, column] of [
  ['documents_certificates_fk', 'certificate_id'],
  ['documents_instructor_certificates_fk', 'instructor_certificate_id'],
  ['documents_medicals_fk', 'medical_id'],
  ['documents_basic_med_fk', 'basic_med_id'],
  ['documents_reviews_fk', 'review_id'],
  ['documents_endorsements_fk', 'endorsement_id'],
  ['documents_ratings_fk', 'rating_id'],
] as const)
  CASES.push([constraint, FOREIGN_KEY, 'documents', () => ({ ...UNSET, [column]: NOBODY })]);
CASES.push([
  'documents_certificates_fk',
  FOREIGN_KEY,
  'documents',
  () => ({ member_id: ids.other, certificate_id: ids.certificate }),
]);
for (const table of PAPERS) {
  const at = '2026-01-02T00:00:00Z';
  CASES.push(
    [`${table}_member_fk`, FOREIGN_KEY, table, () => ({ member_id: ids.stranger })],
    [`${table}_verified_fk`, FOREIGN_KEY, table, () => ({ verified_by: ids.stranger, verified_at: at })],
    [`${table}_verified_chk`, CHECK, table, () => ({ verified_at: at })],
  );
}

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
  await put('members', { ...good['members']!(), id: ids.member, email: 'member@larkfield.example' });
  await put('members', { ...good['members']!(), id: ids.other });
  await put('members', { ...good['members']!(), id: ids.stranger }, OTHER_CLUB);
  await put('member_roles', { ...good['member_roles']!(), role: 'member' });
  await put('accounts', {
    ...good['accounts']!(),
    id: ids.account,
    member_id: ids.member,
    email: 'member@larkfield.example',
  });
  await put('refresh_tokens', { ...good['refresh_tokens']!(), token_hash: 'a'.repeat(64) });
  await put('certificates', { ...good['certificates']!(), id: ids.certificate });
  await put('certificate_ratings', { ...good['certificate_ratings']!(), category: 'airplane' });
  await put('instructor_certificates', { ...good['instructor_certificates']!(), id: ids.instructor });
  await put('documents', scan('the same'));
  for (let n = 1; n <= 6; n += 1)
    await put('documents', scan(`page ${n}`, { ...UNSET, instructor_certificate_id: ids.instructor }));
  await put('members', { ...good['members']!(), id: ids.erased });
  await put('erasures', { ...good['erasures']!(), member_id: ids.erased });
});
afterAll(() => db.drop());

const tryIn = (club: string, table: string, row: Row) => refusal(db, club, ...insertion(club, table, row));

describe('the database refuses', () => {
  it.each(CASES)('%s', async (constraint, state, table, bad) => {
    const club = constraint === 'members_club_id_fkey' ? NOBODY : CLUB;
    expect(await tryIn(club, table, { ...good[table]!(), ...bad() })).toEqual({ state, constraint });
  });

  it('each time for the constraint alone: the good rows pass', async () => {
    for (const [table, row] of Object.entries(good))
      expect([table, await tryIn(CLUB, table, row())]).toEqual([table, null]);
  });

  it('a document or an erasure that is changed, and an erasure that is deleted', async () => {
    // By the owner of the tables: the service has no right to begin with.
    for (const statement of [
      "UPDATE documents SET media_type = 'application/pdf'",
      "UPDATE erasures SET reason = 'Another reason'",
      'DELETE FROM erasures',
    ]) {
      const constraint = `${/documents|erasures/.exec(statement)![0]}_append_only`;
      await expect(db.admin.query(statement)).rejects.toMatchObject({ constraint });
      await expect(db.tenantDb.run(CLUB, (em) => em.query(statement))).rejects.toMatchObject({
        code: '42501',
      });
    }
  });

  it('by every constraint that has words for people', () => {
    // Holds more than the primary key does, so that one is always broken first; it is there for foreign keys to point at.
    const implied = PAPERS.map((table) => `${table}_of_member_uq`);
    // Tried above.
    const changes = ['documents_append_only', 'erasures_append_only'];
    const elsewhere = (name: string) => [...implied, ...changes].includes(name);
    expect([...new Set(CASES.map(([constraint]) => constraint))].sort()).toEqual(
      registeredConstraints()
        .map(({ constraint }) => constraint)
        .filter((constraint) => !elsewhere(constraint))
        .sort(),
    );
  });
});

describe('clubs are kept apart', () => {
  it.each(Object.keys(good))('%s', async (table) => {
    const { rows } = await db.admin.query(`SELECT count(*)::int AS n FROM ${table} WHERE club_id = $1`, [
      CLUB,
    ]);
    expect(rows[0].n).toBeGreaterThan(0);
    // Asked by the other club, or by nobody: nothing to see, to change or to delete.
    const seen = await db.tenantDb.run(OTHER_CLUB, (em) =>
      em.query(`SELECT 1 FROM ${table} WHERE club_id = $1`, [CLUB]),
    );
    expect(seen).toEqual([]);
    expect(await db.dataSource.query(`SELECT 1 FROM ${table}`)).toEqual([]);
    const [, deleted] =
      table === 'erasures'
        ? [null, 0]
        : await db.tenantDb.run(OTHER_CLUB, (em) =>
            em.query(`DELETE FROM ${table} WHERE club_id = $1`, [CLUB]),
          );
    expect(deleted).toBe(0);
    // A row for this club, written from the other one.
    const answer = await refusal(db, OTHER_CLUB, ...insertion(CLUB, table, good[table]!()));
    expect(answer).toMatchObject({ state: '42501' });
  });
});
