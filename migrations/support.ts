/**
 * SQL shared by the migrations. Its output is part of every landed migration: never change what it returns, add a new
 * function instead.
 */
import type { QueryRunner } from 'typeorm';

/** Puts a club's table behind row-level security, forced, so that even its owner is bound; and lets the service use it. */
export function tenantTable(table: string, privileges: 'edit' | 'append-only' = 'edit'): string {
  return `
    ALTER TABLE ${table} ENABLE ROW LEVEL SECURITY;
    ALTER TABLE ${table} FORCE ROW LEVEL SECURITY;
    CREATE POLICY ${table}_club ON ${table}
      USING (club_id = bellcrank_club()) WITH CHECK (club_id = bellcrank_club());
    GRANT SELECT, INSERT${privileges === 'edit' ? ', UPDATE, DELETE' : ''} ON ${table} TO bellcrank_app;
    ${privileges === 'append-only' ? `CREATE TRIGGER ${table}_append_only BEFORE UPDATE OR DELETE ON ${table} FOR EACH ROW EXECUTE FUNCTION refuse_change();` : ''}
  `;
}

/** Counts a row's edits for ETag / If-Match. */
export function versionedTable(table: string): string {
  return `CREATE TRIGGER ${table}_version BEFORE UPDATE ON ${table} FOR EACH ROW EXECUTE FUNCTION next_row_version();`;
}

/** Writes every change of the table to the audit log, with the row before and after. */
export function auditedTable(table: string): string {
  return `CREATE TRIGGER ${table}_audit AFTER INSERT OR UPDATE OR DELETE ON ${table} FOR EACH ROW EXECUTE FUNCTION audit_row();`;
}

/** All three, for an ordinary table of facts. */
export function factTable(table: string): string {
  return tenantTable(table) + versionedTable(table) + auditedTable(table);
}

/** A club number with what a club starts with, and the section of the handbook. */
export type StartingValue = [parameter: string, value: boolean | number | string, section: string];

/**
 * Gives clubs that are there already the numbers that came with a migration, where they have none. The owner is bound by
 * row-level security too: it may look which clubs there are, and then speaks for each in turn.
 */
export async function giveStartingValues(
  runner: QueryRunner,
  starting: readonly StartingValue[],
): Promise<void> {
  const values = JSON.stringify(
    starting.map(([id, value, section]) => ({
      ...{ id, value, reference: `Club handbook, section ${section}` },
    })),
  );
  await runner.query('ALTER TABLE clubs NO FORCE ROW LEVEL SECURITY');
  const clubs: { id: string }[] = await runner.query('SELECT club_id AS id FROM clubs ORDER BY club_id');
  await runner.query('ALTER TABLE clubs FORCE ROW LEVEL SECURITY');
  for (const { id } of clubs) {
    await runner.query("SELECT set_config('bellcrank.club_id', $1, true)", [id]);
    await runner.query(
      `INSERT INTO policy_values (club_id, id, parameter_id, valid_from, value, reference)
       SELECT $1, gen_random_uuid(), v.id, DATE '2000-01-01', v.value, v.reference
         FROM jsonb_to_recordset($2::jsonb) AS v (id text, value jsonb, reference text)
        WHERE NOT EXISTS (SELECT 1 FROM policy_values p WHERE p.club_id = $1 AND p.parameter_id = v.id)`,
      [id, values],
    );
  }
  await runner.query("SELECT set_config('bellcrank.club_id', '', true)");
}
