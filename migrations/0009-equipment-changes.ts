import type { MigrationInterface, QueryRunner } from 'typeorm';
import { factTable, tenantTable } from './support.js';

/** The order of readings as 0003 has it, and as it is once readings can be taken back. `counts`: what is left of a reading's row. */
const orderOfReadings = (counts: string, once: string): string => `
      CREATE OR REPLACE FUNCTION meter_reading_in_order() RETURNS trigger LANGUAGE plpgsql AS $$
        BEGIN
          -- Readings of one aircraft queue here, so two at once cannot slip past each other.
          PERFORM 1 FROM aircraft WHERE club_id = NEW.club_id AND id = NEW.aircraft_id FOR NO KEY UPDATE;
          IF EXISTS (SELECT 1 FROM meter_readings m WHERE m.club_id = NEW.club_id AND m.aircraft_id = NEW.aircraft_id
                       AND m.kind = NEW.kind AND m.read_at < NEW.read_at AND m.total_tenths > NEW.shown_tenths + NEW.offset_tenths${counts}) THEN
            RAISE EXCEPTION 'meter below its last reading'
              USING ERRCODE = 'check_violation', CONSTRAINT = 'meter_readings_not_below_last_chk', TABLE = 'meter_readings';
          END IF;
          IF EXISTS (SELECT 1 FROM meter_readings m WHERE m.club_id = NEW.club_id AND m.aircraft_id = NEW.aircraft_id
                       AND m.kind = NEW.kind AND m.read_at > NEW.read_at AND m.total_tenths < NEW.shown_tenths + NEW.offset_tenths${counts}) THEN
            RAISE EXCEPTION 'meter above a later reading'
              USING ERRCODE = 'check_violation', CONSTRAINT = 'meter_readings_not_above_next_chk', TABLE = 'meter_readings';
          END IF;
${once}          RETURN NEW;
        END $$;`;

const STANDS = `
                       AND NOT EXISTS (SELECT 1 FROM meter_reading_voids v WHERE v.club_id = m.club_id AND v.reading_id = m.id)`;

/** One reading of a meter at a time, of those that stand: what the unique constraint said before. */
const ONCE = `          IF EXISTS (SELECT 1 FROM meter_readings m WHERE m.club_id = NEW.club_id AND m.aircraft_id = NEW.aircraft_id
                       AND m.kind = NEW.kind AND m.read_at = NEW.read_at${STANDS}) THEN
            RAISE EXCEPTION 'the meter has a reading of this time'
              USING ERRCODE = 'unique_violation', CONSTRAINT = 'meter_readings_at_uq', TABLE = 'meter_readings';
          END IF;
`;

/**
 * Equipment changes with their weight and what they begin and end; empty weights by date; parts with weight, arm and papers;
 * serial numbers of aircraft; items that begin on a day; meter readings that were wrong.
 */
export class EquipmentChanges1764000000009 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      ALTER TABLE aircraft
        ADD COLUMN serial_number text CONSTRAINT aircraft_serial_chk CHECK (btrim(serial_number) <> '' AND length(serial_number) <= 40);

      CREATE TABLE equipment_changes (
        club_id uuid NOT NULL, id uuid NOT NULL, aircraft_id uuid NOT NULL,
        title text NOT NULL CONSTRAINT equipment_changes_title_chk CHECK (btrim(title) <> '' AND length(title) <= 200),
        done_on date NOT NULL,
        -- The entry in the maintenance record, and who signed it: kept as entered.
        statement text NOT NULL CONSTRAINT equipment_changes_statement_chk CHECK (btrim(statement) <> ''),
        signed_by text NOT NULL CONSTRAINT equipment_changes_signed_chk CHECK (btrim(signed_by) <> ''),
        documents text[] NOT NULL DEFAULT '{}',
        -- Rows of other tables that it made or ended, so that taking it back finds them: see the service.
        effects jsonb NOT NULL CONSTRAINT equipment_changes_effects_chk CHECK (jsonb_typeof(effects) = 'object'),
        made_by uuid NOT NULL,
        taken_back_at timestamptz,
        taken_back_by uuid,
        taken_back_reason text,
        row_version integer NOT NULL DEFAULT 1,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT equipment_changes_aircraft_uq UNIQUE (club_id, aircraft_id, id),
        CONSTRAINT equipment_changes_aircraft_fk FOREIGN KEY (club_id, aircraft_id) REFERENCES aircraft (club_id, id),
        CONSTRAINT equipment_changes_made_fk FOREIGN KEY (club_id, made_by) REFERENCES members (club_id, id),
        CONSTRAINT equipment_changes_taken_back_fk FOREIGN KEY (club_id, taken_back_by) REFERENCES members (club_id, id),
        CONSTRAINT equipment_changes_taken_back_chk CHECK (num_nonnulls(taken_back_at, taken_back_by, taken_back_reason) IN (0, 3))
      );
      CREATE INDEX equipment_changes_aircraft_ix ON equipment_changes (club_id, aircraft_id, done_on DESC);
      ${factTable('equipment_changes')}

      ALTER TABLE equipment
        ADD COLUMN part_number text,
        ADD COLUMN serial_number text,
        ADD COLUMN weight_lb double precision CONSTRAINT equipment_weight_chk CHECK (weight_lb >= 0),
        -- Aft of the datum positive, inches.
        ADD COLUMN arm_in double precision,
        ADD COLUMN document text,
        ADD COLUMN installed_by_change uuid,
        ADD COLUMN removed_by_change uuid,
        ADD CONSTRAINT equipment_installed_by_fk FOREIGN KEY (club_id, aircraft_id, installed_by_change)
          REFERENCES equipment_changes (club_id, aircraft_id, id),
        ADD CONSTRAINT equipment_removed_by_fk FOREIGN KEY (club_id, aircraft_id, removed_by_change)
          REFERENCES equipment_changes (club_id, aircraft_id, id),
        ADD CONSTRAINT equipment_removed_by_chk CHECK (removed_by_change IS NULL OR removed_on IS NOT NULL);

      -- Empty weight and its arm from a day on; the newest of a day that is not void counts.
      CREATE TABLE weighings (
        club_id uuid NOT NULL, id uuid NOT NULL, aircraft_id uuid NOT NULL,
        effective_on date NOT NULL,
        empty_weight_lb double precision NOT NULL CONSTRAINT weighings_weight_chk CHECK (empty_weight_lb > 0),
        -- Null: not known, and then nothing about the centre of gravity is.
        empty_arm_in double precision,
        source text NOT NULL CONSTRAINT weighings_source_chk CHECK (source IN ('weighing', 'computed', 'equipment-change')),
        change_id uuid,
        note text NOT NULL DEFAULT '',
        voided_at timestamptz,
        row_version integer NOT NULL DEFAULT 1,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT weighings_aircraft_fk FOREIGN KEY (club_id, aircraft_id) REFERENCES aircraft (club_id, id),
        CONSTRAINT weighings_change_fk FOREIGN KEY (club_id, aircraft_id, change_id) REFERENCES equipment_changes (club_id, aircraft_id, id),
        CONSTRAINT weighings_change_chk CHECK ((source = 'equipment-change') <= (change_id IS NOT NULL))
      );
      CREATE INDEX weighings_aircraft_ix ON weighings (club_id, aircraft_id, effective_on DESC);
      ${factTable('weighings')}

      ALTER TABLE airworthiness_items
        -- First day it is asked for; null: always.
        ADD COLUMN since date,
        ADD CONSTRAINT airworthiness_items_span_chk CHECK (since IS NULL OR retired_on IS NULL OR retired_on >= since);

      ALTER TABLE differences ADD COLUMN change_id uuid,
        ADD CONSTRAINT differences_change_fk FOREIGN KEY (club_id, aircraft_id, change_id)
          REFERENCES equipment_changes (club_id, aircraft_id, id);

      -- Readings are never edited nor deleted: one that was wrong is taken back by an entry of its own.
      CREATE TABLE meter_reading_voids (
        club_id uuid NOT NULL,
        reading_id uuid NOT NULL,
        reason text NOT NULL CONSTRAINT meter_reading_voids_reason_chk CHECK (length(btrim(reason)) >= 5),
        voided_by uuid NOT NULL,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, reading_id),
        CONSTRAINT meter_reading_voids_reading_fk FOREIGN KEY (club_id, reading_id) REFERENCES meter_readings (club_id, id),
        CONSTRAINT meter_reading_voids_member_fk FOREIGN KEY (club_id, voided_by) REFERENCES members (club_id, id)
      );
      ${tenantTable('meter_reading_voids', 'append-only')}
      CREATE TRIGGER meter_reading_voids_audit AFTER INSERT ON meter_reading_voids FOR EACH ROW EXECUTE FUNCTION audit_row();
      ${orderOfReadings(STANDS, ONCE)}
      -- A time at which a wrong reading was entered is free again for the right one; the trigger keeps the order.
      ALTER TABLE meter_readings DROP CONSTRAINT meter_readings_at_uq;
      CREATE INDEX meter_readings_at_ix ON meter_readings (club_id, aircraft_id, kind, read_at DESC);
    `);
  }

  /** Refused while two readings of one time are on record: one of them was taken back, which the older schema cannot say. */
  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      DROP INDEX meter_readings_at_ix;
      ALTER TABLE meter_readings ADD CONSTRAINT meter_readings_at_uq UNIQUE (club_id, aircraft_id, kind, read_at);
      ${orderOfReadings('', '')}
      DROP TABLE meter_reading_voids;
      ALTER TABLE differences DROP COLUMN change_id;
      ALTER TABLE airworthiness_items DROP COLUMN since;
      DROP TABLE weighings;
      ALTER TABLE equipment DROP COLUMN part_number, DROP COLUMN serial_number, DROP COLUMN weight_lb, DROP COLUMN arm_in,
        DROP COLUMN document, DROP COLUMN installed_by_change, DROP COLUMN removed_by_change;
      DROP TABLE equipment_changes;
      ALTER TABLE aircraft DROP COLUMN serial_number;
    `);
  }
}
