import type { MigrationInterface, QueryRunner } from 'typeorm';
import { factTable, tenantTable } from './support.js';

/** Hazard and occurrence reports with what is done about them, and reviews of overrides. */
export class ReportsAndReviews1764000000017 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      CREATE TABLE safety_reports (
        club_id uuid NOT NULL REFERENCES clubs (club_id), id uuid NOT NULL,
        kind text NOT NULL CONSTRAINT safety_reports_kind_chk CHECK (kind IN ('hazard', 'occurrence')),
        happened_on date NOT NULL,
        aircraft_id uuid,
        place text CONSTRAINT safety_reports_place_chk CHECK (btrim(place) <> '' AND length(place) <= 200),
        title text NOT NULL CONSTRAINT safety_reports_title_chk CHECK (btrim(title) <> '' AND length(title) <= 200),
        narrative text NOT NULL CONSTRAINT safety_reports_narrative_chk
          CHECK (btrim(narrative) <> '' AND length(narrative) <= 8000),
        confidential boolean NOT NULL,
        -- Of a confidential report nobody's name is kept, not even in the audit log.
        reporter_id uuid,
        -- SHA-256 of the receipt by which whoever reported in confidence reads what came of it.
        receipt_digest text CONSTRAINT safety_reports_receipt_chk CHECK (receipt_digest ~ '^[0-9a-f]{64}$'),
        state text NOT NULL DEFAULT 'open' CONSTRAINT safety_reports_state_chk CHECK (state IN ('open', 'closed')),
        finding text CONSTRAINT safety_reports_finding_chk CHECK (length(btrim(finding)) >= 10 AND length(finding) <= 4000),
        closed_at timestamptz,
        closed_by uuid,
        row_version integer NOT NULL DEFAULT 1,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT safety_reports_aircraft_fk FOREIGN KEY (club_id, aircraft_id) REFERENCES aircraft (club_id, id),
        CONSTRAINT safety_reports_reporter_fk FOREIGN KEY (club_id, reporter_id) REFERENCES members (club_id, id),
        CONSTRAINT safety_reports_closer_fk FOREIGN KEY (club_id, closed_by) REFERENCES members (club_id, id),
        CONSTRAINT safety_reports_receipt_uq UNIQUE (club_id, receipt_digest),
        CONSTRAINT safety_reports_named_chk CHECK (confidential = (reporter_id IS NULL) AND confidential = (receipt_digest IS NOT NULL)),
        CONSTRAINT safety_reports_closed_chk CHECK (CASE WHEN state = 'closed'
          THEN num_nonnulls(finding, closed_at, closed_by) = 3 ELSE num_nonnulls(finding, closed_at, closed_by) = 0 END)
      );
      CREATE INDEX safety_reports_reporter_ix ON safety_reports (club_id, reporter_id, id) WHERE reporter_id IS NOT NULL;
      ${factTable('safety_reports')}

      CREATE TABLE safety_steps (
        club_id uuid NOT NULL, id uuid NOT NULL, report_id uuid NOT NULL,
        what text NOT NULL CONSTRAINT safety_steps_what_chk CHECK (btrim(what) <> '' AND length(what) <= 1000),
        responsible_id uuid NOT NULL,
        due_on date NOT NULL,
        done_on date,
        outcome text CONSTRAINT safety_steps_outcome_chk CHECK (btrim(outcome) <> '' AND length(outcome) <= 2000),
        row_version integer NOT NULL DEFAULT 1,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT safety_steps_report_fk FOREIGN KEY (club_id, report_id) REFERENCES safety_reports (club_id, id),
        CONSTRAINT safety_steps_responsible_fk FOREIGN KEY (club_id, responsible_id) REFERENCES members (club_id, id),
        CONSTRAINT safety_steps_done_chk CHECK ((done_on IS NULL) = (outcome IS NULL))
      );
      CREATE INDEX safety_steps_report_ix ON safety_steps (club_id, report_id, id);
      ${factTable('safety_steps')}

      -- What was reported stays as it was told, and confidential stays confidential.
      CREATE FUNCTION safety_report_stands() RETURNS trigger LANGUAGE plpgsql AS $$
        BEGIN
          IF (NEW.kind, NEW.happened_on, NEW.title, NEW.narrative, NEW.confidential) IS DISTINCT FROM
             (OLD.kind, OLD.happened_on, OLD.title, OLD.narrative, OLD.confidential)
             OR NEW.aircraft_id IS DISTINCT FROM OLD.aircraft_id OR NEW.place IS DISTINCT FROM OLD.place
             OR NEW.reporter_id IS DISTINCT FROM OLD.reporter_id OR NEW.receipt_digest IS DISTINCT FROM OLD.receipt_digest THEN
            RAISE EXCEPTION 'a report stays as it was told'
              USING ERRCODE = 'check_violation', CONSTRAINT = 'safety_reports_kept_chk', TABLE = 'safety_reports';
          END IF;
          IF NEW.state = 'closed' AND EXISTS (SELECT 1 FROM safety_steps s
               WHERE s.club_id = NEW.club_id AND s.report_id = NEW.id AND s.done_on IS NULL) THEN
            RAISE EXCEPTION 'a report is closed once every step is done'
              USING ERRCODE = 'check_violation', CONSTRAINT = 'safety_reports_steps_chk', TABLE = 'safety_reports';
          END IF;
          RETURN NEW;
        END $$;
      CREATE TRIGGER safety_reports_stand BEFORE UPDATE ON safety_reports
        FOR EACH ROW EXECUTE FUNCTION safety_report_stands();

      CREATE FUNCTION safety_step_of_open_report() RETURNS trigger LANGUAGE plpgsql AS $$
        DECLARE
          report safety_reports;
        BEGIN
          -- Waits for whoever is closing the report.
          SELECT * INTO report FROM safety_reports WHERE club_id = NEW.club_id AND id = NEW.report_id FOR NO KEY UPDATE;
          IF FOUND AND report.state = 'closed' THEN
            RAISE EXCEPTION 'a closed report takes no steps'
              USING ERRCODE = 'check_violation', CONSTRAINT = 'safety_steps_open_chk', TABLE = 'safety_steps';
          END IF;
          RETURN NEW;
        END $$;
      CREATE TRIGGER safety_steps_open BEFORE INSERT OR UPDATE ON safety_steps
        FOR EACH ROW EXECUTE FUNCTION safety_step_of_open_report();

      -- Beside the overrides, whose rows are sealed whole into the chain of decisions and never change.
      CREATE TABLE override_reviews (
        club_id uuid NOT NULL, id uuid NOT NULL, override_id uuid NOT NULL,
        -- When it is looked at next; null: not again.
        review_on date,
        finding text CONSTRAINT override_reviews_finding_chk CHECK (length(btrim(finding)) >= 5 AND length(finding) <= 2000),
        reviewed_by uuid NOT NULL,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT override_reviews_override_fk FOREIGN KEY (club_id, override_id) REFERENCES overrides (club_id, id),
        CONSTRAINT override_reviews_member_fk FOREIGN KEY (club_id, reviewed_by) REFERENCES members (club_id, id),
        CONSTRAINT override_reviews_says_chk CHECK (review_on IS NOT NULL OR finding IS NOT NULL)
      );
      CREATE INDEX override_reviews_override_ix ON override_reviews (club_id, override_id, id);
      ${tenantTable('override_reviews', 'append-only')}
      CREATE TRIGGER override_reviews_audit AFTER INSERT ON override_reviews FOR EACH ROW EXECUTE FUNCTION audit_row();
    `);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      DROP TABLE override_reviews; DROP TABLE safety_steps; DROP FUNCTION safety_step_of_open_report();
      DROP TABLE safety_reports; DROP FUNCTION safety_report_stands();
    `);
  }
}
