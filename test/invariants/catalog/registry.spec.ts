/**
 * Every constraint of the live database says something to people: it is registered with `registerConstraint`, or it is
 * in the list of exceptions below with the reason why nobody can meet it.
 */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { registeredConstraints } from '../../../src/platform/database/constraint-problems.js';
import { createTestDatabase } from '../../../src/platform/database/testing.js';
import { projectPath } from '../../../src/platform/paths.js';
import { type Catalog, readCatalog } from './read-catalog.js';
import { keyColumns, tenantTables } from './tenancy.js';

/** Names that no registration has to explain. */
const EXCEPTIONS: { reason: string; covers: (name: string, table: string) => boolean }[] = [
  {
    reason: 'the key is the club and an id the service has just made (UUID version 7), so two never meet',
    covers: (name, table) =>
      name === `${table}_pkey` && ['club_id', 'club_id, id'].includes(keyColumns(live, table).join(', ')),
  },
  {
    reason:
      'the service writes these with ON CONFLICT DO NOTHING: the same content, or the same request, once more',
    covers: (name) => ['fact_parts_pkey', 'idempotency_keys_pkey'].includes(name),
  },
  {
    reason: 'the club comes out of the access token or the transaction, never out of a body',
    covers: (name, table) => name === `${table}_club_id_fkey`,
  },
];

let live: Catalog;
/** Constraint names by the table they belong to. */
let constraints: Map<string, string>;

beforeAll(async () => {
  for (const file of readdirSync(projectPath('src'), { recursive: true, encoding: 'utf8' })) {
    if (file.endsWith('.constraints.ts')) await import(join(projectPath('src'), file));
  }
  const db = await createTestDatabase();
  try {
    live = await readCatalog(async (sql) => (await db.admin.query(sql)).rows as Record<string, string>[]);
    constraints = constraintsOf(live, await raisedByTriggers((sql) => db.admin.query(sql)));
  } finally {
    await db.drop();
  }
});

/** Constraints, unique indexes (whose violation names them alike), and what triggers raise under a constraint's name. */
function constraintsOf(catalog: Catalog, raised: Map<string, string>): Map<string, string> {
  const names = new Map(raised);
  for (const table of tenantTables(catalog)) {
    const { constraints: own, indexes, triggers } = catalog.tables[table]!;
    for (const name of Object.keys(own)) names.set(name, table);
    for (const [name, definition] of Object.entries(indexes))
      if (definition.startsWith('CREATE UNIQUE')) names.set(name, table);
    // `refuse_change` names what it raises after the table, whatever the trigger is called.
    if (`${table}_append_only` in triggers || Object.values(triggers).join().includes('refuse_change('))
      names.set(`${table}_append_only`, table);
  }
  return names;
}

/** Fixed constraint names in the bodies of trigger functions, with the table they name. */
async function raisedByTriggers(
  query: (sql: string) => Promise<{ rows: { prosrc: string }[] }>,
): Promise<Map<string, string>> {
  const { rows } = await query(
    "SELECT prosrc FROM pg_proc WHERE pronamespace = 'public'::regnamespace AND prosrc LIKE '%CONSTRAINT =%'",
  );
  const raised = rows.flatMap(({ prosrc }) => [...prosrc.matchAll(/CONSTRAINT = '(\w+)', TABLE = '(\w+)'/g)]);
  return new Map(raised.map((match) => [match[1]!, match[2]!]));
}

it('sees constraints of every kind', () => {
  expect([...constraints.keys()]).toEqual(
    expect.arrayContaining([
      ...[
        'aircraft_seats_chk',
        'airfields_code_uq',
        'bookings_aircraft_excl',
        'squawks_aircraft_fk',
        'certificate_ratings_uq',
      ],
      ...['meter_readings_not_below_last_chk', 'meter_readings_append_only'],
    ]),
  );
});

it('has words for every constraint that somebody can meet', () => {
  const registered = new Set(registeredConstraints().map(({ constraint }) => constraint));
  const silent = [...constraints]
    .filter(([name, table]) => !registered.has(name) && !EXCEPTIONS.some(({ covers }) => covers(name, table)))
    .map(([name]) => name);
  expect(silent.sort()).toEqual([]);
});

it('has no words for constraints that do not exist', () => {
  const stale = registeredConstraints().filter(({ constraint }) => !constraints.has(constraint));
  expect(stale.map(({ constraint }) => constraint)).toEqual([]);
});

it('needs every exception', () => {
  for (const { reason, covers } of EXCEPTIONS) {
    const covered = [...constraints].filter(([name, table]) => covers(name, table));
    expect([reason, covered.length > 0]).toEqual([reason, true]);
  }
});

it('tells people what to do, in sentences and without SQL', () => {
  for (const { constraint, detail, status, title } of registeredConstraints()) {
    expect([constraint, detail]).toEqual([constraint, expect.stringMatching(/^[A-Z'].{10,}[.]$/s)]);
    expect([
      constraint,
      /constraint|violat|relation|null value|tuple|_id\b|_chk\b/i.test(`${title} ${detail}`),
    ]).toEqual([constraint, false]);
    expect([constraint, status >= 400 && status < 500]).toEqual([constraint, true]);
  }
});
