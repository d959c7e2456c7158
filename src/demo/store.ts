/** The demo club in the database: whether it is there and from which day, taking it out, putting it in. */
import type pg from 'pg';
import { StartupError } from '../platform/startup-error.js';
import { localDateOf, type LocalDate } from '../rules/index.js';
import type { DemoClub } from './generate.js';
import { DEMO_CLUB_ID, DEMO_SLUG } from './ids.js';
import { scanRows } from './people/scans.js';
import { ZONE } from './when.js';

const CHUNK = 2000;

/** Opens the club for the running transaction, as row-level security asks even of the owner. */
async function openClub(owner: pg.Client): Promise<void> {
  await owner.query(
    `SELECT set_config('bellcrank.club_id', $1, true), set_config('bellcrank.club_slug', $2, true),
            set_config('bellcrank.actor_id', '', true)`,
    [DEMO_CLUB_ID, DEMO_SLUG],
  );
}

/**
 * The club's date as of which the stored demo club was made; null when there is none.
 *
 * @throws StartupError when another club bears the demo's slug: that one is nobody's to touch.
 */
export async function storedDay(owner: pg.Client): Promise<LocalDate | null> {
  await openClub(owner);
  const found = await owner.query<{ club_id: string; made: number }>(
    'SELECT club_id, floor(extract(epoch FROM recorded_at))::float8 AS made FROM clubs WHERE slug = $1 OR club_id = $2',
    [DEMO_SLUG, DEMO_CLUB_ID],
  );
  const row = found.rows[0];
  if (!row) return null;
  if (found.rows.length > 1 || row.club_id !== DEMO_CLUB_ID) {
    throw new StartupError(
      `A club of this database has the short name "${DEMO_SLUG}" and is not the demo club; it was left alone. ` +
        'Run the demo on another database (unset DATABASE_URL, or set BELLCRANK_DATA_DIR to another folder).',
    );
  }
  return localDateOf(row.made, ZONE);
}

/**
 * Takes the demo club out, and nothing else: every statement names its id, and row-level security shows no other club.
 * Signed and append-only records go too, so their triggers rest until the transaction ends.
 */
export async function removeClub(owner: pg.Client): Promise<void> {
  await openClub(owner);
  const tables = await childrenFirst(owner);
  for (const table of tables) await owner.query(`ALTER TABLE ${table} DISABLE TRIGGER USER`);
  for (const table of tables) await owner.query(`DELETE FROM ${table} WHERE club_id = $1`, [DEMO_CLUB_ID]);
  for (const table of tables) await owner.query(`ALTER TABLE ${table} ENABLE TRIGGER USER`);
}

/** All tables with a club, those that refer to others before those they refer to. */
async function childrenFirst(owner: pg.Client): Promise<string[]> {
  const { rows } = await owner.query<{ name: string; refers: string[] }>(
    `SELECT c.oid::regclass::text AS name,
       ARRAY(SELECT k.confrelid::regclass::text FROM pg_constraint k
             WHERE k.contype = 'f' AND k.conrelid = c.oid AND k.confrelid <> c.oid) AS refers
     FROM pg_class c JOIN pg_attribute a ON a.attrelid = c.oid AND a.attname = 'club_id' AND NOT a.attisdropped
     WHERE c.relkind IN ('r', 'p') AND c.relnamespace = current_schema()::regnamespace ORDER BY 1`,
  );
  const order: string[] = [];
  let left = rows;
  while (left.length > 0) {
    const free = left.filter(({ name }) => !left.some((other) => other.refers.includes(name)));
    if (free.length === 0)
      throw new Error(`tables refer to each other in a circle: ${left.map(({ name }) => name).join(', ')}`);
    order.push(...free.map(({ name }) => name));
    left = left.filter((one) => !free.includes(one));
  }
  return order;
}

/** Puts all rows in, table by table; flights are booked afterwards (book.ts). */
export async function insertClub(owner: pg.Client, club: DemoClub, passwordHash: string): Promise<void> {
  await openClub(owner);
  const accounts = club.rows.accounts.map((row) => ({ ...row, password_hash: passwordHash }));
  const documents = await scanRows(club.rows);
  for (const [table, rows] of Object.entries({ ...club.rows, accounts, documents })) {
    const columns = Object.keys(rows[0] ?? {}).join(', ');
    for (let start = 0; start < rows.length; start += CHUNK) {
      await owner.query(
        `INSERT INTO ${table} (${columns}) SELECT ${columns} FROM jsonb_populate_recordset(NULL::${table}, $1::jsonb)`,
        [JSON.stringify(rows.slice(start, start + CHUNK))],
      );
    }
  }
}

/** Is any flight booked? A start that was cut short between loading and booking left none. */
export async function hasFlights(owner: pg.Client): Promise<boolean> {
  await openClub(owner);
  const found = await owner.query(`SELECT 1 FROM bookings WHERE club_id = $1 AND kind = 'flight' LIMIT 1`, [
    DEMO_CLUB_ID,
  ]);
  return found.rows.length > 0;
}
