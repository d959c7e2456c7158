import type { MigrationInterface, QueryRunner } from 'typeorm';
import { factTable, tenantTable } from './support.js';

/** Rules that clubs write themselves, version by version, and the dry runs behind putting them in force. */
export class ClubRules1764000000006 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      -- One row a version. A draft may be edited; once in force its text stays, and a change is the next version.
      CREATE TABLE club_rules (
        club_id uuid NOT NULL REFERENCES clubs (club_id),
        id uuid NOT NULL,
        code text NOT NULL CONSTRAINT club_rules_code_chk
          CHECK (code ~ '^club\\.own\\.[a-z0-9]+(-[a-z0-9]+)*$' AND length(code) <= 80),
        version integer NOT NULL CONSTRAINT club_rules_version_chk CHECK (version >= 1),
        title text NOT NULL CONSTRAINT club_rules_title_chk CHECK (btrim(title) <> ''),
        weight text NOT NULL CONSTRAINT club_rules_weight_chk CHECK (weight IN ('club', 'advice')),
        applies_when text NOT NULL CONSTRAINT club_rules_applies_chk CHECK (btrim(applies_when) <> '' AND length(applies_when) <= 2000),
        requirement text NOT NULL CONSTRAINT club_rules_requirement_chk CHECK (btrim(requirement) <> '' AND length(requirement) <= 2000),
        message text NOT NULL CONSTRAINT club_rules_message_chk CHECK (btrim(message) <> '' AND length(message) <= 500),
        condition text CONSTRAINT club_rules_condition_chk CHECK (btrim(condition) <> '' AND length(condition) <= 300),
        document text NOT NULL CONSTRAINT club_rules_document_chk CHECK (btrim(document) <> ''),
        state text NOT NULL DEFAULT 'draft' CONSTRAINT club_rules_state_chk CHECK (state IN ('draft', 'active', 'ended')),
        -- First day in force, and first day no longer.
        in_force_from date,
        in_force_to date,
        created_by uuid NOT NULL,
        activated_by uuid,
        activated_at timestamptz,
        ended_by uuid,
        ended_at timestamptz,
        row_version integer NOT NULL DEFAULT 1,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT club_rules_version_uq UNIQUE (club_id, code, version),
        CONSTRAINT club_rules_created_fk FOREIGN KEY (club_id, created_by) REFERENCES members (club_id, id),
        CONSTRAINT club_rules_activated_fk FOREIGN KEY (club_id, activated_by) REFERENCES members (club_id, id),
        CONSTRAINT club_rules_ended_fk FOREIGN KEY (club_id, ended_by) REFERENCES members (club_id, id),
        CONSTRAINT club_rules_dates_chk CHECK (CASE state
          WHEN 'draft' THEN num_nonnulls(in_force_from, in_force_to, activated_by, activated_at, ended_by, ended_at) = 0
          WHEN 'active' THEN num_nonnulls(in_force_from, activated_by, activated_at) = 3
            AND num_nonnulls(in_force_to, ended_by, ended_at) = 0
          ELSE num_nonnulls(in_force_from, in_force_to, activated_by, activated_at, ended_by, ended_at) = 6
            AND in_force_to >= in_force_from END),
        -- Decisions name a rule by its code, and officers' overrides hang on its weight: one weight for all versions.
        CONSTRAINT club_rules_one_weight_excl EXCLUDE USING gist (club_id WITH =, code WITH =, weight WITH <>),
        CONSTRAINT club_rules_in_force_excl EXCLUDE USING gist
          (club_id WITH =, code WITH =, daterange(in_force_from, in_force_to, '[)') WITH &&) WHERE (state <> 'draft')
      );
      CREATE UNIQUE INDEX club_rules_draft_uq ON club_rules (club_id, code) WHERE state = 'draft';

      CREATE FUNCTION keep_club_rule() RETURNS trigger LANGUAGE plpgsql AS $$
        DECLARE
          may_change text[] := ARRAY['state', 'in_force_to', 'ended_by', 'ended_at', 'row_version'];
        BEGIN
          IF OLD.state <> 'draft' THEN
            IF TG_OP = 'DELETE' OR NEW.state = 'draft' OR to_jsonb(NEW) - may_change <> to_jsonb(OLD) - may_change THEN
              RAISE EXCEPTION 'a version of a rule that was put in force stays as it is'
                USING ERRCODE = 'check_violation', CONSTRAINT = 'club_rules_kept', TABLE = 'club_rules';
            END IF;
          END IF;
          RETURN CASE TG_OP WHEN 'DELETE' THEN OLD ELSE NEW END;
        END $$;
      CREATE TRIGGER club_rules_kept BEFORE UPDATE OR DELETE ON club_rules FOR EACH ROW EXECUTE FUNCTION keep_club_rule();
      ${factTable('club_rules')}

      -- What a draft would have changed; one is needed, of the draft as it is, to put it in force.
      CREATE TABLE club_rule_dry_runs (
        club_id uuid NOT NULL,
        id uuid NOT NULL,
        rule_id uuid NOT NULL,
        -- The draft's row_version when it was tried.
        draft_version integer NOT NULL,
        run_by uuid NOT NULL,
        looked_at integer NOT NULL,
        changed integer NOT NULL CONSTRAINT club_rule_dry_runs_changed_chk CHECK (changed BETWEEN 0 AND looked_at),
        result jsonb NOT NULL,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT club_rule_dry_runs_rule_fk FOREIGN KEY (club_id, rule_id) REFERENCES club_rules (club_id, id) ON DELETE CASCADE,
        CONSTRAINT club_rule_dry_runs_member_fk FOREIGN KEY (club_id, run_by) REFERENCES members (club_id, id)
      );
      CREATE INDEX club_rule_dry_runs_rule_ix ON club_rule_dry_runs (club_id, rule_id, draft_version);
      ${tenantTable('club_rule_dry_runs')}
      REVOKE UPDATE, DELETE ON club_rule_dry_runs FROM bellcrank_app;

      -- A dry run looks at the decisions of the last twelve months, newest first.
      CREATE INDEX decisions_known_ix ON decisions (club_id, known_at DESC, id);
    `);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      DROP INDEX decisions_known_ix; DROP TABLE club_rule_dry_runs; DROP TABLE club_rules; DROP FUNCTION keep_club_rule();
    `);
  }
}
