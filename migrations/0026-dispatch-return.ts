import type { MigrationInterface, QueryRunner } from 'typeorm';
import { giveStartingValues, tenantTable, type StartingValue } from './support.js';

/** Club numbers of this migration: the starting value goes to clubs that are there already, as in 0025. */
export const DISPATCH_STARTING_VALUES: StartingValue[] = [
  ['club.dispatch.earliest-minutes', 120, '4.4'],
  ['club.overdue.crew-minutes', 30, '4.5'],
  ['club.overdue.officers-minutes', 60, '4.5'],
];

/** Flights handed out at the aircraft and brought back: dispatches, returns, and who is told of an aircraft that is overdue. */
export class DispatchReturn1764000000026 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      -- An aircraft is out with one crew at a time, however long after its time the last one comes back.
      CREATE UNIQUE INDEX bookings_out_uq ON bookings (club_id, aircraft_id) WHERE status = 'dispatched';

      -- An aircraft handed to its crew. One that was not flown after all is taken back by a record of its own.
      CREATE TABLE dispatches (
        club_id uuid NOT NULL, id uuid NOT NULL,
        booking_id uuid NOT NULL,
        -- A booking whose dispatch was taken back may be dispatched again.
        number integer NOT NULL CONSTRAINT dispatches_number_chk CHECK (number > 0),
        decision_id uuid NOT NULL,
        dispatched_by uuid NOT NULL,
        dispatched_at timestamptz NOT NULL,
        persons_on_board integer NOT NULL CONSTRAINT dispatches_persons_chk CHECK (persons_on_board BETWEEN 1 AND 20),
        fuel_us_gal numeric(5, 1) NOT NULL CONSTRAINT dispatches_fuel_chk CHECK (fuel_us_gal BETWEEN 0 AND 500),
        oil_qt numeric(4, 1) CONSTRAINT dispatches_oil_chk CHECK (oil_qt BETWEEN 0 AND 60),
        -- That the self-assessment was gone through; never what came of it.
        self_assessed boolean NOT NULL CONSTRAINT dispatches_self_assessed_chk CHECK (self_assessed),
        squawks_seen uuid[] NOT NULL,
        conditions_accepted text[] NOT NULL,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT dispatches_booking_uq UNIQUE (club_id, booking_id, number),
        CONSTRAINT dispatches_booking_fk FOREIGN KEY (club_id, booking_id) REFERENCES bookings (club_id, id),
        CONSTRAINT dispatches_decision_fk FOREIGN KEY (club_id, decision_id) REFERENCES decisions (club_id, id),
        CONSTRAINT dispatches_by_fk FOREIGN KEY (club_id, dispatched_by) REFERENCES members (club_id, id)
      );
      ${tenantTable('dispatches', 'append-only')}

      -- A flight is handed out while it is booked, on an answer about this aircraft and this member that lets it go.
      CREATE FUNCTION dispatch_in_order() RETURNS trigger LANGUAGE plpgsql AS $$
        DECLARE b bookings; d decisions;
        BEGIN
          SELECT * INTO b FROM bookings WHERE club_id = NEW.club_id AND id = NEW.booking_id FOR UPDATE;
          IF FOUND AND (b.kind <> 'flight' OR b.status <> 'booked') THEN
            RAISE EXCEPTION 'not a flight that is booked'
              USING ERRCODE = 'check_violation', CONSTRAINT = 'dispatches_booked_chk', TABLE = 'dispatches';
          END IF;
          SELECT * INTO d FROM decisions WHERE club_id = NEW.club_id AND id = NEW.decision_id;
          IF FOUND AND b.id IS NOT NULL AND (d.aircraft_id <> b.aircraft_id OR d.member_id <> b.member_id OR NOT (
               d.answer IN ('yes', 'yes-with-conditions') OR (d.answer = 'ask-officer' AND EXISTS (
                 SELECT 1 FROM overrides o WHERE o.club_id = NEW.club_id AND o.booking_id = NEW.booking_id)))) THEN
            RAISE EXCEPTION 'the answer does not let the flight go'
              USING ERRCODE = 'check_violation', CONSTRAINT = 'dispatches_answer_chk', TABLE = 'dispatches';
          END IF;
          RETURN NEW;
        END $$;
      CREATE TRIGGER dispatches_order BEFORE INSERT ON dispatches FOR EACH ROW EXECUTE FUNCTION dispatch_in_order();

      CREATE TABLE dispatch_meters (
        club_id uuid NOT NULL, dispatch_id uuid NOT NULL,
        kind text NOT NULL CONSTRAINT dispatch_meters_kind_chk CHECK (kind IN ('hobbs', 'tachometer', 'airframe')),
        -- The reading it was confirmed against, or the new one where the meter had gone on.
        reading_id uuid NOT NULL,
        -- Running total when the aircraft went out.
        total_tenths integer NOT NULL,
        gap_tenths integer NOT NULL DEFAULT 0 CONSTRAINT dispatch_meters_gap_chk CHECK (gap_tenths >= 0),
        gap_because text CONSTRAINT dispatch_meters_because_chk
          CHECK (gap_because IN ('flight-not-entered', 'engine-run', 'misread-before', 'not-known')),
        gap_note text CONSTRAINT dispatch_meters_note_chk CHECK (length(btrim(gap_note)) BETWEEN 3 AND 500),
        PRIMARY KEY (club_id, dispatch_id, kind),
        CONSTRAINT dispatch_meters_dispatch_fk FOREIGN KEY (club_id, dispatch_id) REFERENCES dispatches (club_id, id),
        CONSTRAINT dispatch_meters_reading_fk FOREIGN KEY (club_id, reading_id) REFERENCES meter_readings (club_id, id),
        -- A gap is resolved, not ignored: whoever finds one says what it is.
        CONSTRAINT dispatch_meters_resolved_chk CHECK (num_nonnulls(gap_because, gap_note) = CASE WHEN gap_tenths > 0 THEN 2 ELSE 0 END)
      );
      ${tenantTable('dispatch_meters', 'append-only')}

      CREATE TABLE dispatch_voids (
        club_id uuid NOT NULL, dispatch_id uuid NOT NULL,
        voided_by uuid NOT NULL,
        reason text NOT NULL CONSTRAINT dispatch_voids_reason_chk CHECK (length(btrim(reason)) >= 5),
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, dispatch_id),
        CONSTRAINT dispatch_voids_dispatch_fk FOREIGN KEY (club_id, dispatch_id) REFERENCES dispatches (club_id, id),
        CONSTRAINT dispatch_voids_by_fk FOREIGN KEY (club_id, voided_by) REFERENCES members (club_id, id)
      );
      ${tenantTable('dispatch_voids', 'append-only')}

      -- The flight as it was flown. A correction is a record of its own that stands in the place of the one before.
      CREATE TABLE returns (
        club_id uuid NOT NULL, id uuid NOT NULL,
        booking_id uuid NOT NULL,
        dispatch_id uuid NOT NULL,
        replaces_id uuid,
        because text CONSTRAINT returns_because_chk CHECK (length(btrim(because)) >= 5),
        returned_by uuid NOT NULL,
        returned_at timestamptz NOT NULL,
        departed_at timestamptz NOT NULL,
        arrived_at timestamptz NOT NULL,
        from_airfield text NOT NULL,
        to_airfield text NOT NULL,
        fuel_us_gal numeric(5, 1) CONSTRAINT returns_fuel_chk CHECK (fuel_us_gal BETWEEN 0 AND 500),
        fuel_bought_us_gal numeric(5, 1) NOT NULL DEFAULT 0 CONSTRAINT returns_bought_chk CHECK (fuel_bought_us_gal BETWEEN 0 AND 500),
        -- In hundredths of the club's currency.
        fuel_paid_cents integer NOT NULL DEFAULT 0 CONSTRAINT returns_paid_chk CHECK (fuel_paid_cents BETWEEN 0 AND 10000000),
        oil_added_qt numeric(4, 1) NOT NULL DEFAULT 0 CONSTRAINT returns_oil_chk CHECK (oil_added_qt BETWEEN 0 AND 60),
        payer_id uuid NOT NULL,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT returns_booking_fk FOREIGN KEY (club_id, booking_id) REFERENCES bookings (club_id, id),
        CONSTRAINT returns_dispatch_fk FOREIGN KEY (club_id, dispatch_id) REFERENCES dispatches (club_id, id),
        CONSTRAINT returns_replaces_fk FOREIGN KEY (club_id, replaces_id) REFERENCES returns (club_id, id),
        CONSTRAINT returns_by_fk FOREIGN KEY (club_id, returned_by) REFERENCES members (club_id, id),
        CONSTRAINT returns_payer_fk FOREIGN KEY (club_id, payer_id) REFERENCES members (club_id, id),
        CONSTRAINT returns_span_chk CHECK (arrived_at > departed_at),
        CONSTRAINT returns_corrected_chk CHECK ((replaces_id IS NULL) = (because IS NULL)),
        CONSTRAINT returns_replaces_uq UNIQUE (club_id, replaces_id)
      );
      -- However often it is sent: a flight comes back once.
      CREATE UNIQUE INDEX returns_once_uq ON returns (club_id, booking_id) WHERE replaces_id IS NULL;
      ${tenantTable('returns', 'append-only')}

      CREATE FUNCTION return_in_order() RETURNS trigger LANGUAGE plpgsql AS $$
        DECLARE b bookings; r returns;
        BEGIN
          SELECT * INTO b FROM bookings WHERE club_id = NEW.club_id AND id = NEW.booking_id FOR UPDATE;
          IF NEW.replaces_id IS NULL THEN
            IF FOUND AND b.status <> 'dispatched' THEN
              RAISE EXCEPTION 'not a flight that is out'
                USING ERRCODE = 'check_violation', CONSTRAINT = 'returns_out_chk', TABLE = 'returns';
            END IF;
          ELSE
            SELECT * INTO r FROM returns WHERE club_id = NEW.club_id AND id = NEW.replaces_id;
            IF FOUND AND r.booking_id <> NEW.booking_id THEN
              RAISE EXCEPTION 'a correction of another flight'
                USING ERRCODE = 'check_violation', CONSTRAINT = 'returns_same_flight_chk', TABLE = 'returns';
            END IF;
          END IF;
          RETURN NEW;
        END $$;
      CREATE TRIGGER returns_order BEFORE INSERT ON returns FOR EACH ROW EXECUTE FUNCTION return_in_order();

      CREATE TABLE return_meters (
        club_id uuid NOT NULL, return_id uuid NOT NULL,
        kind text NOT NULL CONSTRAINT return_meters_kind_chk CHECK (kind IN ('hobbs', 'tachometer', 'airframe')),
        reading_id uuid NOT NULL,
        -- Running totals: hours flown are the difference.
        out_tenths integer NOT NULL,
        in_tenths integer NOT NULL,
        PRIMARY KEY (club_id, return_id, kind),
        CONSTRAINT return_meters_return_fk FOREIGN KEY (club_id, return_id) REFERENCES returns (club_id, id),
        CONSTRAINT return_meters_reading_fk FOREIGN KEY (club_id, reading_id) REFERENCES meter_readings (club_id, id),
        CONSTRAINT return_meters_forward_chk CHECK (in_tenths >= out_tenths)
      );
      ${tenantTable('return_meters', 'append-only')}

      -- Log entries that came from a return, as it gave them: a correction changes what it changes, and nothing the member wrote since.
      CREATE TABLE return_entries (
        club_id uuid NOT NULL, return_id uuid NOT NULL,
        member_id uuid NOT NULL,
        log_entry_id uuid NOT NULL,
        given jsonb NOT NULL CONSTRAINT return_entries_given_chk CHECK (jsonb_typeof(given) = 'object'),
        PRIMARY KEY (club_id, return_id, member_id),
        CONSTRAINT return_entries_return_fk FOREIGN KEY (club_id, return_id) REFERENCES returns (club_id, id),
        CONSTRAINT return_entries_member_fk FOREIGN KEY (club_id, member_id) REFERENCES members (club_id, id),
        CONSTRAINT return_entries_log_fk FOREIGN KEY (club_id, log_entry_id) REFERENCES log_entries (club_id, id)
      );
      ${tenantTable('return_entries', 'append-only')}

      -- The flight that an entry of the log came from.
      ALTER TABLE log_entries ADD COLUMN booking_id uuid,
        ADD CONSTRAINT log_entries_booking_fk FOREIGN KEY (club_id, booking_id) REFERENCES bookings (club_id, id);
      CREATE UNIQUE INDEX log_entries_flight_uq ON log_entries (club_id, booking_id, member_id)
        WHERE booking_id IS NOT NULL AND voided_at IS NULL;

      -- Named people who are told of an aircraft that is overdue, each after so many minutes.
      CREATE TABLE overdue_contacts (
        club_id uuid NOT NULL, member_id uuid NOT NULL,
        after_minutes integer NOT NULL CONSTRAINT overdue_contacts_after_chk CHECK (after_minutes BETWEEN 0 AND 1440),
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, member_id),
        CONSTRAINT overdue_contacts_member_fk FOREIGN KEY (club_id, member_id) REFERENCES members (club_id, id) ON DELETE CASCADE
      );
      ${tenantTable('overdue_contacts')}

      -- Aircraft that are out, and when somebody has to be told next; ids and times only, since sweeps see every club's.
      CREATE TABLE aircraft_out (
        club_id uuid NOT NULL, booking_id uuid NOT NULL,
        due_back_at timestamptz NOT NULL,
        look_at timestamptz NOT NULL,
        PRIMARY KEY (club_id, booking_id),
        CONSTRAINT aircraft_out_booking_fk FOREIGN KEY (club_id, booking_id) REFERENCES bookings (club_id, id) ON DELETE CASCADE
      );
      CREATE INDEX aircraft_out_look_ix ON aircraft_out (look_at);
      ${tenantTable('aircraft_out')}
      CREATE POLICY aircraft_out_sweep ON aircraft_out FOR SELECT USING (bellcrank_club() IS NULL);

      CREATE TABLE overdue_alerts (
        club_id uuid NOT NULL, id uuid NOT NULL,
        booking_id uuid NOT NULL,
        dispatch_id uuid NOT NULL,
        member_id uuid NOT NULL,
        stage text NOT NULL CONSTRAINT overdue_alerts_stage_chk CHECK (stage IN ('crew', 'named', 'officers')),
        due_back_at timestamptz NOT NULL,
        told_at timestamptz NOT NULL,
        seen_at timestamptz,
        PRIMARY KEY (club_id, id),
        CONSTRAINT overdue_alerts_booking_fk FOREIGN KEY (club_id, booking_id) REFERENCES bookings (club_id, id),
        CONSTRAINT overdue_alerts_dispatch_fk FOREIGN KEY (club_id, dispatch_id) REFERENCES dispatches (club_id, id),
        CONSTRAINT overdue_alerts_member_fk FOREIGN KEY (club_id, member_id) REFERENCES members (club_id, id),
        CONSTRAINT overdue_alerts_late_chk CHECK (told_at >= due_back_at),
        CONSTRAINT overdue_alerts_seen_chk CHECK (seen_at >= told_at),
        -- Everybody is told once, whichever replica looks and however often.
        CONSTRAINT overdue_alerts_once_uq UNIQUE (club_id, dispatch_id, member_id)
      );
      CREATE INDEX overdue_alerts_member_ix ON overdue_alerts (club_id, member_id, id);
      ${tenantTable('overdue_alerts')}
    `);
    await giveStartingValues(runner, DISPATCH_STARTING_VALUES);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      DROP TABLE overdue_alerts; DROP TABLE aircraft_out; DROP TABLE overdue_contacts;
      DROP TABLE return_entries; DROP TABLE return_meters; DROP TABLE returns; DROP FUNCTION return_in_order();
      DROP TABLE dispatch_voids; DROP TABLE dispatch_meters; DROP TABLE dispatches; DROP FUNCTION dispatch_in_order();
      DROP INDEX log_entries_flight_uq; DROP INDEX bookings_out_uq;
      ALTER TABLE log_entries DROP COLUMN booking_id;
    `);
  }
}
