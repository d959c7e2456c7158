import type { MigrationInterface, QueryRunner } from 'typeorm';
import { factTable, tenantTable } from './support.js';

/** Clubs, the tenancy functions, the audit log, airfields and dated policy. */
export class Clubs1764000000001 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      CREATE EXTENSION IF NOT EXISTS btree_gist;

      -- The club of the running transaction; null outside one, and then no row of any table is visible.
      CREATE FUNCTION bellcrank_club() RETURNS uuid LANGUAGE sql STABLE PARALLEL SAFE AS
        $$ SELECT nullif(current_setting('bellcrank.club_id', true), '')::uuid $$;

      CREATE FUNCTION bellcrank_actor() RETURNS uuid LANGUAGE sql STABLE PARALLEL SAFE AS
        $$ SELECT nullif(current_setting('bellcrank.actor_id', true), '')::uuid $$;

      CREATE FUNCTION next_row_version() RETURNS trigger LANGUAGE plpgsql AS
        $$ BEGIN NEW.row_version := OLD.row_version + 1; RETURN NEW; END $$;

      CREATE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$
        BEGIN
          RAISE EXCEPTION '% is append-only', TG_TABLE_NAME
            USING ERRCODE = 'check_violation', CONSTRAINT = TG_TABLE_NAME || '_append_only';
        END $$;

      CREATE TABLE clubs (
        club_id uuid PRIMARY KEY,
        slug text NOT NULL CONSTRAINT clubs_slug_uq UNIQUE
          CONSTRAINT clubs_slug_chk CHECK (slug ~ '^[a-z0-9]+(-[a-z0-9]+)*$' AND length(slug) <= 60),
        name text NOT NULL CONSTRAINT clubs_name_chk CHECK (btrim(name) <> ''),
        zone text NOT NULL,
        jurisdiction text NOT NULL CONSTRAINT clubs_jurisdiction_chk CHECK (jurisdiction IN ('US', 'EU', 'CA')),
        row_version integer NOT NULL DEFAULT 1,
        recorded_at timestamptz NOT NULL DEFAULT now()
      );
      ALTER TABLE clubs ENABLE ROW LEVEL SECURITY;
      ALTER TABLE clubs FORCE ROW LEVEL SECURITY;
      -- At sign-in the club is not known yet: its slug, set for the transaction, opens that one row for reading.
      CREATE POLICY clubs_club ON clubs USING (club_id = bellcrank_club()) WITH CHECK (club_id = bellcrank_club());
      CREATE POLICY clubs_sign_in ON clubs FOR SELECT
        USING (slug = nullif(current_setting('bellcrank.club_slug', true), ''));
      GRANT SELECT, UPDATE ON clubs TO bellcrank_app;
      CREATE TRIGGER clubs_version BEFORE UPDATE ON clubs FOR EACH ROW EXECUTE FUNCTION next_row_version();

      CREATE TABLE audit_log (
        club_id uuid NOT NULL REFERENCES clubs (club_id),
        id bigint GENERATED ALWAYS AS IDENTITY,
        at timestamptz NOT NULL DEFAULT clock_timestamp(),
        actor_id uuid,
        action text NOT NULL CONSTRAINT audit_log_action_chk CHECK (action IN ('insert', 'update', 'delete', 'override', 'sign-in')),
        table_name text NOT NULL,
        row_id uuid,
        before jsonb,
        after jsonb,
        PRIMARY KEY (club_id, id)
      );
      CREATE INDEX audit_log_row_ix ON audit_log (club_id, table_name, row_id);
      ${tenantTable('audit_log', 'append-only')}

      CREATE FUNCTION audit_row() RETURNS trigger LANGUAGE plpgsql AS $$
        DECLARE
          old_row jsonb := CASE WHEN TG_OP <> 'INSERT' THEN to_jsonb(OLD) END;
          new_row jsonb := CASE WHEN TG_OP <> 'DELETE' THEN to_jsonb(NEW) END;
          whole jsonb := coalesce(new_row, old_row);
        BEGIN
          INSERT INTO audit_log (club_id, actor_id, action, table_name, row_id, before, after)
          VALUES ((whole ->> 'club_id')::uuid, bellcrank_actor(), lower(TG_OP), TG_TABLE_NAME,
                  nullif(whole ->> 'id', '')::uuid, old_row, new_row);
          RETURN NULL;
        END $$;
      CREATE TRIGGER clubs_audit AFTER UPDATE ON clubs FOR EACH ROW EXECUTE FUNCTION audit_row();

      CREATE TABLE airfields (
        club_id uuid NOT NULL REFERENCES clubs (club_id),
        id uuid NOT NULL,
        code text NOT NULL CONSTRAINT airfields_code_chk CHECK (code ~ '^[A-Z0-9]{2,8}$'),
        name text NOT NULL CONSTRAINT airfields_name_chk CHECK (btrim(name) <> ''),
        latitude_deg double precision NOT NULL CONSTRAINT airfields_latitude_chk CHECK (latitude_deg BETWEEN -90 AND 90),
        longitude_deg double precision NOT NULL CONSTRAINT airfields_longitude_chk CHECK (longitude_deg BETWEEN -180 AND 180),
        elevation_ft integer NOT NULL CONSTRAINT airfields_elevation_chk CHECK (elevation_ft BETWEEN -1500 AND 20000),
        zone text NOT NULL,
        row_version integer NOT NULL DEFAULT 1,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT airfields_code_uq UNIQUE (club_id, code)
      );
      ${factTable('airfields')}

      CREATE TABLE runways (
        club_id uuid NOT NULL,
        id uuid NOT NULL,
        airfield_id uuid NOT NULL,
        designator text NOT NULL CONSTRAINT runways_designator_chk CHECK (designator ~ '^[0-3][0-9][LCR]?$'),
        true_heading_deg double precision NOT NULL CONSTRAINT runways_heading_chk CHECK (true_heading_deg >= 0 AND true_heading_deg < 360),
        length_ft integer NOT NULL CONSTRAINT runways_length_chk CHECK (length_ft BETWEEN 100 AND 20000),
        surface text NOT NULL CONSTRAINT runways_surface_chk CHECK (surface IN ('paved', 'grass', 'gravel', 'water')),
        lit boolean NOT NULL,
        row_version integer NOT NULL DEFAULT 1,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT runways_airfield_fk FOREIGN KEY (club_id, airfield_id) REFERENCES airfields (club_id, id),
        CONSTRAINT runways_designator_uq UNIQUE (club_id, airfield_id, designator)
      );
      ${factTable('runways')}

      CREATE TABLE policy_values (
        club_id uuid NOT NULL REFERENCES clubs (club_id),
        id uuid NOT NULL,
        parameter_id text NOT NULL CONSTRAINT policy_values_parameter_chk CHECK (parameter_id ~ '^club(\\.[a-z0-9-]+)+$'),
        valid_from date NOT NULL,
        value jsonb CONSTRAINT policy_values_value_chk CHECK (value IS NULL OR jsonb_typeof(value) IN ('number', 'boolean', 'string', 'null')),
        reference text NOT NULL CONSTRAINT policy_values_reference_chk CHECK (btrim(reference) <> ''),
        row_version integer NOT NULL DEFAULT 1,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT policy_values_from_uq UNIQUE (club_id, parameter_id, valid_from)
      );
      ${factTable('policy_values')}
    `);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      DROP TABLE policy_values; DROP TABLE runways; DROP TABLE airfields; DROP TABLE audit_log; DROP TABLE clubs;
      DROP FUNCTION audit_row(); DROP FUNCTION refuse_change(); DROP FUNCTION next_row_version();
      DROP FUNCTION bellcrank_actor(); DROP FUNCTION bellcrank_club();
    `);
  }
}
