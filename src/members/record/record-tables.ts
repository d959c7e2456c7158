import { DOCUMENT_KINDS } from '../documents/document-kinds.js';

const of = (table: string, column = 'member_id'): string =>
  `SELECT * FROM ${table} WHERE club_id = $1 AND ${column} = $2`;

/** Rows about flights the member is aboard of. */
const aboard = (table: string): string =>
  `SELECT s.* FROM ${table} s JOIN booking_people p ON p.club_id = s.club_id AND p.booking_id = s.booking_id
     WHERE s.club_id = $1 AND p.member_id = $2`;

/** Rows about a member, by what they are; $1 the club, $2 the member. */
export const RECORDS: Record<string, string> = {
  roles: of('member_roles'),
  ...Object.fromEntries(DOCUMENT_KINDS.map(({ kind, table }) => [kind.path, of(table)])),
  certificateRatings: `SELECT r.* FROM certificate_ratings r JOIN certificates c ON c.club_id = r.club_id AND c.id = r.certificate_id
     WHERE r.club_id = $1 AND c.member_id = $2`,
  suspensions: `SELECT s.* FROM suspensions s
      LEFT JOIN certificates c ON c.club_id = s.club_id AND c.id = s.certificate_id
      LEFT JOIN instructor_certificates i ON i.club_id = s.club_id AND i.id = s.instructor_certificate_id
     WHERE s.club_id = $1 AND $2 IN (c.member_id, i.member_id)`,
  documents: of('documents'),
  log: of('log_entries'),
  logImports: of('log_imports'),
  checkouts: of('checkouts'),
  checkoutItems: of('checkout_marks'),
  checkoutAuthority: of('checkout_instructors'),
  quizzes: `SELECT a.*, r.answers, r.right_count, r.asked_count, r.pass_percent, r.passed, r.handed_in_at
      FROM quiz_attempts a LEFT JOIN quiz_results r ON r.club_id = a.club_id AND r.attempt_id = a.id
     WHERE a.club_id = $1 AND a.member_id = $2`,
  checks: of('member_checks'),
  insuranceNaming: of('insurance_named_pilots'),
  practice: of('practice_records'),
  limits: of('personal_limits'),
  safetyReports: of('safety_reports', 'reporter_id'),
  bookings: `SELECT b.* FROM bookings b WHERE b.club_id = $1 AND (b.member_id = $2 OR EXISTS (SELECT 1 FROM booking_people p
     WHERE p.club_id = b.club_id AND p.booking_id = b.id AND p.member_id = $2))`,
  decisions: `SELECT club_id, id, aircraft_id, asked_by, known_at, as_of, answer, horizon_until, recorded_at FROM decisions
     WHERE club_id = $1 AND member_id = $2`,
  teachingHours: of('teaching_hours'),
  standby: of('standby_entries'),
  standbyOffers: of('standby_offers'),
  standingAnswers: aboard('standing_answers'),
  standingChanges: aboard('standing_changes'),
  displacedFlights: of('displacements'),
  notices: of('notices'),
  noticeMail: of('notice_mails'),
  noticePreferences: of('notice_preferences'),
  reminders: of('reminders'),
  // Without the hash of its secret.
  calendarFeeds: `SELECT club_id, id, shows, aircraft_id, title, revoked_at, recorded_at FROM calendar_feeds
     WHERE club_id = $1 AND member_id = $2`,
  squawksReported: of('squawks', 'reported_by'),
  documentsRead: `SELECT at, actor_id, row_id AS document_id FROM audit_log
     WHERE club_id = $1 AND action = 'read' AND table_name = 'documents' AND after ->> 'member_id' = $2::text`,
};

/** Kept when a member is erased, under the new name; why; and how many rows there are. */
export const KEPT: { what: string; why: string; count: string }[] = [
  {
    what: 'Flights in the log, without remarks',
    why: "The aircraft's times and landings hang on them, and other members' records of instruction.",
    count: RECORDS['log']!,
  },
  {
    what: 'Files taken over into the log: when, by whom, how they were read, and how many flights; the files are not kept',
    why: 'The flights in the log came with them, and are taken back with them.',
    count: RECORDS['logImports']!,
  },
  {
    what: 'Checkouts and their signatures',
    why: 'Signed records of the instructors are immutable.',
    count: RECORDS['checkouts']!,
  },
  {
    what: 'Items of checkouts as instructors signed them, with their notes',
    why: 'Checkouts rest on them, and signed records of the instructors are immutable.',
    count: RECORDS['checkoutItems']!,
  },
  {
    what: 'Quizzes and their results',
    why: 'Checkouts rest on them; they hold letters and figures, no words.',
    count: RECORDS['quizzes']!,
  },
  {
    what: 'Authority to sign checkouts',
    why: 'Without it a checkout that nobody else is named for could be signed by every instructor.',
    count: RECORDS['checkoutAuthority']!,
  },
  {
    what: 'Bookings, without notes',
    why: 'Who had the aircraft, for accidents and claims.',
    count: RECORDS['bookings']!,
  },
  {
    what: 'Slots waited for and offered, without notes',
    why: 'That slots went in the order of the club can be shown only whole.',
    count: RECORDS['standby']!,
  },
  {
    what: 'Decisions with the facts they rested on, name and class and dates of papers among them',
    why: 'They are sealed in the chain of decisions: without them nothing that was decided can be verified or replayed.',
    count: RECORDS['decisions']!,
  },
  {
    what: 'That identity, citizenship or background was checked, when and by whom',
    why: 'Providers of flight training keep records of the verification (49 CFR 1552.15); no number and no copy is among them.',
    count: RECORDS['checks']!,
  },
  {
    what: 'That insurance terms named the pilot',
    why: 'Who was covered on past flights, for claims.',
    count: RECORDS['insuranceNaming']!,
  },
  {
    what: 'Squawks reported, and signatures in maintenance records',
    why: 'Maintenance records stay with the aircraft (14 CFR 91.417).',
    count: RECORDS['squawksReported']!,
  },
  {
    what: 'Hazards and occurrences reported under the name, as they were told',
    why: 'What others learn from them hangs on the report standing as it is; one made in confidence never held the name.',
    count: RECORDS['safetyReports']!,
  },
];
