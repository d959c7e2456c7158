import type { MigrationInterface, QueryRunner } from 'typeorm';
import { auditedTable, factTable, tenantTable } from './support.js';

const PAPER = `
        row_version integer NOT NULL DEFAULT 1,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        verified_by uuid,
        verified_at timestamptz,
        PRIMARY KEY (club_id, id)`;

const ofMember = (table: string): string =>
  `CONSTRAINT ${table}_member_fk FOREIGN KEY (club_id, member_id) REFERENCES members (club_id, id)`;

const verified = (table: string): string =>
  `CONSTRAINT ${table}_verified_fk FOREIGN KEY (club_id, verified_by) REFERENCES members (club_id, id),
   CONSTRAINT ${table}_verified_chk CHECK ((verified_by IS NULL) = (verified_at IS NULL))`;

/** Members, accounts, and the papers that say what a member may do. Nothing medical beyond class, dates and limitation text. */
export class Members1764000000002 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      CREATE TABLE members (
        club_id uuid NOT NULL REFERENCES clubs (club_id),
        id uuid NOT NULL,
        name text NOT NULL CONSTRAINT members_name_chk CHECK (btrim(name) <> '' AND length(name) <= 120),
        email text NOT NULL CONSTRAINT members_email_chk CHECK (email = lower(email) AND email LIKE '%_@_%'),
        birth_date date,
        standing text NOT NULL DEFAULT 'good' CONSTRAINT members_standing_chk CHECK (standing IN ('good', 'arrears', 'suspended')),
        standing_since date NOT NULL,
        membership_from date NOT NULL,
        membership_through date,
        row_version integer NOT NULL DEFAULT 1,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT members_email_uq UNIQUE (club_id, email),
        CONSTRAINT members_membership_chk CHECK (membership_through IS NULL OR membership_through >= membership_from)
      );
      ${factTable('members')}

      CREATE TABLE member_roles (
        club_id uuid NOT NULL,
        member_id uuid NOT NULL,
        role text NOT NULL CONSTRAINT member_roles_role_chk
          CHECK (role IN ('member', 'instructor', 'safety-officer', 'maintenance-coordinator', 'administrator')),
        PRIMARY KEY (club_id, member_id, role),
        CONSTRAINT member_roles_member_fk FOREIGN KEY (club_id, member_id) REFERENCES members (club_id, id) ON DELETE CASCADE
      );
      ${tenantTable('member_roles')}
      ${auditedTable('member_roles')}

      CREATE TABLE accounts (
        club_id uuid NOT NULL,
        id uuid NOT NULL,
        member_id uuid NOT NULL,
        email text NOT NULL CONSTRAINT accounts_email_chk CHECK (email = lower(email)),
        password_hash text NOT NULL CONSTRAINT accounts_hash_chk CHECK (password_hash LIKE '$argon2id$%'),
        failed_attempts integer NOT NULL DEFAULT 0 CONSTRAINT accounts_failed_chk CHECK (failed_attempts >= 0),
        locked_until timestamptz,
        row_version integer NOT NULL DEFAULT 1,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT accounts_member_fk FOREIGN KEY (club_id, member_id) REFERENCES members (club_id, id),
        CONSTRAINT accounts_member_uq UNIQUE (club_id, member_id),
        CONSTRAINT accounts_email_uq UNIQUE (club_id, email)
      );
      ${tenantTable('accounts')}
      CREATE TRIGGER accounts_version BEFORE UPDATE ON accounts FOR EACH ROW EXECUTE FUNCTION next_row_version();

      -- One row per refresh token; a family is one sign-in. A token used twice revokes its family.
      CREATE TABLE refresh_tokens (
        club_id uuid NOT NULL,
        id uuid NOT NULL,
        account_id uuid NOT NULL,
        family_id uuid NOT NULL,
        token_hash text NOT NULL CONSTRAINT refresh_tokens_hash_chk CHECK (token_hash ~ '^[0-9a-f]{64}$'),
        issued_at timestamptz NOT NULL,
        expires_at timestamptz NOT NULL,
        used_at timestamptz,
        revoked_at timestamptz,
        PRIMARY KEY (club_id, id),
        CONSTRAINT refresh_tokens_account_fk FOREIGN KEY (club_id, account_id) REFERENCES accounts (club_id, id) ON DELETE CASCADE,
        CONSTRAINT refresh_tokens_hash_uq UNIQUE (club_id, token_hash),
        CONSTRAINT refresh_tokens_span_chk CHECK (expires_at > issued_at)
      );
      CREATE INDEX refresh_tokens_family_ix ON refresh_tokens (club_id, family_id);
      ${tenantTable('refresh_tokens')}

      CREATE TABLE certificates (
        club_id uuid NOT NULL, id uuid NOT NULL, member_id uuid NOT NULL,
        level text NOT NULL CONSTRAINT certificates_level_chk
          CHECK (level IN ('student', 'sport', 'recreational', 'private', 'commercial', 'atp')),
        issued_on date NOT NULL,
        valid_through date,
        limitations text[] NOT NULL DEFAULT '{}',
        CONSTRAINT certificates_span_chk CHECK (valid_through IS NULL OR valid_through >= issued_on),
        ${ofMember('certificates')}, ${verified('certificates')},
        ${PAPER}
      );
      CREATE INDEX certificates_member_ix ON certificates (club_id, member_id);
      ${factTable('certificates')}

      CREATE TABLE certificate_ratings (
        club_id uuid NOT NULL, id uuid NOT NULL, certificate_id uuid NOT NULL,
        kind text NOT NULL CONSTRAINT certificate_ratings_kind_chk CHECK (kind IN ('category-class', 'instrument', 'type')),
        category text,
        class text,
        type_designator text,
        PRIMARY KEY (club_id, id),
        CONSTRAINT certificate_ratings_certificate_fk FOREIGN KEY (club_id, certificate_id) REFERENCES certificates (club_id, id) ON DELETE CASCADE,
        CONSTRAINT certificate_ratings_shape_chk CHECK (CASE kind
          WHEN 'category-class' THEN category IS NOT NULL AND class IS NOT NULL AND type_designator IS NULL
          WHEN 'instrument' THEN category IS NOT NULL AND class IS NULL AND type_designator IS NULL
          ELSE type_designator IS NOT NULL AND category IS NULL AND class IS NULL END)
      );
      CREATE UNIQUE INDEX certificate_ratings_uq ON certificate_ratings
        (club_id, certificate_id, kind, coalesce(category, ''), coalesce(class, ''), coalesce(type_designator, ''));
      ${tenantTable('certificate_ratings')}
      ${auditedTable('certificate_ratings')}

      CREATE TABLE instructor_certificates (
        club_id uuid NOT NULL, id uuid NOT NULL, member_id uuid NOT NULL,
        issued_on date NOT NULL,
        ratings text[] NOT NULL CONSTRAINT instructor_certificates_ratings_chk CHECK (ratings <@ ARRAY[
          'airplane-single-engine', 'airplane-multiengine', 'instrument-airplane', 'rotorcraft-helicopter', 'glider']),
        recent_experience_on date,
        printed_end_on date,
        ${ofMember('instructor_certificates')}, ${verified('instructor_certificates')},
        ${PAPER}
      );
      CREATE INDEX instructor_certificates_member_ix ON instructor_certificates (club_id, member_id);
      ${factTable('instructor_certificates')}

      CREATE TABLE suspensions (
        club_id uuid NOT NULL, id uuid NOT NULL,
        certificate_id uuid,
        instructor_certificate_id uuid,
        suspended_from date NOT NULL,
        suspended_to date,
        row_version integer NOT NULL DEFAULT 1,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT suspensions_certificate_fk FOREIGN KEY (club_id, certificate_id) REFERENCES certificates (club_id, id) ON DELETE CASCADE,
        CONSTRAINT suspensions_instructor_fk FOREIGN KEY (club_id, instructor_certificate_id) REFERENCES instructor_certificates (club_id, id) ON DELETE CASCADE,
        CONSTRAINT suspensions_one_chk CHECK (num_nonnulls(certificate_id, instructor_certificate_id) = 1),
        CONSTRAINT suspensions_span_chk CHECK (suspended_to IS NULL OR suspended_to >= suspended_from)
      );
      ${factTable('suspensions')}

      CREATE TABLE medicals (
        club_id uuid NOT NULL, id uuid NOT NULL, member_id uuid NOT NULL,
        class smallint NOT NULL CONSTRAINT medicals_class_chk CHECK (class IN (1, 2, 3)),
        exam_on date NOT NULL,
        limitations text[] NOT NULL DEFAULT '{}',
        withdrawn_on date,
        ${ofMember('medicals')}, ${verified('medicals')},
        ${PAPER}
      );
      CREATE INDEX medicals_member_ix ON medicals (club_id, member_id);
      ${factTable('medicals')}

      CREATE TABLE basic_med (
        club_id uuid NOT NULL, id uuid NOT NULL, member_id uuid NOT NULL,
        exam_on date,
        course_on date,
        licence_valid_through date,
        held_medical_after_2006_07_14 boolean,
        last_application_denied boolean,
        last_certificate_revoked_or_suspended boolean,
        ${ofMember('basic_med')}, ${verified('basic_med')},
        ${PAPER}
      );
      CREATE INDEX basic_med_member_ix ON basic_med (club_id, member_id);
      ${factTable('basic_med')}

      CREATE TABLE reviews (
        club_id uuid NOT NULL, id uuid NOT NULL, member_id uuid NOT NULL,
        kind text NOT NULL CONSTRAINT reviews_kind_chk CHECK (kind IN ('flight-review', 'practical-test', 'proficiency-check',
          'instrument-proficiency-check', 'faa-proficiency-phase', 'instructor-practical-test', 'instructor-renewal')),
        reviewed_on date NOT NULL,
        ground_tenths integer CONSTRAINT reviews_ground_chk CHECK (ground_tenths >= 0),
        flight_tenths integer CONSTRAINT reviews_flight_chk CHECK (flight_tenths >= 0),
        category text,
        endorsed_as_review boolean NOT NULL DEFAULT false,
        ${ofMember('reviews')}, ${verified('reviews')},
        ${PAPER}
      );
      CREATE INDEX reviews_member_ix ON reviews (club_id, member_id);
      ${factTable('reviews')}

      CREATE TABLE endorsements (
        club_id uuid NOT NULL, id uuid NOT NULL, member_id uuid NOT NULL,
        kind text NOT NULL CONSTRAINT endorsements_kind_chk CHECK (kind IN ('solo', 'solo-night', 'solo-cross-country-training',
          'solo-cross-country-flight', 'solo-other-airport-25nm', 'solo-repeated-route-50nm', 'complex', 'high-performance',
          'high-altitude', 'tailwheel', 'recreational-50nm', 'recreational-cross-country', 'recreational-airspace', 'recreational-refresher', 'sport-night', 'sport-airspace',
          'sport-controllable-propeller', 'sport-retractable-gear', 'grandfather-complex', 'grandfather-high-performance',
          'grandfather-high-altitude', 'grandfather-tailwheel')),
        endorsed_on date NOT NULL,
        make_model text,
        airfields text[] NOT NULL DEFAULT '{}',
        expires_on date,
        given_by uuid,
        CONSTRAINT endorsements_given_fk FOREIGN KEY (club_id, given_by) REFERENCES members (club_id, id),
        CONSTRAINT endorsements_span_chk CHECK (expires_on IS NULL OR expires_on >= endorsed_on),
        ${ofMember('endorsements')}, ${verified('endorsements')},
        ${PAPER}
      );
      CREATE INDEX endorsements_member_ix ON endorsements (club_id, member_id);
      ${factTable('endorsements')}
    `);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      DROP TABLE endorsements; DROP TABLE reviews; DROP TABLE basic_med; DROP TABLE medicals; DROP TABLE suspensions;
      DROP TABLE instructor_certificates; DROP TABLE certificate_ratings; DROP TABLE certificates;
      DROP TABLE refresh_tokens; DROP TABLE accounts; DROP TABLE member_roles; DROP TABLE members;
    `);
  }
}
