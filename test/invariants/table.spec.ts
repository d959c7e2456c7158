/**
 * The table of invariants in DEVELOPERS.md: invariant, where the service checks it first, the constraint, the problem a
 * client sees, and the test that goes round the service. Written by `npm run invariants:write`, compared here.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { registeredConstraints } from '../../src/platform/database/constraint-problems.js';
import { projectPath } from '../../src/platform/paths.js';

const WRITING = process.env['BELLCRANK_TEST_WRITE_INVARIANTS'] === '1';
const FILE = projectPath('DEVELOPERS.md');
const [BEGIN, END] = ['<!-- invariants:begin -->', '<!-- invariants:end -->'];

/** Where the service checks before the database does, by table. */
const CHECKED_IN: Record<string, string> = {
  clubs: 'clubs/clubs.service.ts, cli/create-club.ts',
  audit_log: 'written by triggers',
  airfields: 'clubs/airfields',
  weather_reports: 'weather/reports',
  weather_fetches: 'weather/rounds',
  runways: 'clubs/airfields',
  policy_values: 'clubs/policy',
  club_rules: 'clubs/rules',
  club_rule_dry_runs: 'decisions/dry-run',
  members: 'members/members.service.ts',
  documents: 'members/documents',
  erasures: 'members/record',
  member_roles: 'members/members.service.ts',
  accounts: 'accounts',
  refresh_tokens: 'accounts/sessions.service.ts',
  aircraft_models: 'fleet/models',
  aircraft: 'fleet/aircraft',
  registrations: 'fleet/papers',
  permits: 'fleet/papers',
  insurance_terms: 'fleet/insurance',
  insurance_named_pilots: 'fleet/insurance',
  member_checks: 'members/checks',
  member_check_voids: 'members/checks',
  equipment: 'fleet/equipment',
  meter_readings: 'fleet/meters',
  airworthiness_items: 'fleet/airworthiness',
  compliances: 'fleet/airworthiness',
  practice_records: 'practice/records, practice/import',
  personal_limits: 'members/limits',
  squawks: 'fleet/squawks',
  deferrals: 'fleet/squawks',
  squawk_parts: 'fleet/squawks/closing.service.ts',
  attachments: 'fleet/squawks/attachments',
  differences: 'fleet/differences',
  weighings: 'fleet/weighings',
  loading_sheets: 'fleet/loading',
  performance_sheets: 'fleet/loading',
  equipment_changes: 'maintenance/equipment-changes',
  meter_reading_voids: 'fleet/meters',
  upgrade_wishes: 'maintenance/wishes',
  directives: 'maintenance/directives',
  directive_models: 'maintenance/directives',
  directive_findings: 'maintenance/directives',
  item_templates: 'fleet/airworthiness/templates',
  signers: 'maintenance/signers',
  work_orders: 'maintenance/work-orders',
  work_lines: 'maintenance/work-orders',
  displacements: 'bookings/displacements',
  dispatches: 'bookings/dispatch',
  dispatch_meters: 'bookings/dispatch',
  dispatch_voids: 'bookings/dispatch',
  returns: 'bookings/return',
  return_meters: 'bookings/return',
  return_entries: 'bookings/return',
  overdue_contacts: 'bookings/overdue',
  overdue_alerts: 'bookings/overdue',
  aircraft_out: 'bookings/overdue',
  teaching_hours: 'bookings/availability',
  standby_entries: 'bookings/standby',
  standby_offers: 'bookings/standby',
  standby_wakes: 'written by triggers and bookings/standby',
  fact_changes: 'written by triggers',
  fact_marks: 'written by triggers',
  standing_answers: 'standing/rejudge.ts',
  standing_changes: 'standing/rejudge.ts',
  standing_clubs: 'standing/rejudge.ts',
  notices: 'notices/outbox/post-notice.ts',
  notice_mails: 'notices/outbox',
  notice_preferences: 'notices/preferences',
  notice_due: 'notices/notices.worker.ts',
  reminders: 'notices/reminders',
  calendar_feeds: 'notices/feeds',
  live_changes: 'written by triggers',
  log_entries: 'logbook/logbook.service.ts',
  log_imports: 'logbook/import',
  checkouts: 'checkouts/checkouts.service.ts',
  checkout_voids: 'checkouts/checkouts.service.ts',
  checkout_requirements: 'checkouts/requirements',
  checkout_versions: 'checkouts/requirements',
  checkout_items: 'checkouts/requirements',
  checkout_prerequisites: 'checkouts/requirements',
  checkout_transfers: 'checkouts/requirements',
  checkout_instructors: 'checkouts/requirements',
  checkout_marks: 'checkouts/syllabus',
  quiz_questions: 'checkouts/quiz',
  quiz_attempts: 'checkouts/quiz',
  quiz_drawn: 'checkouts/quiz',
  quiz_results: 'checkouts/quiz',
  fact_parts: 'decisions/decision-store.ts',
  decisions: 'decisions/decision-store.ts',
  booking_series: 'bookings/series',
  booking_changes: 'bookings/changes',
  hand_overs: 'bookings/changes',
  bookings: 'bookings/book.service.ts, decisions/flight-facts.ts',
  booking_people: 'bookings/book.service.ts, decisions/flight-facts.ts',
  overrides: 'bookings/allowed.ts',
  decision_chain: 'decisions/audit/seal.ts',
  safety_reports: 'safety/reports',
  safety_steps: 'safety/reports',
  override_reviews: 'safety/overrides',
  idempotency_keys: 'bookings/idempotency.ts',
  charge_rates: 'charges/rates',
  ledger_entries: 'charges/flights, charges/ledger',
};
const PAPERS = [
  'certificates',
  'certificate_ratings',
  'instructor_certificates',
  'suspensions',
  'medicals',
  'basic_med',
  'reviews',
  'endorsements',
  'ratings',
];
for (const table of PAPERS) CHECKED_IN[table] = 'members/papers';

interface CatalogTable {
  constraints: Record<string, string>;
  indexes: Record<string, string>;
  triggers: Record<string, string>;
}
const catalog = (
  JSON.parse(readFileSync(projectPath('migrations', 'catalog.json'), 'utf8')) as {
    tables: Record<string, CatalogTable>;
  }
).tables;

/** Specs of this folder by name, to find the one that proves a constraint. */
const specs = readdirSync(__dirname, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts') && !name.startsWith('catalog') && name !== 'table.spec.ts')
  .sort()
  .map((name) => ({ name, text: readFileSync(join(__dirname, name), 'utf8') }));

beforeAll(async () => {
  for (const file of readdirSync(projectPath('src'), { recursive: true, encoding: 'utf8' })) {
    if (file.endsWith('.constraints.ts')) await import(join(projectPath('src'), file));
  }
});

/** Table a constraint belongs to and how the database words it. */
function placeOf(constraint: string): { table: string; definition: string } {
  for (const [table, of] of Object.entries(catalog)) {
    const definition = of.constraints[constraint] ?? of.indexes[constraint] ?? of.triggers[constraint];
    if (definition !== undefined) return { table, definition };
  }
  // Raised by a trigger under a constraint's name.
  const table = Object.keys(catalog)
    .filter((name) => constraint.startsWith(`${name}_`))
    .sort((a, b) => b.length - a.length)[0];
  if (table === undefined) throw new Error(`${constraint} belongs to no table`);
  return { table, definition: 'raised by a trigger' };
}

const short = (definition: string): string => {
  const one = definition
    .replace(/^CREATE (UNIQUE INDEX|TRIGGER) /, '')
    .replace(/::[a-z ]+(\[\])?/g, '')
    .replace(/\s+/g, ' ');
  return (one.length > 110 ? `${one.slice(0, 107)}...` : one).replaceAll('|', '\\|');
};

/** A spec names a constraint whole, or makes the name from its table's. */
const names = (text: string, table: string, constraint: string): boolean =>
  new RegExp(`\\b${constraint}\\b`).test(text) ||
  text.includes(`}${constraint.slice(table.length)}`) ||
  text.includes(`('${constraint.slice(table.length + 1)}'`);

function rows(): string[] {
  return registeredConstraints()
    .map(({ constraint, code, status }) => {
      const { table, definition } = placeOf(constraint);
      const proof = specs.find(({ text }) => names(text, table, constraint))?.name;
      return {
        table,
        constraint,
        line: `| ${table} | ${short(definition)} | ${CHECKED_IN[table]} | \`${constraint}\` | \`${code}\` ${status} | ${proof ?? '?'} |`,
      };
    })
    .sort((a, b) => (`${a.table} ${a.constraint}` < `${b.table} ${b.constraint}` ? -1 : 1))
    .map(({ line }) => line);
}

const table = (): string =>
  [
    '| table | invariant | checked first in `src/` | constraint | problem | proven in `test/invariants/` |',
    '|---|---|---|---|---|---|',
    ...rows(),
  ].join('\n');

test('DEVELOPERS.md has a row for every invariant', () => {
  const text = readFileSync(FILE, 'utf8');
  const [before, rest] = text.split(BEGIN);
  const [, after] = (rest ?? '').split(END);
  if (WRITING) writeFileSync(FILE, `${before}${BEGIN}\n\n${table()}\n\n${END}${after}`);
  expect(readFileSync(FILE, 'utf8')).toContain(table());
});

test('every invariant is checked somewhere first, and proven round the service', () => {
  for (const [name] of Object.entries(catalog)) {
    if (name !== 'schema_migrations') expect([name, typeof CHECKED_IN[name]]).toEqual([name, 'string']);
  }
  expect(rows().filter((row) => row.includes('| ? |'))).toEqual([]);
});
