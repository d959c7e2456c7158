import type { MigrationInterface, QueryRunner } from 'typeorm';
import { factTable, giveStartingValues, tenantTable, type StartingValue } from './support.js';

/** Club numbers that came with changes of bookings, with what a club starts with and the section of the handbook. */
export const STARTING_VALUES_OF_BOOKING_CHANGES: StartingValue[] = [
  ['club.cancellation.lead-hours', 24, '4.3'],
  ['club.cancellation.late-reason', true, '4.3'],
  ['club.holds.hours', 48, '4.4'],
  ['club.holds.at-once', 5, '4.4'],
];

/** Bookings edited, handed over, given back with a reason, booked in a series, held for a checkout; blocks that displace. */
export class BookingChanges1764000000027 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      -- What was asked for when several flights were booked by one rule. The flights are bookings of their own.
      CREATE TABLE booking_series (
        club_id uuid NOT NULL, id uuid NOT NULL,
        member_id uuid NOT NULL,
        made_by uuid NOT NULL,
        -- RFC 5545, section 3.3.10; counted on the clock of this zone.
        recurrence text NOT NULL CONSTRAINT booking_series_recurrence_chk CHECK (recurrence ~ '^FREQ=(DAILY|WEEKLY|MONTHLY)(;[A-Z]+=[A-Z0-9,+-]+)*$'
          AND length(recurrence) <= 200),
        zone text NOT NULL CONSTRAINT booking_series_zone_chk CHECK (btrim(zone) <> ''),
        first_departs timestamptz NOT NULL,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT booking_series_member_fk FOREIGN KEY (club_id, member_id) REFERENCES members (club_id, id),
        CONSTRAINT booking_series_maker_fk FOREIGN KEY (club_id, made_by) REFERENCES members (club_id, id)
      );
      ${tenantTable('booking_series', 'append-only')}

      -- A hold keeps a slot for a checkout flight until it is judged, or until its time is up: its row then becomes the flight.
      ALTER TABLE bookings DROP CONSTRAINT bookings_kind_chk;
      ALTER TABLE bookings
        ADD CONSTRAINT bookings_kind_chk CHECK (kind IN ('flight', 'maintenance', 'club', 'hold')),
        ADD COLUMN series_id uuid,
        ADD COLUMN hold_until timestamptz,
        ADD COLUMN cancelled_by uuid,
        ADD COLUMN cancelled_late boolean NOT NULL DEFAULT false,
        ADD COLUMN cancel_reason text NOT NULL DEFAULT '' CONSTRAINT bookings_reason_chk CHECK (length(cancel_reason) <= 500),
        ADD CONSTRAINT bookings_series_fk FOREIGN KEY (club_id, series_id) REFERENCES booking_series (club_id, id),
        ADD CONSTRAINT bookings_canceller_fk FOREIGN KEY (club_id, cancelled_by) REFERENCES members (club_id, id),
        ADD CONSTRAINT bookings_hold_chk CHECK ((kind = 'hold') = (hold_until IS NOT NULL) AND hold_until <= lower(during)),
        -- Late is said of a flight that was given back; nothing else is said of what still stands.
        ADD CONSTRAINT bookings_late_chk CHECK ((status = 'cancelled' OR cancelled_by IS NULL AND NOT cancelled_late AND cancel_reason = '')
          AND (NOT cancelled_late OR kind = 'flight'));
      CREATE INDEX bookings_series_ix ON bookings (club_id, series_id) WHERE series_id IS NOT NULL;

      -- What was done to a booking, by whom, from what to what. Free text stays out of it.
      CREATE TABLE booking_changes (
        club_id uuid NOT NULL, id uuid NOT NULL, booking_id uuid NOT NULL,
        act text NOT NULL CONSTRAINT booking_changes_act_chk
          CHECK (act IN ('edited', 'handed-over', 'cancelled', 'displaced', 'confirmed', 'lapsed')),
        -- Null: nobody did it, its time was up.
        by_id uuid,
        before jsonb NOT NULL,
        after jsonb NOT NULL,
        -- Names of what else of the flight is another one now.
        also text[] NOT NULL DEFAULT '{}',
        -- The decision that the change was judged by.
        decision_id uuid,
        at timestamptz NOT NULL,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT booking_changes_booking_fk FOREIGN KEY (club_id, booking_id) REFERENCES bookings (club_id, id),
        CONSTRAINT booking_changes_by_fk FOREIGN KEY (club_id, by_id) REFERENCES members (club_id, id),
        CONSTRAINT booking_changes_decision_fk FOREIGN KEY (club_id, decision_id) REFERENCES decisions (club_id, id),
        CONSTRAINT booking_changes_other_chk CHECK (before <> after OR cardinality(also) > 0),
        CONSTRAINT booking_changes_by_chk CHECK ((by_id IS NULL) = (act = 'lapsed')),
        CONSTRAINT booking_changes_decided_chk CHECK (act NOT IN ('handed-over', 'confirmed') OR decision_id IS NOT NULL)
      );
      CREATE INDEX booking_changes_booking_ix ON booking_changes (club_id, booking_id, id);
      ${tenantTable('booking_changes', 'append-only')}

      -- Offers of a booking to another member; at most one is open for a booking.
      CREATE TABLE hand_overs (
        club_id uuid NOT NULL, id uuid NOT NULL, booking_id uuid NOT NULL,
        from_id uuid NOT NULL, to_id uuid NOT NULL, offered_by uuid NOT NULL,
        outcome text CONSTRAINT hand_overs_outcome_chk CHECK (outcome IN ('accepted', 'declined', 'withdrawn')),
        closed_at timestamptz,
        row_version integer NOT NULL DEFAULT 1,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT hand_overs_booking_fk FOREIGN KEY (club_id, booking_id) REFERENCES bookings (club_id, id),
        CONSTRAINT hand_overs_from_fk FOREIGN KEY (club_id, from_id) REFERENCES members (club_id, id),
        CONSTRAINT hand_overs_to_fk FOREIGN KEY (club_id, to_id) REFERENCES members (club_id, id),
        CONSTRAINT hand_overs_offered_fk FOREIGN KEY (club_id, offered_by) REFERENCES members (club_id, id),
        CONSTRAINT hand_overs_other_chk CHECK (from_id <> to_id),
        CONSTRAINT hand_overs_closed_chk CHECK ((outcome IS NULL) = (closed_at IS NULL))
      );
      CREATE UNIQUE INDEX hand_overs_open_uq ON hand_overs (club_id, booking_id) WHERE outcome IS NULL;
      CREATE INDEX hand_overs_to_ix ON hand_overs (club_id, to_id) WHERE outcome IS NULL;
      ${factTable('hand_overs')}

      -- Flights make room for a block of the club or of maintenance as they do for a visit to the shop.
      ALTER TABLE displacements ALTER COLUMN order_id DROP NOT NULL, ADD COLUMN block_id uuid,
        ADD CONSTRAINT displacements_block_fk FOREIGN KEY (club_id, aircraft_id, block_id) REFERENCES bookings (club_id, aircraft_id, id),
        ADD CONSTRAINT displacements_for_chk CHECK (num_nonnulls(order_id, block_id) = 1);
    `);
    await giveStartingValues(runner, STARTING_VALUES_OF_BOOKING_CHANGES);
  }

  /** The numbers stay: a club may have built on them. */
  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      -- The owner is bound by row-level security too, and here it speaks for every club.
      ALTER TABLE displacements NO FORCE ROW LEVEL SECURITY, DISABLE TRIGGER USER;
      DELETE FROM displacements WHERE block_id IS NOT NULL;
      ALTER TABLE displacements FORCE ROW LEVEL SECURITY, ENABLE TRIGGER USER;
      ALTER TABLE displacements DROP COLUMN block_id, ALTER COLUMN order_id SET NOT NULL;
      DROP TABLE hand_overs; DROP TABLE booking_changes;
      ALTER TABLE bookings DROP CONSTRAINT bookings_kind_chk, DROP CONSTRAINT bookings_hold_chk, DROP CONSTRAINT bookings_late_chk;
      ALTER TABLE bookings NO FORCE ROW LEVEL SECURITY, DISABLE TRIGGER USER;
      UPDATE bookings SET kind = 'club', status = 'cancelled', cancelled_at = coalesce(cancelled_at, now()) WHERE kind = 'hold';
      ALTER TABLE bookings FORCE ROW LEVEL SECURITY, ENABLE TRIGGER USER;
      ALTER TABLE bookings DROP COLUMN series_id, DROP COLUMN hold_until, DROP COLUMN cancelled_by, DROP COLUMN cancelled_late,
        DROP COLUMN cancel_reason,
        ADD CONSTRAINT bookings_kind_chk CHECK (kind IN ('flight', 'maintenance', 'club'));
      DROP TABLE booking_series;
    `);
  }
}
