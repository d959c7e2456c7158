import type { MigrationInterface, QueryRunner } from 'typeorm';
import { tenantTable } from './support.js';

const STATES = (more: string): string => `
        DROP CONSTRAINT squawks_state_chk,
        DROP CONSTRAINT squawks_closed_chk,
        ADD CONSTRAINT squawks_state_chk CHECK (state IN ('reported', 'grounding', 'deferred', 'fixed', 'no-fault-found'${more})),
        ADD CONSTRAINT squawks_closed_chk CHECK ((state IN ('fixed', 'no-fault-found'${more})) = (closed_at IS NOT NULL))`;

/** Photos of squawks, duplicates, parts used, closing and reopening, and the flight a squawk was reported after. */
export class Squawks1764000000011 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      ALTER TABLE squawks
        -- The flight after which it was reported.
        ADD COLUMN booking_id uuid,
        ADD COLUMN duplicate_of uuid,
        -- As entered; being on record gives nobody authority to sign.
        ADD COLUMN signed_certificate text,
        -- How often it was closed: parts belong to one closing.
        ADD COLUMN closings integer NOT NULL DEFAULT 0,
        -- What it was when it was closed, so that a grounding one reopened grounds again.
        ADD COLUMN closed_from text CONSTRAINT squawks_closed_from_chk CHECK (closed_from IN ('reported', 'grounding', 'deferred')),
        ADD COLUMN reopened_because text CONSTRAINT squawks_reopened_chk CHECK (length(btrim(reopened_because)) >= 5),
        ADD CONSTRAINT squawks_aircraft_uq UNIQUE (club_id, aircraft_id, id),
        ADD CONSTRAINT squawks_booking_fk FOREIGN KEY (club_id, booking_id) REFERENCES bookings (club_id, id),
        ADD CONSTRAINT squawks_duplicate_fk FOREIGN KEY (club_id, aircraft_id, duplicate_of) REFERENCES squawks (club_id, aircraft_id, id),
        ADD CONSTRAINT squawks_certificate_chk CHECK (btrim(signed_certificate) <> '' AND length(signed_certificate) <= 200),
        ADD CONSTRAINT squawks_closings_chk CHECK (closings >= 0),
        ADD CONSTRAINT squawks_cleared_chk CHECK (state <> 'no-fault-found' OR (corrective_action IS NOT NULL AND signed_by IS NOT NULL)),
        ${STATES(`, 'duplicate'`).trim()},
        ADD CONSTRAINT squawks_duplicate_chk CHECK ((state = 'duplicate') = (duplicate_of IS NOT NULL));
      CREATE INDEX squawks_duplicate_ix ON squawks (club_id, duplicate_of) WHERE duplicate_of IS NOT NULL;

      -- What is closed as a duplicate must live on in one that is open and stops at least as much.
      CREATE FUNCTION squawk_duplicate_stands() RETURNS trigger LANGUAGE plpgsql AS $$
        DECLARE
          kept squawks;
        BEGIN
          SELECT * INTO kept FROM squawks WHERE club_id = NEW.club_id AND id = NEW.duplicate_of FOR NO KEY UPDATE;
          -- A new row is not there to be found yet, and its foreign key would be content with itself.
          IF NEW.duplicate_of = NEW.id OR (FOUND AND kept.state NOT IN ('reported', 'grounding', 'deferred')) THEN
            RAISE EXCEPTION 'a duplicate is of another squawk that is open'
              USING ERRCODE = 'check_violation', CONSTRAINT = 'squawks_duplicate_open_chk', TABLE = 'squawks';
          END IF;
          IF FOUND AND ((NEW.closed_from = 'grounding' AND kept.state <> 'grounding')
               OR (NEW.equipment_id IS NOT NULL AND kept.equipment_id IS DISTINCT FROM NEW.equipment_id)) THEN
            RAISE EXCEPTION 'a duplicate stops no more than the squawk it is kept in'
              USING ERRCODE = 'check_violation', CONSTRAINT = 'squawks_duplicate_weaker_chk', TABLE = 'squawks';
          END IF;
          RETURN NEW;
        END $$;
      CREATE TRIGGER squawks_duplicate BEFORE INSERT OR UPDATE OF duplicate_of ON squawks
        FOR EACH ROW WHEN (NEW.duplicate_of IS NOT NULL) EXECUTE FUNCTION squawk_duplicate_stands();

      -- Nor may the one that is kept let go of the equipment afterwards.
      CREATE FUNCTION squawk_keeps_equipment() RETURNS trigger LANGUAGE plpgsql AS $$
        BEGIN
          IF EXISTS (SELECT 1 FROM squawks d WHERE d.club_id = NEW.club_id AND d.duplicate_of = NEW.id
                       AND d.equipment_id IS NOT NULL AND d.equipment_id IS DISTINCT FROM NEW.equipment_id) THEN
            RAISE EXCEPTION 'a squawk keeps the equipment of its duplicates'
              USING ERRCODE = 'check_violation', CONSTRAINT = 'squawks_kept_equipment_chk', TABLE = 'squawks';
          END IF;
          RETURN NEW;
        END $$;
      CREATE TRIGGER squawks_kept_equipment BEFORE UPDATE OF equipment_id ON squawks
        FOR EACH ROW EXECUTE FUNCTION squawk_keeps_equipment();

      -- Parts used, of one closing each: one closed again names its parts anew.
      CREATE TABLE squawk_parts (
        club_id uuid NOT NULL, id uuid NOT NULL, squawk_id uuid NOT NULL,
        closing integer NOT NULL CONSTRAINT squawk_parts_closing_chk CHECK (closing >= 1),
        part_number text NOT NULL CONSTRAINT squawk_parts_number_chk CHECK (btrim(part_number) <> '' AND length(part_number) <= 80),
        serial_number text CONSTRAINT squawk_parts_serial_chk CHECK (btrim(serial_number) <> '' AND length(serial_number) <= 80),
        name text NOT NULL CONSTRAINT squawk_parts_name_chk CHECK (btrim(name) <> '' AND length(name) <= 200),
        quantity double precision NOT NULL CONSTRAINT squawk_parts_quantity_chk CHECK (quantity > 0 AND quantity <= 10000),
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT squawk_parts_squawk_fk FOREIGN KEY (club_id, squawk_id) REFERENCES squawks (club_id, id)
      );
      CREATE INDEX squawk_parts_squawk_ix ON squawk_parts (club_id, squawk_id, closing);
      ${tenantTable('squawk_parts', 'append-only')}
      CREATE TRIGGER squawk_parts_audit AFTER INSERT ON squawk_parts FOR EACH ROW EXECUTE FUNCTION audit_row();

      CREATE TABLE attachments (
        club_id uuid NOT NULL, id uuid NOT NULL, squawk_id uuid NOT NULL,
        media_type text NOT NULL CONSTRAINT attachments_media_chk CHECK (media_type IN ('image/jpeg', 'image/png', 'image/webp')),
        size_bytes integer NOT NULL CONSTRAINT attachments_size_chk CHECK (size_bytes BETWEEN 1 AND 8388608),
        sha256 text NOT NULL,
        content bytea NOT NULL,
        added_by uuid NOT NULL,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT attachments_squawk_fk FOREIGN KEY (club_id, squawk_id) REFERENCES squawks (club_id, id),
        CONSTRAINT attachments_member_fk FOREIGN KEY (club_id, added_by) REFERENCES members (club_id, id),
        CONSTRAINT attachments_once_uq UNIQUE (club_id, squawk_id, sha256),
        CONSTRAINT attachments_content_chk CHECK (octet_length(content) = size_bytes AND encode(sha256(content), 'hex') = sha256)
      );
      -- Photos do not shrink much more; without compression they are read faster.
      ALTER TABLE attachments ALTER COLUMN content SET STORAGE EXTERNAL;
      ${tenantTable('attachments', 'append-only')}

      CREATE FUNCTION attachments_few_enough() RETURNS trigger LANGUAGE plpgsql AS $$
        BEGIN
          -- Photos of one squawk queue here, so that two at once cannot both be the last.
          PERFORM 1 FROM squawks WHERE club_id = NEW.club_id AND id = NEW.squawk_id FOR NO KEY UPDATE;
          IF (SELECT count(*) FROM attachments WHERE club_id = NEW.club_id AND squawk_id = NEW.squawk_id) >= 6 THEN
            RAISE EXCEPTION 'a squawk holds six photos at most'
              USING ERRCODE = 'check_violation', CONSTRAINT = 'attachments_count_chk', TABLE = 'attachments';
          END IF;
          RETURN NEW;
        END $$;
      CREATE TRIGGER attachments_count BEFORE INSERT ON attachments FOR EACH ROW EXECUTE FUNCTION attachments_few_enough();

      -- The audit log tells that a photo came, without the photo.
      CREATE FUNCTION audit_attachment() RETURNS trigger LANGUAGE plpgsql AS $$
        BEGIN
          INSERT INTO audit_log (club_id, actor_id, action, table_name, row_id, after)
          VALUES (NEW.club_id, bellcrank_actor(), 'insert', 'attachments', NEW.id, to_jsonb(NEW) - 'content');
          RETURN NULL;
        END $$;
      CREATE TRIGGER attachments_audit AFTER INSERT ON attachments FOR EACH ROW EXECUTE FUNCTION audit_attachment();
    `);
  }

  /** Refused while a squawk is closed as a duplicate, which the older schema cannot say. */
  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      DROP TABLE attachments; DROP FUNCTION audit_attachment(); DROP FUNCTION attachments_few_enough();
      DROP TABLE squawk_parts;
      DROP TRIGGER squawks_duplicate ON squawks; DROP FUNCTION squawk_duplicate_stands();
      DROP TRIGGER squawks_kept_equipment ON squawks; DROP FUNCTION squawk_keeps_equipment();
      DROP INDEX squawks_duplicate_ix;
      ALTER TABLE squawks
        DROP CONSTRAINT squawks_duplicate_chk,
        DROP CONSTRAINT squawks_cleared_chk,
        ${STATES('').trim()},
        DROP COLUMN duplicate_of, DROP COLUMN booking_id, DROP COLUMN signed_certificate, DROP COLUMN closings,
        DROP COLUMN closed_from, DROP COLUMN reopened_because,
        DROP CONSTRAINT squawks_aircraft_uq;
    `);
  }
}
