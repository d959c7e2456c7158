import type { MigrationInterface, QueryRunner } from 'typeorm';
import { factTable, tenantTable } from './support.js';

/** Decisions with the facts they rest on, bookings, the people they occupy, overrides, idempotency keys. */
export class Bookings1764000000005 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      -- Parts of fact sheets by their digest: the seven decisions of one question share the person's part.
      CREATE TABLE fact_parts (
        club_id uuid NOT NULL REFERENCES clubs (club_id),
        digest text NOT NULL,
        body text NOT NULL,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, digest),
        CONSTRAINT fact_parts_body_chk CHECK (encode(sha256(convert_to(body, 'UTF8')), 'hex') = digest)
      );
      ${tenantTable('fact_parts', 'append-only')}

      CREATE TABLE decisions (
        club_id uuid NOT NULL, id uuid NOT NULL,
        member_id uuid NOT NULL,
        aircraft_id uuid NOT NULL,
        asked_by uuid NOT NULL,
        known_at timestamptz NOT NULL,
        as_of timestamptz NOT NULL,
        answer text NOT NULL CONSTRAINT decisions_answer_chk
          CHECK (answer IN ('yes', 'yes-with-conditions', 'dual-only', 'ask-officer', 'no')),
        horizon_until timestamptz,
        -- Which facts were read: standing decisions are found by them.
        fact_keys text[] NOT NULL,
        -- Digests into fact_parts: sheet head, people by id, aircraft, policy.
        parts jsonb NOT NULL,
        rules jsonb NOT NULL,
        digest text NOT NULL CONSTRAINT decisions_digest_chk CHECK (digest ~ '^[0-9a-f]{64}$'),
        -- The decision as canonical JSON, byte for byte as it was given.
        body text NOT NULL,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT decisions_member_fk FOREIGN KEY (club_id, member_id) REFERENCES members (club_id, id),
        CONSTRAINT decisions_aircraft_fk FOREIGN KEY (club_id, aircraft_id) REFERENCES aircraft (club_id, id),
        CONSTRAINT decisions_asked_fk FOREIGN KEY (club_id, asked_by) REFERENCES members (club_id, id)
      );
      CREATE INDEX decisions_member_ix ON decisions (club_id, member_id, id);
      ${tenantTable('decisions', 'append-only')}

      CREATE TABLE bookings (
        club_id uuid NOT NULL, id uuid NOT NULL,
        kind text NOT NULL CONSTRAINT bookings_kind_chk CHECK (kind IN ('flight', 'maintenance', 'club')),
        aircraft_id uuid NOT NULL,
        member_id uuid NOT NULL,
        during tstzrange NOT NULL,
        status text NOT NULL DEFAULT 'booked' CONSTRAINT bookings_status_chk
          CHECK (status IN ('booked', 'dispatched', 'returned', 'cancelled')),
        -- Whether it takes up the aircraft and the people; the exclusion constraints read this and nothing else.
        occupies boolean NOT NULL GENERATED ALWAYS AS (status IN ('booked', 'dispatched')) STORED,
        expected_tenths integer NOT NULL CONSTRAINT bookings_expected_chk CHECK (expected_tenths BETWEEN 0 AND 2000),
        request jsonb NOT NULL,
        note text NOT NULL DEFAULT '',
        decision_id uuid,
        cancelled_at timestamptz,
        row_version integer NOT NULL DEFAULT 1,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT bookings_occupancy_uq UNIQUE (club_id, id, during, occupies),
        CONSTRAINT bookings_aircraft_fk FOREIGN KEY (club_id, aircraft_id) REFERENCES aircraft (club_id, id),
        CONSTRAINT bookings_member_fk FOREIGN KEY (club_id, member_id) REFERENCES members (club_id, id),
        CONSTRAINT bookings_decision_fk FOREIGN KEY (club_id, decision_id) REFERENCES decisions (club_id, id),
        -- An empty or unbounded range would slip through the exclusion constraint.
        CONSTRAINT bookings_during_chk CHECK (NOT isempty(during) AND lower(during) IS NOT NULL AND upper(during) IS NOT NULL
          AND lower_inc(during) AND NOT upper_inc(during)),
        CONSTRAINT bookings_length_chk CHECK (upper(during) - lower(during) BETWEEN interval '15 minutes' AND interval '400 days'),
        CONSTRAINT bookings_decided_chk CHECK (kind <> 'flight' OR decision_id IS NOT NULL),
        CONSTRAINT bookings_cancelled_chk CHECK ((status = 'cancelled') = (cancelled_at IS NOT NULL)),
        CONSTRAINT bookings_aircraft_excl EXCLUDE USING gist (club_id WITH =, aircraft_id WITH =, during WITH &&) WHERE (occupies)
      );
      CREATE INDEX bookings_member_ix ON bookings (club_id, member_id, id);
      CREATE INDEX bookings_during_ix ON bookings USING gist (club_id, during);
      ${factTable('bookings')}

      -- Who is taken up by a booking, in any role: nobody can be in two places. The cascade keeps it in step.
      CREATE TABLE booking_people (
        club_id uuid NOT NULL,
        booking_id uuid NOT NULL,
        member_id uuid NOT NULL,
        role text NOT NULL CONSTRAINT booking_people_role_chk CHECK (role IN ('pilot', 'instructor', 'second-pilot')),
        during tstzrange NOT NULL,
        occupies boolean NOT NULL,
        PRIMARY KEY (club_id, booking_id, member_id),
        CONSTRAINT booking_people_booking_fk FOREIGN KEY (club_id, booking_id, during, occupies)
          REFERENCES bookings (club_id, id, during, occupies) ON UPDATE CASCADE ON DELETE CASCADE,
        CONSTRAINT booking_people_member_fk FOREIGN KEY (club_id, member_id) REFERENCES members (club_id, id),
        CONSTRAINT booking_people_excl EXCLUDE USING gist (club_id WITH =, member_id WITH =, during WITH &&) WHERE (occupies)
      );
      ${tenantTable('booking_people')}

      -- An officer's override of club findings, per booking; never of law (the service's check, and the weight kept here).
      CREATE TABLE overrides (
        club_id uuid NOT NULL, id uuid NOT NULL,
        booking_id uuid NOT NULL,
        decision_id uuid NOT NULL,
        rule_id text NOT NULL,
        weight text NOT NULL CONSTRAINT overrides_weight_chk CHECK (weight = 'club'),
        officer_id uuid NOT NULL,
        reason text NOT NULL CONSTRAINT overrides_reason_chk CHECK (length(btrim(reason)) >= 10),
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT overrides_booking_fk FOREIGN KEY (club_id, booking_id) REFERENCES bookings (club_id, id),
        CONSTRAINT overrides_decision_fk FOREIGN KEY (club_id, decision_id) REFERENCES decisions (club_id, id),
        CONSTRAINT overrides_officer_fk FOREIGN KEY (club_id, officer_id) REFERENCES members (club_id, id),
        CONSTRAINT overrides_rule_uq UNIQUE (club_id, booking_id, decision_id, rule_id)
      );
      ${tenantTable('overrides', 'append-only')}

      CREATE TABLE idempotency_keys (
        club_id uuid NOT NULL,
        member_id uuid NOT NULL,
        key text NOT NULL CONSTRAINT idempotency_keys_key_chk CHECK (length(key) BETWEEN 1 AND 128),
        request_digest text NOT NULL,
        status integer NOT NULL,
        body text NOT NULL,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, member_id, key),
        CONSTRAINT idempotency_keys_member_fk FOREIGN KEY (club_id, member_id) REFERENCES members (club_id, id)
      );
      ${tenantTable('idempotency_keys')}
    `);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      DROP TABLE idempotency_keys; DROP TABLE overrides; DROP TABLE booking_people; DROP TABLE bookings;
      DROP TABLE decisions; DROP TABLE fact_parts;
    `);
  }
}
