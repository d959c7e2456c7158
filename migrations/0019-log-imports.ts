import type { MigrationInterface, QueryRunner } from 'typeorm';
import { auditedTable, tenantTable } from './support.js';

/** Flights taken over from files: what was imported when by whom, and entries of which only the day is known. */
export class LogImports1764000000019 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      CREATE TABLE log_imports (
        club_id uuid NOT NULL, id uuid NOT NULL, member_id uuid NOT NULL,
        imported_by uuid NOT NULL,
        file_sha256 text NOT NULL CONSTRAINT log_imports_file_chk CHECK (file_sha256 ~ '^[0-9a-f]{64}$'),
        -- Of the file's headings: the choices are offered again for a file with the same ones.
        headings_sha256 text NOT NULL CONSTRAINT log_imports_headings_chk CHECK (headings_sha256 ~ '^[0-9a-f]{64}$'),
        -- How the file was read: which column is what, how dates, hours and times are written.
        choices jsonb NOT NULL CONSTRAINT log_imports_choices_chk CHECK (jsonb_typeof(choices) = 'object'),
        file_rows integer NOT NULL CONSTRAINT log_imports_rows_chk CHECK (file_rows BETWEEN 1 AND 20000),
        entries integer NOT NULL CONSTRAINT log_imports_entries_chk CHECK (entries > 0),
        unreadable_rows integer NOT NULL CONSTRAINT log_imports_unreadable_chk CHECK (unreadable_rows >= 0),
        repeated_rows integer NOT NULL CONSTRAINT log_imports_repeated_chk CHECK (repeated_rows >= 0),
        first_flown_on date NOT NULL,
        last_flown_on date NOT NULL,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        taken_back_at timestamptz,
        taken_back_by uuid,
        PRIMARY KEY (club_id, id),
        CONSTRAINT log_imports_owner_uq UNIQUE (club_id, member_id, id),
        CONSTRAINT log_imports_member_fk FOREIGN KEY (club_id, member_id) REFERENCES members (club_id, id),
        CONSTRAINT log_imports_by_fk FOREIGN KEY (club_id, imported_by) REFERENCES members (club_id, id),
        CONSTRAINT log_imports_back_fk FOREIGN KEY (club_id, taken_back_by) REFERENCES members (club_id, id),
        CONSTRAINT log_imports_counts_chk CHECK (entries + unreadable_rows + repeated_rows <= file_rows),
        CONSTRAINT log_imports_span_chk CHECK (last_flown_on >= first_flown_on),
        CONSTRAINT log_imports_back_chk CHECK ((taken_back_at IS NULL) = (taken_back_by IS NULL))
      );
      CREATE INDEX log_imports_member_ix ON log_imports (club_id, member_id, id DESC);
      ${tenantTable('log_imports', 'append-only')}
      ${auditedTable('log_imports')}

      -- What was imported stays as it is; it is taken back once.
      CREATE FUNCTION log_imports_kept() RETURNS trigger LANGUAGE plpgsql AS $$
        BEGIN
          IF TG_OP = 'UPDATE' AND OLD.taken_back_at IS NULL AND NEW.taken_back_at IS NOT NULL
             AND to_jsonb(NEW) - 'taken_back_at' - 'taken_back_by' = to_jsonb(OLD) - 'taken_back_at' - 'taken_back_by' THEN
            RETURN NEW;
          END IF;
          RAISE EXCEPTION 'an import of a log is taken back once and not changed otherwise'
            USING ERRCODE = 'check_violation', CONSTRAINT = 'log_imports_append_only', TABLE = 'log_imports';
        END $$;
      DROP TRIGGER log_imports_append_only ON log_imports;
      CREATE TRIGGER log_imports_append_only BEFORE UPDATE OR DELETE ON log_imports
        FOR EACH ROW EXECUTE FUNCTION log_imports_kept();
      GRANT UPDATE (taken_back_at, taken_back_by) ON log_imports TO bellcrank_app;

      ALTER TABLE log_entries
        ADD COLUMN import_id uuid,
        -- False: only the day is known. Then the times are the latest the day allows, so that the flight counts no earlier than it may have been.
        ADD COLUMN times_known boolean NOT NULL DEFAULT true,
        ADD CONSTRAINT log_entries_import_fk FOREIGN KEY (club_id, member_id, import_id)
          REFERENCES log_imports (club_id, member_id, id),
        ADD CONSTRAINT log_entries_times_chk CHECK (times_known OR import_id IS NOT NULL);
      CREATE INDEX log_entries_import_ix ON log_entries (club_id, import_id) WHERE import_id IS NOT NULL;
    `);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      ALTER TABLE log_entries DROP COLUMN times_known, DROP COLUMN import_id;
      DROP TABLE log_imports;
      DROP FUNCTION log_imports_kept();
    `);
  }
}
