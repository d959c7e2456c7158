import type { MigrationInterface, QueryRunner } from 'typeorm';
import { factTable } from './support.js';

/** Shop visits from the plan to the signature, who may sign them, check flights, and the flights they displace. */
export class WorkOrders1764000000012 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      ALTER TABLE airworthiness_items ADD CONSTRAINT airworthiness_items_aircraft_uq UNIQUE (club_id, aircraft_id, id);
      ALTER TABLE upgrade_wishes ADD CONSTRAINT upgrade_wishes_aircraft_uq UNIQUE (club_id, aircraft_id, id);
      ALTER TABLE bookings ADD CONSTRAINT bookings_of_aircraft_uq UNIQUE (club_id, aircraft_id, id);

      -- Whom the club has on record as entitled to approve an aircraft for return to service. The record grants nothing.
      CREATE TABLE signers (
        club_id uuid NOT NULL, id uuid NOT NULL,
        name text NOT NULL CONSTRAINT signers_name_chk CHECK (btrim(name) <> '' AND length(name) <= 120),
        certificate text NOT NULL CONSTRAINT signers_certificate_chk CHECK (btrim(certificate) <> '' AND length(certificate) <= 80),
        holds text NOT NULL CONSTRAINT signers_holds_chk
          CHECK (holds IN ('mechanic', 'inspection-authorization', 'repair-station', 'manufacturer', 'pilot')),
        valid_from date NOT NULL,
        valid_through date,
        row_version integer NOT NULL DEFAULT 1,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT signers_span_chk CHECK (valid_through IS NULL OR valid_through >= valid_from)
      );
      ${factTable('signers')}

      CREATE TABLE work_orders (
        club_id uuid NOT NULL, id uuid NOT NULL, aircraft_id uuid NOT NULL,
        title text NOT NULL CONSTRAINT work_orders_title_chk CHECK (btrim(title) <> '' AND length(title) <= 200),
        shop text NOT NULL DEFAULT '' CONSTRAINT work_orders_shop_chk CHECK (length(shop) <= 200),
        state text NOT NULL DEFAULT 'planned' CONSTRAINT work_orders_state_chk CHECK (state IN ('planned', 'in-work', 'signed', 'cancelled')),
        -- The time it takes up in the calendar; null: none is set.
        booking_id uuid,
        begun_at timestamptz,
        cancelled_because text CONSTRAINT work_orders_because_chk CHECK (length(btrim(cancelled_because)) >= 5),
        -- The approval for return to service. When it was entered, and the day it bears.
        signed_at timestamptz,
        signed_on date,
        statement text CONSTRAINT work_orders_statement_chk CHECK (btrim(statement) <> ''),
        signer_id uuid,
        -- Name and certificate as they were then.
        signed_by text,
        equipment_change_id uuid,
        weighing_id uuid,
        check_flight_because text CONSTRAINT work_orders_check_because_chk CHECK (btrim(check_flight_because) <> ''),
        check_flown_at timestamptz,
        check_flown_by uuid,
        check_entry text CONSTRAINT work_orders_check_entry_chk CHECK (btrim(check_entry) <> ''),
        made_by uuid NOT NULL,
        row_version integer NOT NULL DEFAULT 1,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT work_orders_aircraft_uq UNIQUE (club_id, aircraft_id, id),
        CONSTRAINT work_orders_aircraft_fk FOREIGN KEY (club_id, aircraft_id) REFERENCES aircraft (club_id, id),
        CONSTRAINT work_orders_booking_fk FOREIGN KEY (club_id, aircraft_id, booking_id) REFERENCES bookings (club_id, aircraft_id, id),
        CONSTRAINT work_orders_booking_uq UNIQUE (club_id, booking_id),
        CONSTRAINT work_orders_signer_fk FOREIGN KEY (club_id, signer_id) REFERENCES signers (club_id, id),
        CONSTRAINT work_orders_change_fk FOREIGN KEY (club_id, aircraft_id, equipment_change_id)
          REFERENCES equipment_changes (club_id, aircraft_id, id),
        CONSTRAINT work_orders_weighing_fk FOREIGN KEY (club_id, weighing_id) REFERENCES weighings (club_id, id),
        CONSTRAINT work_orders_made_fk FOREIGN KEY (club_id, made_by) REFERENCES members (club_id, id),
        CONSTRAINT work_orders_flown_by_fk FOREIGN KEY (club_id, check_flown_by) REFERENCES members (club_id, id),
        CONSTRAINT work_orders_begun_chk CHECK ((state IN ('in-work', 'signed')) = (begun_at IS NOT NULL)),
        CONSTRAINT work_orders_cancelled_chk CHECK ((state = 'cancelled') = (cancelled_because IS NOT NULL)),
        CONSTRAINT work_orders_signed_chk CHECK (num_nonnulls(signed_at, signed_on, statement, signer_id, signed_by) =
          CASE WHEN state = 'signed' THEN 5 ELSE 0 END),
        CONSTRAINT work_orders_order_chk CHECK (signed_at IS NULL OR signed_at >= begun_at),
        CONSTRAINT work_orders_check_chk CHECK (check_flight_because IS NULL OR state = 'signed'),
        CONSTRAINT work_orders_flown_chk CHECK (num_nonnulls(check_flown_at, check_flown_by, check_entry) IN (0, 3)
          AND (check_flown_at IS NULL OR check_flight_because IS NOT NULL AND check_flown_at >= begun_at))
      );
      CREATE INDEX work_orders_aircraft_ix ON work_orders (club_id, aircraft_id, state);
      ${factTable('work_orders')}

      -- Planned, in work, signed; or planned and called off. What is signed stays as it is, but for the check flight made after it.
      CREATE FUNCTION work_order_moves() RETURNS trigger LANGUAGE plpgsql AS $$
        BEGIN
          IF NEW.state <> OLD.state AND NOT (OLD.state = 'planned' AND NEW.state IN ('in-work', 'cancelled')
               OR OLD.state = 'in-work' AND NEW.state = 'signed') THEN
            RAISE EXCEPTION 'work goes from planned to in work to signed, or is called off before it begins'
              USING ERRCODE = 'check_violation', CONSTRAINT = 'work_orders_moves_chk', TABLE = 'work_orders';
          END IF;
          IF OLD.state IN ('signed', 'cancelled')
             AND (to_jsonb(NEW) - '{check_flown_at,check_flown_by,check_entry,row_version}'::text[])
              IS DISTINCT FROM (to_jsonb(OLD) - '{check_flown_at,check_flown_by,check_entry,row_version}'::text[])
             OR OLD.check_flown_at IS NOT NULL AND NEW.check_flown_at IS DISTINCT FROM OLD.check_flown_at THEN
            RAISE EXCEPTION 'what was signed stays as it was signed'
              USING ERRCODE = 'check_violation', CONSTRAINT = 'work_orders_kept_chk', TABLE = 'work_orders';
          END IF;
          RETURN NEW;
        END $$;
      CREATE TRIGGER work_orders_moves BEFORE UPDATE ON work_orders FOR EACH ROW EXECUTE FUNCTION work_order_moves();

      CREATE TABLE work_lines (
        club_id uuid NOT NULL, id uuid NOT NULL, order_id uuid NOT NULL, aircraft_id uuid NOT NULL,
        kind text NOT NULL CONSTRAINT work_lines_kind_chk CHECK (kind IN ('item', 'squawk', 'wish', 'weighing', 'other')),
        item_id uuid, squawk_id uuid, wish_id uuid,
        title text NOT NULL CONSTRAINT work_lines_title_chk CHECK (btrim(title) <> '' AND length(title) <= 200),
        outcome text CONSTRAINT work_lines_outcome_chk CHECK (outcome IN ('done', 'not-done')),
        note text NOT NULL DEFAULT '' CONSTRAINT work_lines_note_chk CHECK (length(note) <= 2000),
        row_version integer NOT NULL DEFAULT 1,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT work_lines_order_fk FOREIGN KEY (club_id, aircraft_id, order_id) REFERENCES work_orders (club_id, aircraft_id, id),
        CONSTRAINT work_lines_item_fk FOREIGN KEY (club_id, aircraft_id, item_id) REFERENCES airworthiness_items (club_id, aircraft_id, id),
        CONSTRAINT work_lines_squawk_fk FOREIGN KEY (club_id, aircraft_id, squawk_id) REFERENCES squawks (club_id, aircraft_id, id),
        CONSTRAINT work_lines_wish_fk FOREIGN KEY (club_id, aircraft_id, wish_id) REFERENCES upgrade_wishes (club_id, aircraft_id, id),
        CONSTRAINT work_lines_about_chk CHECK ((kind = 'item') = (item_id IS NOT NULL) AND (kind = 'squawk') = (squawk_id IS NOT NULL)
          AND (kind = 'wish') = (wish_id IS NOT NULL)),
        CONSTRAINT work_lines_item_uq UNIQUE (club_id, order_id, item_id),
        CONSTRAINT work_lines_squawk_uq UNIQUE (club_id, order_id, squawk_id),
        CONSTRAINT work_lines_wish_uq UNIQUE (club_id, order_id, wish_id)
      );
      CREATE INDEX work_lines_order_ix ON work_lines (club_id, order_id);
      ${factTable('work_lines')}

      -- Lines come and go until the work is signed.
      CREATE FUNCTION work_line_moves() RETURNS trigger LANGUAGE plpgsql AS $$
        DECLARE
          line work_lines := CASE WHEN TG_OP = 'DELETE' THEN OLD ELSE NEW END;
          found_state text;
        BEGIN
          SELECT state INTO found_state FROM work_orders WHERE club_id = line.club_id AND id = line.order_id FOR NO KEY UPDATE;
          IF found_state IN ('signed', 'cancelled') THEN
            RAISE EXCEPTION 'the lines of work that is over stay as they are'
              USING ERRCODE = 'check_violation', CONSTRAINT = 'work_lines_kept_chk', TABLE = 'work_lines';
          END IF;
          RETURN line;
        END $$;
      CREATE TRIGGER work_lines_moves BEFORE INSERT OR UPDATE OR DELETE ON work_lines FOR EACH ROW EXECUTE FUNCTION work_line_moves();

      -- Signed work leaves no line open.
      CREATE FUNCTION work_order_lines_done() RETURNS trigger LANGUAGE plpgsql AS $$
        BEGIN
          IF EXISTS (SELECT 1 FROM work_lines WHERE club_id = NEW.club_id AND order_id = NEW.id AND outcome IS NULL) THEN
            RAISE EXCEPTION 'a line of the work says neither done nor not done'
              USING ERRCODE = 'check_violation', CONSTRAINT = 'work_orders_lines_chk', TABLE = 'work_orders';
          END IF;
          RETURN NEW;
        END $$;
      CREATE TRIGGER work_orders_lines BEFORE UPDATE OF state ON work_orders
        FOR EACH ROW WHEN (NEW.state = 'signed' AND OLD.state <> 'signed') EXECUTE FUNCTION work_order_lines_done();

      -- Flights that had to make room, until their member has seen it.
      CREATE TABLE displacements (
        club_id uuid NOT NULL, id uuid NOT NULL, booking_id uuid NOT NULL, aircraft_id uuid NOT NULL, order_id uuid NOT NULL,
        member_id uuid NOT NULL,
        seen_at timestamptz,
        row_version integer NOT NULL DEFAULT 1,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT displacements_booking_fk FOREIGN KEY (club_id, aircraft_id, booking_id) REFERENCES bookings (club_id, aircraft_id, id),
        CONSTRAINT displacements_order_fk FOREIGN KEY (club_id, aircraft_id, order_id) REFERENCES work_orders (club_id, aircraft_id, id),
        CONSTRAINT displacements_member_fk FOREIGN KEY (club_id, member_id) REFERENCES members (club_id, id),
        CONSTRAINT displacements_once_uq UNIQUE (club_id, booking_id, member_id)
      );
      CREATE INDEX displacements_member_ix ON displacements (club_id, member_id) WHERE seen_at IS NULL;
      ${factTable('displacements')}
    `);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      DROP TABLE displacements;
      DROP TABLE work_lines; DROP FUNCTION work_line_moves();
      DROP TABLE work_orders; DROP FUNCTION work_order_moves(); DROP FUNCTION work_order_lines_done();
      DROP TABLE signers;
      ALTER TABLE bookings DROP CONSTRAINT bookings_of_aircraft_uq;
      ALTER TABLE upgrade_wishes DROP CONSTRAINT upgrade_wishes_aircraft_uq;
      ALTER TABLE airworthiness_items DROP CONSTRAINT airworthiness_items_aircraft_uq;
    `);
  }
}
