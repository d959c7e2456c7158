import { sqlStateOf } from '../../src/platform/database/constraint-problems.js';
import type { TestDatabase } from '../../src/platform/database/testing.js';
import { newId } from '../../src/platform/ids.js';

/** A row as column names and values. */
export type Row = Record<string, unknown>;

/** What the database said no with. */
export interface Refusal {
  state: string | undefined;
  constraint: string | undefined;
}

/** Runs SQL as the service's role in one club, round every service. Null when the database let it pass. */
export async function refusal(
  db: TestDatabase,
  clubId: string,
  text: string,
  params: unknown[] = [],
): Promise<Refusal | null> {
  try {
    await db.tenantDb.run(clubId, (em) => em.query(text, params));
    return null;
  } catch (error) {
    const { constraint } = (error as { driverError?: { constraint?: string } }).driverError ?? {};
    return { state: sqlStateOf(error), constraint };
  }
}

/** An INSERT of a row with the club and, unless the row brings one or must have none, a new id. */
export function insertion(clubId: string, table: string, row: Row): [text: string, params: unknown[]] {
  const full: Row = { club_id: clubId, id: newId(), ...row };
  const columns = Object.keys(full).filter((column) => full[column] !== undefined);
  const places = columns.map((_column, index) => `$${index + 1}`);
  return [
    `INSERT INTO ${table} (${columns.join(', ')}) VALUES (${places.join(', ')})`,
    columns.map((column) => full[column]),
  ];
}

/** Tables that are written once: the service has no right to change them, and a trigger refuses who has the right. */
export async function expectWrittenOnce(
  db: TestDatabase,
  clubId: string,
  columns: readonly (readonly [table: string, column: string])[],
): Promise<void> {
  for (const [table, column] of columns) {
    for (const text of [`UPDATE ${table} SET ${column} = 'changed, by hand'`, `DELETE FROM ${table}`]) {
      expect(await refusal(db, clubId, text)).toMatchObject({ state: '42501' });
      await expect(db.admin.query(text)).rejects.toMatchObject({
        code: '23514',
        constraint: `${table}_append_only`,
      });
    }
  }
}
