import type { MigrationInterface, QueryRunner } from 'typeorm';
import { tenantTable } from './support.js';

/** Tables of papers, and the column of a document that points at each. */
const PAPERS = {
  certificates: 'certificate_id',
  instructor_certificates: 'instructor_certificate_id',
  medicals: 'medical_id',
  basic_med: 'basic_med_id',
  reviews: 'review_id',
  endorsements: 'endorsement_id',
  ratings: 'rating_id',
};
const COLUMNS = Object.values(PAPERS);

const ACTIONS = (more: string): string => `
      ALTER TABLE audit_log DROP CONSTRAINT audit_log_action_chk,
        ADD CONSTRAINT audit_log_action_chk CHECK (action IN ('insert', 'update', 'delete', 'override', 'sign-in'${more}));`;

/** Scans of members' papers, with who read them; and members' data taken out and erased. */
export class Documents1764000000015 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      ${Object.keys(PAPERS)
        .map(
          (table) =>
            `ALTER TABLE ${table} ADD CONSTRAINT ${table}_of_member_uq UNIQUE (club_id, member_id, id);`,
        )
        .join('\n      ')}

      CREATE TABLE documents (
        club_id uuid NOT NULL, id uuid NOT NULL, member_id uuid NOT NULL,
        ${COLUMNS.map((column) => `${column} uuid`).join(', ')},
        paper_id uuid NOT NULL GENERATED ALWAYS AS (coalesce(${COLUMNS.join(', ')})) STORED,
        media_type text NOT NULL CONSTRAINT documents_media_chk CHECK (media_type IN ('image/jpeg', 'image/png', 'image/webp', 'application/pdf')),
        size_bytes integer NOT NULL CONSTRAINT documents_size_chk CHECK (size_bytes BETWEEN 1 AND 8388608),
        sha256 text NOT NULL,
        content bytea NOT NULL,
        added_by uuid NOT NULL,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        ${Object.entries(PAPERS)
          .map(
            ([table, column]) =>
              `CONSTRAINT documents_${table}_fk FOREIGN KEY (club_id, member_id, ${column}) REFERENCES ${table} (club_id, member_id, id) ON DELETE CASCADE,`,
          )
          .join('\n        ')}
        CONSTRAINT documents_added_fk FOREIGN KEY (club_id, added_by) REFERENCES members (club_id, id),
        CONSTRAINT documents_one_chk CHECK (num_nonnulls(${COLUMNS.join(', ')}) = 1),
        CONSTRAINT documents_once_uq UNIQUE (club_id, paper_id, sha256),
        CONSTRAINT documents_content_chk CHECK (octet_length(content) = size_bytes AND encode(sha256(content), 'hex') = sha256)
      );
      CREATE INDEX documents_member_ix ON documents (club_id, member_id, id);
      -- Kept outside the row, and not compressed again.
      ALTER TABLE documents ALTER COLUMN content SET STORAGE EXTERNAL;
      ${tenantTable('documents')}
      -- A document is added or deleted, never changed.
      REVOKE UPDATE ON documents FROM bellcrank_app;
      CREATE TRIGGER documents_unchanged BEFORE UPDATE ON documents FOR EACH ROW EXECUTE FUNCTION refuse_change();

      CREATE FUNCTION documents_few_enough() RETURNS trigger LANGUAGE plpgsql AS $$
        BEGIN
          -- Documents of one member queue here, so that two at once cannot both be the last.
          PERFORM 1 FROM members WHERE club_id = NEW.club_id AND id = NEW.member_id FOR NO KEY UPDATE;
          IF (SELECT count(*) FROM documents WHERE club_id = NEW.club_id
                AND paper_id = coalesce(${COLUMNS.map((column) => `NEW.${column}`).join(', ')})) >= 6 THEN
            RAISE EXCEPTION 'a paper holds six documents at most'
              USING ERRCODE = 'check_violation', CONSTRAINT = 'documents_count_chk', TABLE = 'documents';
          END IF;
          RETURN NEW;
        END $$;
      CREATE TRIGGER documents_count BEFORE INSERT ON documents FOR EACH ROW EXECUTE FUNCTION documents_few_enough();

      -- The audit log tells that a document came or went, without the document.
      CREATE FUNCTION audit_document() RETURNS trigger LANGUAGE plpgsql AS $$
        BEGIN
          IF TG_OP = 'INSERT' THEN
            INSERT INTO audit_log (club_id, actor_id, action, table_name, row_id, after)
            VALUES (NEW.club_id, bellcrank_actor(), 'insert', 'documents', NEW.id, to_jsonb(NEW) - 'content');
          ELSE
            INSERT INTO audit_log (club_id, actor_id, action, table_name, row_id, before)
            VALUES (OLD.club_id, bellcrank_actor(), 'delete', 'documents', OLD.id, to_jsonb(OLD) - 'content');
          END IF;
          RETURN NULL;
        END $$;
      CREATE TRIGGER documents_audit AFTER INSERT OR DELETE ON documents FOR EACH ROW EXECUTE FUNCTION audit_document();
      ${ACTIONS(`, 'read', 'export', 'erase'`).trim()}

      -- That a member's data was erased, by whom and why; once for each member.
      CREATE TABLE erasures (
        club_id uuid NOT NULL, id uuid NOT NULL, member_id uuid NOT NULL,
        erased_by uuid NOT NULL,
        reason text NOT NULL CONSTRAINT erasures_reason_chk CHECK (length(btrim(reason)) >= 5 AND length(reason) <= 500),
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT erasures_member_uq UNIQUE (club_id, member_id),
        CONSTRAINT erasures_member_fk FOREIGN KEY (club_id, member_id) REFERENCES members (club_id, id),
        CONSTRAINT erasures_by_fk FOREIGN KEY (club_id, erased_by) REFERENCES members (club_id, id),
        CONSTRAINT erasures_other_chk CHECK (erased_by <> member_id)
      );
      ${tenantTable('erasures', 'append-only')}

      -- What stays in the audit log of an erased member's rows: that something was done, by whom and when; not what it said.
      CREATE FUNCTION audit_bare(said jsonb) RETURNS jsonb LANGUAGE sql IMMUTABLE AS $$
        SELECT CASE WHEN said IS NOT NULL THEN (SELECT coalesce(jsonb_object_agg(key, value), '{}') FROM jsonb_each(said)
          WHERE key IN ('club_id', 'id', 'member_id', 'certificate_id', 'instructor_certificate_id', 'paper_id', 'aircraft_id',
                        'row_version', 'recorded_at', 'verified_by', 'verified_at', 'added_by', 'voided_at')) END $$;
      CREATE FUNCTION audit_log_kept() RETURNS trigger LANGUAGE plpgsql AS $$
        BEGIN
          -- Within the transaction that erases a member, and in no other way.
          IF TG_OP = 'UPDATE' AND to_jsonb(NEW) - 'before' - 'after' = to_jsonb(OLD) - 'before' - 'after'
             AND NEW.before IS NOT DISTINCT FROM audit_bare(OLD.before) AND NEW.after IS NOT DISTINCT FROM audit_bare(OLD.after)
             AND EXISTS (SELECT 1 FROM erasures e WHERE e.club_id = OLD.club_id AND e.recorded_at = transaction_timestamp()
                           AND e.member_id::text IN (OLD.before ->> 'member_id', OLD.after ->> 'member_id', OLD.row_id::text)) THEN
            RETURN NEW;
          END IF;
          RAISE EXCEPTION 'audit_log is append-only' USING ERRCODE = 'check_violation', CONSTRAINT = 'audit_log_append_only';
        END $$;
      DROP TRIGGER audit_log_append_only ON audit_log;
      CREATE TRIGGER audit_log_append_only BEFORE UPDATE OR DELETE ON audit_log FOR EACH ROW EXECUTE FUNCTION audit_log_kept();
      GRANT UPDATE (before, after) ON audit_log TO bellcrank_app;
    `);
  }

  /** Refused while somebody's reading, export or erasure is in the audit log, which the older schema cannot say. */
  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      REVOKE UPDATE (before, after) ON audit_log FROM bellcrank_app;
      DROP TRIGGER audit_log_append_only ON audit_log;
      CREATE TRIGGER audit_log_append_only BEFORE UPDATE OR DELETE ON audit_log FOR EACH ROW EXECUTE FUNCTION refuse_change();
      DROP FUNCTION audit_log_kept(); DROP FUNCTION audit_bare(jsonb);
      DROP TABLE erasures; DROP TABLE documents;
      DROP FUNCTION audit_document(); DROP FUNCTION documents_few_enough();
      ${ACTIONS('').trim()}
      ${Object.keys(PAPERS)
        .map((table) => `ALTER TABLE ${table} DROP CONSTRAINT ${table}_of_member_uq;`)
        .join('\n      ')}
    `);
  }
}
