import type { MigrationInterface, QueryRunner } from 'typeorm';
import { factTable, tenantTable } from './support.js';

/** How often something has to be done: the columns of an airworthiness item, under the constraints' own names. */
const interval = (table: string): string => `
        scope text NOT NULL CONSTRAINT ${table}_scope_chk
          CHECK (scope IN ('all', 'ifr', 'hire-or-instruction', 'night', 'transponder-use', 'advice')),
        calendar_months integer CONSTRAINT ${table}_calendar_chk CHECK (calendar_months > 0),
        plain_months integer CONSTRAINT ${table}_plain_chk CHECK (plain_months > 0),
        days integer CONSTRAINT ${table}_days_chk CHECK (days > 0),
        interval_tenths integer CONSTRAINT ${table}_interval_chk CHECK (interval_tenths > 0)`;

const ROW = `
        row_version integer NOT NULL DEFAULT 1,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id)`;

/** Airworthiness directives with what they apply to, and the club's own templates of items. */
export class Directives1764000000013 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      CREATE TABLE directives (
        club_id uuid NOT NULL, id uuid NOT NULL,
        issuer text NOT NULL CONSTRAINT directives_issuer_chk CHECK (btrim(issuer) <> '' AND length(issuer) <= 40),
        number text NOT NULL CONSTRAINT directives_number_chk CHECK (btrim(number) <> '' AND length(number) <= 60),
        title text NOT NULL CONSTRAINT directives_title_chk CHECK (btrim(title) <> '' AND length(title) <= 200),
        effective_on date NOT NULL,
        -- Of the aircraft itself, or of pieces of equipment in it.
        applies_to text NOT NULL CONSTRAINT directives_applies_chk CHECK (applies_to IN ('aircraft', 'equipment')),
        equipment_kind text,
        -- Empty: any.
        part_numbers text[] NOT NULL DEFAULT '{}',
        -- [{"from": "101", "through": "240"}], both ends within; empty: any.
        serials jsonb NOT NULL DEFAULT '[]' CONSTRAINT directives_serials_chk CHECK (jsonb_typeof(serials) = 'array'),
        ${interval('directives').trim()},
        recurring boolean NOT NULL,
        -- First compliance: days or hours after it took effect; neither: before the next flight.
        within_days integer CONSTRAINT directives_within_days_chk CHECK (within_days > 0),
        within_tenths integer CONSTRAINT directives_within_hours_chk CHECK (within_tenths > 0),
        ferry_prohibited boolean NOT NULL DEFAULT false,
        supersedes uuid,
        withdrawn_on date,
        ${ROW.trim()},
        CONSTRAINT directives_number_uq UNIQUE (club_id, issuer, number),
        CONSTRAINT directives_supersedes_uq UNIQUE (club_id, supersedes),
        CONSTRAINT directives_supersedes_fk FOREIGN KEY (club_id, supersedes) REFERENCES directives (club_id, id),
        CONSTRAINT directives_itself_chk CHECK (supersedes <> id),
        CONSTRAINT directives_equipment_chk CHECK ((applies_to = 'equipment') = (equipment_kind IS NOT NULL)
          AND (applies_to = 'equipment' OR part_numbers = '{}')),
        CONSTRAINT directives_withdrawn_chk CHECK (withdrawn_on >= effective_on),
        CONSTRAINT directives_recurs_chk CHECK (NOT recurring OR num_nonnulls(calendar_months, plain_months, days, interval_tenths) > 0)
      );
      ${factTable('directives')}

      -- Models it names; none: every model (equipment found in any aircraft).
      CREATE TABLE directive_models (
        club_id uuid NOT NULL, directive_id uuid NOT NULL, model_id uuid NOT NULL,
        PRIMARY KEY (club_id, directive_id, model_id),
        CONSTRAINT directive_models_directive_fk FOREIGN KEY (club_id, directive_id) REFERENCES directives (club_id, id),
        CONSTRAINT directive_models_model_fk FOREIGN KEY (club_id, model_id) REFERENCES aircraft_models (club_id, id)
      );
      ${tenantTable('directive_models')}

      ALTER TABLE airworthiness_items
        ADD COLUMN directive_id uuid,
        ADD CONSTRAINT airworthiness_items_directive_fk FOREIGN KEY (club_id, directive_id) REFERENCES directives (club_id, id),
        ADD CONSTRAINT airworthiness_items_directive_chk CHECK (directive_id IS NULL OR kind = 'directive');
      CREATE UNIQUE INDEX airworthiness_items_directive_uq ON airworthiness_items
        (club_id, aircraft_id, directive_id, coalesce(equipment_id, '00000000-0000-0000-0000-000000000000')) WHERE directive_id IS NOT NULL;

      -- What somebody looked up of one aircraft or piece; the newest counts.
      CREATE TABLE directive_findings (
        club_id uuid NOT NULL, id uuid NOT NULL, directive_id uuid NOT NULL, aircraft_id uuid NOT NULL, equipment_id uuid,
        applies boolean NOT NULL,
        because text NOT NULL CONSTRAINT directive_findings_because_chk CHECK (length(btrim(because)) >= 5),
        signed_by text NOT NULL CONSTRAINT directive_findings_signed_chk CHECK (btrim(signed_by) <> ''),
        found_by uuid NOT NULL,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT directive_findings_directive_fk FOREIGN KEY (club_id, directive_id) REFERENCES directives (club_id, id),
        CONSTRAINT directive_findings_aircraft_fk FOREIGN KEY (club_id, aircraft_id) REFERENCES aircraft (club_id, id),
        CONSTRAINT directive_findings_equipment_fk FOREIGN KEY (club_id, aircraft_id, equipment_id) REFERENCES equipment (club_id, aircraft_id, id),
        CONSTRAINT directive_findings_member_fk FOREIGN KEY (club_id, found_by) REFERENCES members (club_id, id)
      );
      CREATE INDEX directive_findings_ix ON directive_findings (club_id, directive_id, aircraft_id, id DESC);
      ${tenantTable('directive_findings', 'append-only')}
      CREATE TRIGGER directive_findings_audit AFTER INSERT ON directive_findings FOR EACH ROW EXECUTE FUNCTION audit_row();

      CREATE TABLE item_templates (
        club_id uuid NOT NULL, id uuid NOT NULL,
        kind text NOT NULL CONSTRAINT item_templates_kind_chk CHECK (kind IN ('annual', 'hours-100', 'altimeter-static',
          'transponder', 'elt-inspection', 'elt-battery', 'vor-check', 'club')),
        title text NOT NULL CONSTRAINT item_templates_title_chk CHECK (btrim(title) <> '' AND length(title) <= 200),
        reference text,
        ${interval('item_templates').trim()},
        tolerance_tenths integer NOT NULL DEFAULT 0 CONSTRAINT item_templates_tolerance_chk CHECK (tolerance_tenths >= 0),
        recurring boolean NOT NULL DEFAULT true,
        -- It hangs on a piece of this kind, where the aircraft has one.
        hangs_on text,
        ${ROW.trim()},
        CONSTRAINT item_templates_title_uq UNIQUE (club_id, title)
      );
      ${factTable('item_templates')}
    `);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      DROP TABLE item_templates;
      DROP TABLE directive_findings;
      DROP INDEX airworthiness_items_directive_uq;
      ALTER TABLE airworthiness_items DROP CONSTRAINT airworthiness_items_directive_chk, DROP COLUMN directive_id;
      DROP TABLE directive_models;
      DROP TABLE directives;
    `);
  }
}
