import type { MigrationInterface, QueryRunner } from 'typeorm';
import {
  auditedTable,
  factTable,
  giveStartingValues,
  tenantTable,
  versionedTable,
  type StartingValue,
} from './support.js';

/** Club numbers of this migration with what a club starts with, and the section of the handbook. */
export const SHARING_VALUES: StartingValue[] = [
  ['club.fair-use.open-bookings', 0, '4.4'],
  ['club.fair-use.hours-ahead', 0, '4.4'],
  ['club.fair-use.weekend-bookings', 0, '4.4'],
  ['club.instructor-hours.refuse-outside', false, '4.5'],
  ['club.standby.offer-hours', 4, '4.6'],
  ['club.standby.least-notice-hours', 1, '4.6'],
  ['club.standby.hold-slot', true, '4.6'],
  ['club.standby.fewest-hours-first', false, '4.6'],
  ['club.fit.condition', 30, '4.7'],
  ['club.fit.empty-seat', 10, '4.7'],
  ['club.fit.scarce-feature', 25, '4.7'],
  ['club.fit.odd-hour', 10, '4.7'],
];

/** Hours in which instructors teach; who waits for a slot, and to whom one that came free is offered. */
export class Standby1764000000028 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      -- Each week on one weekday, or on one date instead of that week's; without times: away all that date.
      CREATE TABLE teaching_hours (
        club_id uuid NOT NULL, id uuid NOT NULL, member_id uuid NOT NULL,
        kind text NOT NULL CONSTRAINT teaching_hours_kind_chk CHECK (kind IN ('weekly', 'date')),
        weekday integer CONSTRAINT teaching_hours_weekday_chk CHECK (weekday BETWEEN 1 AND 7),
        on_date date,
        opens_minutes integer,
        closes_minutes integer,
        valid_from date,
        valid_through date,
        row_version integer NOT NULL DEFAULT 1,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT teaching_hours_member_fk FOREIGN KEY (club_id, member_id) REFERENCES members (club_id, id),
        CONSTRAINT teaching_hours_shape_chk CHECK (CASE kind
          WHEN 'weekly' THEN weekday IS NOT NULL AND on_date IS NULL AND valid_from IS NOT NULL AND opens_minutes IS NOT NULL
          ELSE weekday IS NULL AND on_date IS NOT NULL AND valid_from IS NULL AND valid_through IS NULL END),
        CONSTRAINT teaching_hours_minutes_chk CHECK ((opens_minutes IS NULL) = (closes_minutes IS NULL)
          AND opens_minutes >= 0 AND closes_minutes <= 1440 AND closes_minutes > opens_minutes),
        CONSTRAINT teaching_hours_span_chk CHECK (valid_through >= valid_from)
      );
      CREATE INDEX teaching_hours_member_ix ON teaching_hours (club_id, member_id);
      ${factTable('teaching_hours')}
      CREATE TRIGGER teaching_hours_noted AFTER INSERT OR UPDATE OR DELETE ON teaching_hours
        FOR EACH ROW EXECUTE FUNCTION note_fact_change('person', 'member_id', 'teachingHours');

      -- Who would fly if an aircraft came free. No aircraft: any that will do.
      CREATE TABLE standby_entries (
        club_id uuid NOT NULL, id uuid NOT NULL, member_id uuid NOT NULL,
        aircraft_id uuid,
        during tstzrange NOT NULL,
        request jsonb NOT NULL,
        note text NOT NULL DEFAULT '' CONSTRAINT standby_entries_note_chk CHECK (length(note) <= 500),
        state text NOT NULL DEFAULT 'waiting' CONSTRAINT standby_entries_state_chk
          CHECK (state IN ('waiting', 'booked', 'withdrawn', 'over')),
        -- The place in the order; an offer that is left to expire puts to the back.
        placed_at timestamptz NOT NULL,
        row_version integer NOT NULL DEFAULT 1,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT standby_entries_member_fk FOREIGN KEY (club_id, member_id) REFERENCES members (club_id, id),
        CONSTRAINT standby_entries_aircraft_fk FOREIGN KEY (club_id, aircraft_id) REFERENCES aircraft (club_id, id),
        CONSTRAINT standby_entries_during_chk CHECK (NOT isempty(during) AND lower(during) IS NOT NULL AND upper(during) IS NOT NULL
          AND lower_inc(during) AND NOT upper_inc(during)
          AND upper(during) - lower(during) BETWEEN interval '15 minutes' AND interval '400 days'),
        -- Nobody waits twice for the same time.
        CONSTRAINT standby_entries_once EXCLUDE USING gist (club_id WITH =, member_id WITH =, during WITH &&) WHERE (state = 'waiting')
      );
      CREATE INDEX standby_entries_waiting_ix ON standby_entries (club_id, placed_at, id) WHERE state = 'waiting';
      ${tenantTable('standby_entries')}${versionedTable('standby_entries')}${auditedTable('standby_entries')}

      CREATE TABLE standby_offers (
        club_id uuid NOT NULL, id uuid NOT NULL, entry_id uuid NOT NULL, member_id uuid NOT NULL, aircraft_id uuid NOT NULL,
        during tstzrange NOT NULL,
        state text NOT NULL DEFAULT 'open' CONSTRAINT standby_offers_state_chk
          CHECK (state IN ('open', 'accepted', 'declined', 'expired', 'withdrawn')),
        -- Whether nobody else may book the slot meanwhile.
        holds boolean NOT NULL,
        decision_id uuid NOT NULL,
        booking_id uuid,
        made_at timestamptz NOT NULL,
        expires_at timestamptz NOT NULL,
        answered_at timestamptz,
        row_version integer NOT NULL DEFAULT 1,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT standby_offers_entry_fk FOREIGN KEY (club_id, entry_id) REFERENCES standby_entries (club_id, id),
        CONSTRAINT standby_offers_member_fk FOREIGN KEY (club_id, member_id) REFERENCES members (club_id, id),
        CONSTRAINT standby_offers_aircraft_fk FOREIGN KEY (club_id, aircraft_id) REFERENCES aircraft (club_id, id),
        CONSTRAINT standby_offers_decision_fk FOREIGN KEY (club_id, decision_id) REFERENCES decisions (club_id, id),
        CONSTRAINT standby_offers_booking_fk FOREIGN KEY (club_id, booking_id) REFERENCES bookings (club_id, id),
        CONSTRAINT standby_offers_answered_chk CHECK ((state = 'open') = (answered_at IS NULL)),
        CONSTRAINT standby_offers_booked_chk CHECK ((state = 'accepted') = (booking_id IS NOT NULL)),
        CONSTRAINT standby_offers_expiry_chk CHECK (expires_at > made_at AND expires_at <= lower(during)),
        -- A slot is offered to one member at a time, and a member is offered one at a time.
        CONSTRAINT standby_offers_slot_excl EXCLUDE USING gist (club_id WITH =, aircraft_id WITH =, during WITH &&) WHERE (state = 'open'),
        CONSTRAINT standby_offers_one_open EXCLUDE USING gist (club_id WITH =, entry_id WITH =) WHERE (state = 'open'),
        CONSTRAINT standby_offers_one_booked EXCLUDE USING gist (club_id WITH =, entry_id WITH =) WHERE (state = 'accepted'),
        CONSTRAINT standby_offers_booking_uq UNIQUE (club_id, booking_id)
      );
      CREATE INDEX standby_offers_entry_ix ON standby_offers (club_id, entry_id);
      ${tenantTable('standby_offers')}${versionedTable('standby_offers')}${auditedTable('standby_offers')}

      -- An offer is answered once, and nothing else of it changes.
      CREATE FUNCTION standby_offers_kept() RETURNS trigger LANGUAGE plpgsql AS $$
        BEGIN
          IF OLD.state = 'open'
             AND to_jsonb(NEW) - ARRAY['state', 'answered_at', 'booking_id', 'row_version']
               = to_jsonb(OLD) - ARRAY['state', 'answered_at', 'booking_id', 'row_version'] THEN RETURN NEW; END IF;
          RAISE EXCEPTION 'an offer is answered once' USING ERRCODE = 'check_violation',
            CONSTRAINT = 'standby_offers_kept_chk', TABLE = 'standby_offers';
        END $$;
      CREATE TRIGGER standby_offers_kept BEFORE UPDATE ON standby_offers FOR EACH ROW EXECUTE FUNCTION standby_offers_kept();

      -- A slot kept for somebody is booked by nobody else. Maintenance and the club's own use go before.
      CREATE FUNCTION bookings_held() RETURNS trigger LANGUAGE plpgsql AS $$
        BEGIN
          IF NEW.kind = 'flight' AND NEW.status = 'booked' AND EXISTS (SELECT 1 FROM standby_offers o
              WHERE o.club_id = NEW.club_id AND o.aircraft_id = NEW.aircraft_id AND o.state = 'open' AND o.holds
                AND o.during && NEW.during AND o.member_id <> NEW.member_id) THEN
            RAISE EXCEPTION 'the slot is kept for somebody it is offered to' USING ERRCODE = 'check_violation',
              CONSTRAINT = 'bookings_held_chk', TABLE = 'bookings';
          END IF;
          RETURN NEW;
        END $$;
      CREATE TRIGGER bookings_held_in BEFORE INSERT ON bookings FOR EACH ROW EXECUTE FUNCTION bookings_held();
      CREATE TRIGGER bookings_held_moved BEFORE UPDATE ON bookings FOR EACH ROW
        WHEN (OLD.during IS DISTINCT FROM NEW.during OR OLD.aircraft_id IS DISTINCT FROM NEW.aircraft_id)
        EXECUTE FUNCTION bookings_held();

      -- When somebody has to look whom to offer what. Rows are only added, so that nobody waits for anybody here.
      CREATE TABLE standby_wakes (
        club_id uuid NOT NULL REFERENCES clubs (club_id) ON DELETE CASCADE,
        id bigint GENERATED ALWAYS AS IDENTITY,
        due_at timestamptz NOT NULL,
        PRIMARY KEY (club_id, id)
      );
      ${tenantTable('standby_wakes')}
      -- Whoever looks which clubs are due speaks for no club yet, and sees ids and times only.
      CREATE POLICY standby_wakes_sweep ON standby_wakes FOR SELECT USING (bellcrank_club() IS NULL);

      CREATE FUNCTION standby_wake(club uuid) RETURNS void LANGUAGE plpgsql AS $$
        BEGIN
          IF EXISTS (SELECT 1 FROM standby_entries WHERE club_id = club AND state = 'waiting') THEN
            INSERT INTO standby_wakes (club_id, due_at) VALUES (club, '-infinity');
            PERFORM pg_notify('bellcrank_standby', club::text);
          END IF;
        END $$;

      -- Time of an aircraft came free, whoever freed it and how.
      CREATE FUNCTION bookings_freed() RETURNS trigger LANGUAGE plpgsql AS $$
        BEGIN
          IF OLD.occupies AND (TG_OP = 'DELETE' OR NEW.status NOT IN ('booked', 'dispatched')
              OR NEW.aircraft_id <> OLD.aircraft_id OR NOT NEW.during @> OLD.during) THEN
            PERFORM standby_wake(OLD.club_id);
          END IF;
          RETURN NULL;
        END $$;
      CREATE TRIGGER bookings_freed AFTER UPDATE OR DELETE ON bookings FOR EACH ROW EXECUTE FUNCTION bookings_freed();

      CREATE FUNCTION standby_changed() RETURNS trigger LANGUAGE plpgsql AS $$
        BEGIN PERFORM standby_wake(NEW.club_id); RETURN NULL; END $$;
      CREATE TRIGGER standby_entries_wake AFTER INSERT ON standby_entries FOR EACH ROW EXECUTE FUNCTION standby_changed();
      CREATE TRIGGER standby_offers_wake AFTER UPDATE ON standby_offers FOR EACH ROW
        WHEN (OLD.state = 'open' AND NEW.state IN ('declined', 'expired', 'withdrawn')) EXECUTE FUNCTION standby_changed();
    `);
    await giveStartingValues(runner, SHARING_VALUES);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      DROP TRIGGER bookings_freed ON bookings; DROP TRIGGER bookings_held_in ON bookings; DROP TRIGGER bookings_held_moved ON bookings;
      DROP TABLE standby_wakes; DROP TABLE standby_offers; DROP TABLE standby_entries; DROP TABLE teaching_hours;
      DROP FUNCTION standby_changed(); DROP FUNCTION bookings_freed(); DROP FUNCTION standby_wake(uuid);
      DROP FUNCTION bookings_held(); DROP FUNCTION standby_offers_kept();
    `);
  }
}
