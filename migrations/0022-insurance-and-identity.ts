import type { MigrationInterface, QueryRunner } from 'typeorm';
import { auditedTable, factTable, tenantTable } from './support.js';

const FIGURES = [
  ...['leastAgeYears', 'mostAgeYears', 'totalTenths', 'classTenths', 'retractableTenths', 'tailwheelTenths'],
  ...['modelTenths', 'recentTenths', 'recentDays', 'dualInModelTenths', 'reviewMonths'],
];
/** Every one is there, and null where it is not asked for. */
const ALL = ['leastLevel', 'instrumentRating', 'checkoutInModel', ...FIGURES]
  .map((name) => `'${name}'`)
  .join(', ');
const NO_FIGURE = FIGURES.map(
  (name) => `@.${name} <= 0 || (@.${name} != null && @.${name}.type() != "number")`,
).join(' || ');

/** On what terms aircraft are insured, as far as they are about pilots; and what officers have seen of who a member is. */
export class InsuranceAndIdentity1764000000022 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      CREATE TABLE insurance_terms (
        club_id uuid NOT NULL, id uuid NOT NULL, aircraft_id uuid NOT NULL,
        source text NOT NULL CONSTRAINT insurance_terms_source_chk CHECK (btrim(source) <> '' AND length(source) <= 200),
        valid_from date NOT NULL,
        valid_through date NOT NULL,
        -- What is asked of pilots who are not named, hours in tenths; null: nobody but those named is covered.
        minimums jsonb CONSTRAINT insurance_terms_minimums_chk CHECK (minimums IS NULL OR (jsonb_typeof(minimums) = 'object'
          AND minimums ?& ARRAY[${ALL}]
          AND ((minimums ->> 'recentTenths') IS NULL) = ((minimums ->> 'recentDays') IS NULL)
          AND NOT jsonb_path_exists(minimums, '$ ? (${NO_FIGURE} || @.recentDays > 730)'))),
        recorded_by uuid NOT NULL,
        ended_because text CONSTRAINT insurance_terms_because_chk CHECK (length(btrim(ended_because)) BETWEEN 5 AND 500),
        row_version integer NOT NULL DEFAULT 1,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        voided_at timestamptz,
        PRIMARY KEY (club_id, id),
        CONSTRAINT insurance_terms_aircraft_fk FOREIGN KEY (club_id, aircraft_id) REFERENCES aircraft (club_id, id),
        CONSTRAINT insurance_terms_recorder_fk FOREIGN KEY (club_id, recorded_by) REFERENCES members (club_id, id),
        CONSTRAINT insurance_terms_span_chk CHECK (valid_through >= valid_from),
        CONSTRAINT insurance_terms_void_chk CHECK (voided_at IS NULL OR ended_because IS NOT NULL),
        -- Of one day there is one set of terms.
        CONSTRAINT insurance_terms_once EXCLUDE USING gist
          (club_id WITH =, aircraft_id WITH =, daterange(valid_from, valid_through, '[]') WITH &&) WHERE (voided_at IS NULL)
      );
      ${factTable('insurance_terms')}

      -- Terms are ended earlier or taken back, and otherwise stay as they were entered.
      CREATE FUNCTION insurance_terms_kept() RETURNS trigger LANGUAGE plpgsql AS $$
        BEGIN
          IF TG_OP = 'UPDATE' AND OLD.voided_at IS NULL AND NEW.valid_through <= OLD.valid_through AND NEW.ended_because IS NOT NULL
             AND to_jsonb(NEW) - ARRAY['valid_through', 'ended_because', 'voided_at', 'row_version']
               = to_jsonb(OLD) - ARRAY['valid_through', 'ended_because', 'voided_at', 'row_version'] THEN
            RETURN NEW;
          END IF;
          RAISE EXCEPTION 'insurance terms are ended or taken back, never changed'
            USING ERRCODE = 'check_violation', CONSTRAINT = 'insurance_terms_kept_chk', TABLE = 'insurance_terms';
        END $$;
      CREATE TRIGGER insurance_terms_kept BEFORE UPDATE OR DELETE ON insurance_terms
        FOR EACH ROW EXECUTE FUNCTION insurance_terms_kept();

      CREATE TABLE insurance_named_pilots (
        club_id uuid NOT NULL, terms_id uuid NOT NULL, member_id uuid NOT NULL,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, terms_id, member_id),
        CONSTRAINT insurance_named_pilots_terms_fk FOREIGN KEY (club_id, terms_id) REFERENCES insurance_terms (club_id, id),
        CONSTRAINT insurance_named_pilots_member_fk FOREIGN KEY (club_id, member_id) REFERENCES members (club_id, id)
      );
      ${tenantTable('insurance_named_pilots', 'append-only')}

      -- That it was seen, when and by whom: never a number of a document, nor a copy.
      CREATE TABLE member_checks (
        club_id uuid NOT NULL, id uuid NOT NULL, member_id uuid NOT NULL,
        kind text NOT NULL CONSTRAINT member_checks_kind_chk CHECK (kind IN ('identity', 'citizenship', 'background')),
        seen_on date NOT NULL,
        expires_on date,
        seen_by uuid NOT NULL,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT member_checks_member_fk FOREIGN KEY (club_id, member_id) REFERENCES members (club_id, id),
        CONSTRAINT member_checks_seer_fk FOREIGN KEY (club_id, seen_by) REFERENCES members (club_id, id),
        CONSTRAINT member_checks_own_chk CHECK (seen_by <> member_id),
        CONSTRAINT member_checks_span_chk CHECK (expires_on >= seen_on)
      );
      CREATE INDEX member_checks_member_ix ON member_checks (club_id, member_id, id);
      ${tenantTable('member_checks', 'append-only')}
      ${auditedTable('member_checks')}

      CREATE TABLE member_check_voids (
        club_id uuid NOT NULL, check_id uuid NOT NULL,
        voided_by uuid NOT NULL,
        reason text NOT NULL CONSTRAINT member_check_voids_reason_chk CHECK (length(btrim(reason)) BETWEEN 5 AND 500),
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, check_id),
        CONSTRAINT member_check_voids_check_fk FOREIGN KEY (club_id, check_id) REFERENCES member_checks (club_id, id),
        CONSTRAINT member_check_voids_by_fk FOREIGN KEY (club_id, voided_by) REFERENCES members (club_id, id)
      );
      ${tenantTable('member_check_voids', 'append-only')}
    `);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      DROP TABLE member_check_voids; DROP TABLE member_checks;
      DROP TABLE insurance_named_pilots; DROP TABLE insurance_terms;
      DROP FUNCTION insurance_terms_kept();
    `);
  }
}
