/**
 * SQL shared by the migrations. Its output is part of every landed migration: never change what it returns, add a new
 * function instead.
 */

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
