/** Notices, mail, preferences, feeds: what the database refuses when the service is gone round. */
import { createTestDatabase, type TestDatabase } from '../../src/platform/database/testing.js';
import { newId } from '../../src/platform/ids.js';
import { refusal, type Row } from '../support/refusals.js';
import { constraintsToProve, insertRow, plantClub, rowRefusal } from './refusals.js';

const TABLES = [
  ...['notices', 'notice_mails', 'notice_preferences', 'notice_due', 'reminders'],
  ...['calendar_feeds', 'live_changes'],
];

interface Scene {
  clubId: string;
  memberId: string;
}

let db: TestDatabase;
let own: Scene;
let foreign: Scene;

beforeAll(async () => {
  db = await createTestDatabase();
  own = await plantClub(db);
  foreign = await plantClub(db);
}, 120_000);
afterAll(() => db.drop());

const at = '2026-03-10T15:00:00Z';
const mail = (more: Row = {}): Row => ({
  ...{ club_id: own.clubId, id: newId(), member_id: own.memberId, digest: false, due_at: at },
  ...more,
});
const notice = (more: Row = {}): Row => ({
  ...{ club_id: own.clubId, id: newId(), member_id: own.memberId, kind: 'lapse', cause: newId() },
  ...{ items: JSON.stringify([{ key: 'a' }]), urgent: false, occurred_at: at, gathers_until: at },
  ...more,
});
const preferences = (more: Row = {}): Row => ({
  ...{ club_id: own.clubId, id: undefined, member_id: own.memberId, choices: {}, digest_hour: 7 },
  ...more,
});
const due = (more: Row = {}): Row => ({
  ...{ club_id: own.clubId, id: undefined, work: 'notices', due_at: at },
  ...more,
});
const reminder = (more: Row = {}): Row => ({
  ...{ club_id: own.clubId, id: undefined, member_id: own.memberId, subject: 'lapse:a', lead: '7 d' },
  ...more,
});
const feed = (more: Row = {}): Row => ({
  ...{ club_id: own.clubId, id: newId(), member_id: own.memberId, shows: 'own', title: 'My flights' },
  token_hash: 'a'.repeat(64),
  ...more,
});
const live = (more: Row = {}): Row => ({
  ...{ club_id: own.clubId, id: undefined, topic: 'flights' },
  ...more,
});

const CASES: [constraint: string, table: string, wrong: () => Row][] = [
  ['notices_kind_chk', 'notices', () => notice({ kind: 'Lapse!' })],
  ['notices_cause_chk', 'notices', () => notice({ cause: ' ' })],
  ['notices_items_chk', 'notices', () => notice({ items: '[]' })],
  ['notices_gathers_chk', 'notices', () => notice({ gathers_until: '2026-03-10T14:59:00Z' })],
  ['notices_settled_chk', 'notices', () => notice({ mail_id: newId() })],
  ['notices_member_fk', 'notices', () => notice({ member_id: foreign.memberId })],
  ['notices_mail_fk', 'notices', () => notice({ mail_id: newId(), settled_at: at })],
  ['notice_mails_state_chk', 'notice_mails', () => mail({ state: 'lost' })],
  ['notice_mails_attempts_chk', 'notice_mails', () => mail({ attempts: -1 })],
  ['notice_mails_fault_chk', 'notice_mails', () => mail({ fault: 'x'.repeat(501) })],
  ['notice_mails_sent_chk', 'notice_mails', () => mail({ state: 'sent' })],
  ['notice_mails_sent_chk', 'notice_mails', () => mail({ sent_at: at })],
  ['notice_mails_given_up_chk', 'notice_mails', () => mail({ state: 'given-up' })],
  ['notice_mails_member_fk', 'notice_mails', () => mail({ member_id: foreign.memberId })],
  [
    'notice_preferences_choices_chk',
    'notice_preferences',
    () => preferences({ choices: { lapse: 'never' } }),
  ],
  ['notice_preferences_choices_chk', 'notice_preferences', () => preferences({ choices: { lapse: 1 } })],
  ['notice_preferences_hour_chk', 'notice_preferences', () => preferences({ digest_hour: 24 })],
  ['notice_preferences_quiet_chk', 'notice_preferences', () => preferences({ quiet_from: '22:00' })],
  [
    'notice_preferences_quiet_chk',
    'notice_preferences',
    () => preferences({ quiet_from: '22:00', quiet_to: '22:00' }),
  ],
  ['notice_preferences_member_fk', 'notice_preferences', () => preferences({ member_id: foreign.memberId })],
  ['notice_due_work_chk', 'notice_due', () => due({ work: 'naps' })],
  ['reminders_subject_chk', 'reminders', () => reminder({ subject: '' })],
  ['reminders_lead_chk', 'reminders', () => reminder({ lead: 'soon' })],
  ['reminders_member_fk', 'reminders', () => reminder({ member_id: foreign.memberId })],
  ['calendar_feeds_shows_chk', 'calendar_feeds', () => feed({ shows: 'all' })],
  ['calendar_feeds_title_chk', 'calendar_feeds', () => feed({ title: ' ' })],
  ['calendar_feeds_hash_chk', 'calendar_feeds', () => feed({ token_hash: 'secret' })],
  ['calendar_feeds_of_chk', 'calendar_feeds', () => feed({ shows: 'aircraft' })],
  ['calendar_feeds_member_fk', 'calendar_feeds', () => feed({ member_id: foreign.memberId })],
  ['calendar_feeds_aircraft_fk', 'calendar_feeds', () => feed({ shows: 'aircraft', aircraft_id: newId() })],
  ['live_changes_topic_chk', 'live_changes', () => live({ topic: 'All of it' })],
];
/** Refused because of a row that is there. */
const TWICE: [constraint: string, table: string, row: () => Row][] = [
  ['notices_cause_uq', 'notices', () => notice({ cause: 'order:1' })],
  ['notice_mails_digest_uq', 'notice_mails', () => mail({ digest: true })],
  ['notice_preferences_pkey', 'notice_preferences', () => preferences()],
  ['reminders_pkey', 'reminders', () => reminder()],
  ['calendar_feeds_hash_uq', 'calendar_feeds', () => feed({ token_hash: 'b'.repeat(64) })],
];

it.each(CASES)('%s', async (constraint, table, wrong) => {
  const state = constraint.endsWith('_fk') ? '23503' : '23514';
  expect(await rowRefusal(db, own.clubId, table, wrong())).toEqual({ state, constraint });
});

it.each(TWICE)('%s: there is one', async (constraint, table, row) => {
  await db.tenantDb.run(own.clubId, (em) => insertRow(em, table, row()));
  expect(await rowRefusal(db, own.clubId, table, row())).toEqual({ state: '23505', constraint });
});

it('notices_cause_uq: once it was told, the same cause may come again', async () => {
  const told = notice({ cause: 'order:2', settled_at: at });
  await db.tenantDb.run(own.clubId, (em) => insertRow(em, 'notices', told));
  expect(await rowRefusal(db, own.clubId, 'notices', notice({ cause: 'order:2' }))).toBeNull();
});

it('has a case for every constraint of the tables', async () => {
  const needed = await constraintsToProve(db, TABLES);
  const proven = new Set([...CASES, ...TWICE].map(([constraint]) => constraint));
  expect(needed.filter((name) => !proven.has(name))).toEqual([]);
});

it('live_changes: whoever speaks for no club sees that something changed, and writes nothing that is another club’s', async () => {
  await db.tenantDb.run(own.clubId, (em) => insertRow(em, 'live_changes', live()));
  const seen = await db.tenantDb.runWithoutClub(null, (em) =>
    em.query('SELECT count(*)::int AS n FROM live_changes'),
  );
  expect((seen as { n: number }[])[0]!.n).toBeGreaterThan(0);
  const sql = `INSERT INTO live_changes (club_id, topic) VALUES ('${foreign.clubId}', 'flights')`;
  expect(await refusal(db, own.clubId, sql)).toMatchObject({ state: '42501' });
});
