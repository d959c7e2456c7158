import type { MigrationInterface, QueryRunner } from 'typeorm';
import { auditedTable, factTable, tenantTable } from './support.js';

/** The log: one entry per person and flight; and the club's sign-offs. Hours in tenths. */
export class Log1764000000004 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      CREATE TABLE log_entries (
        club_id uuid NOT NULL, id uuid NOT NULL, member_id uuid NOT NULL,
        aircraft_id uuid,
        model_id uuid,
        -- As flown; kept with the entry, so that a later change of the aircraft does not rewrite the log.
        aircraft_words text NOT NULL CONSTRAINT log_entries_aircraft_chk CHECK (btrim(aircraft_words) <> ''),
        category text NOT NULL CONSTRAINT log_entries_category_chk
          CHECK (category IN ('airplane', 'rotorcraft', 'glider', 'lighter-than-air', 'powered-lift')),
        class text NOT NULL,
        type_rating text,
        tailwheel boolean NOT NULL,
        departed_at timestamptz NOT NULL,
        arrived_at timestamptz NOT NULL,
        -- The date at the place where the flight began.
        flown_on date NOT NULL,
        from_airfield text NOT NULL,
        to_airfield text NOT NULL,
        role text NOT NULL CONSTRAINT log_entries_role_chk
          CHECK (role IN ('pilot-in-command', 'second-in-command', 'dual-received', 'instructor', 'solo')),
        sole_manipulator boolean NOT NULL,
        takeoffs smallint NOT NULL CONSTRAINT log_entries_takeoffs_chk CHECK (takeoffs >= 0),
        landings smallint NOT NULL CONSTRAINT log_entries_landings_chk CHECK (landings >= 0),
        full_stop_landings smallint NOT NULL,
        night_takeoffs smallint NOT NULL,
        night_full_stop_landings smallint NOT NULL,
        approaches smallint NOT NULL DEFAULT 0 CONSTRAINT log_entries_approaches_chk CHECK (approaches >= 0),
        holding boolean NOT NULL DEFAULT false,
        intercept_track boolean NOT NULL DEFAULT false,
        device text CONSTRAINT log_entries_device_chk
          CHECK (device IN ('full-flight-simulator', 'flight-training-device', 'aviation-training-device')),
        total_tenths integer NOT NULL CONSTRAINT log_entries_total_chk CHECK (total_tenths >= 0),
        night_tenths integer NOT NULL DEFAULT 0 CONSTRAINT log_entries_night_hours_chk CHECK (night_tenths BETWEEN 0 AND total_tenths),
        dual_given_tenths integer NOT NULL DEFAULT 0 CONSTRAINT log_entries_dual_chk CHECK (dual_given_tenths BETWEEN 0 AND total_tenths),
        remarks text NOT NULL DEFAULT '',
        row_version integer NOT NULL DEFAULT 1,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        voided_at timestamptz,
        PRIMARY KEY (club_id, id),
        CONSTRAINT log_entries_member_fk FOREIGN KEY (club_id, member_id) REFERENCES members (club_id, id),
        CONSTRAINT log_entries_aircraft_fk FOREIGN KEY (club_id, aircraft_id) REFERENCES aircraft (club_id, id),
        CONSTRAINT log_entries_model_fk FOREIGN KEY (club_id, model_id) REFERENCES aircraft_models (club_id, id),
        CONSTRAINT log_entries_span_chk CHECK (arrived_at > departed_at),
        CONSTRAINT log_entries_full_stop_chk CHECK (full_stop_landings BETWEEN 0 AND landings),
        CONSTRAINT log_entries_night_takeoffs_chk CHECK (night_takeoffs BETWEEN 0 AND takeoffs),
        CONSTRAINT log_entries_night_landings_chk CHECK (night_full_stop_landings BETWEEN 0 AND full_stop_landings)
      );
      CREATE INDEX log_entries_member_ix ON log_entries (club_id, member_id, departed_at DESC);
      ${factTable('log_entries')}

      -- A signed checkout is never edited; a correction voids it and is a new record.
      CREATE TABLE checkouts (
        club_id uuid NOT NULL, id uuid NOT NULL, member_id uuid NOT NULL,
        kind text NOT NULL CONSTRAINT checkouts_kind_chk CHECK (kind IN ('model', 'differences', 'annual-check')),
        model_id uuid,
        aircraft_id uuid,
        signed_on date NOT NULL,
        expires_on date,
        signed_by uuid NOT NULL,
        remarks text NOT NULL DEFAULT '',
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT checkouts_member_fk FOREIGN KEY (club_id, member_id) REFERENCES members (club_id, id),
        CONSTRAINT checkouts_model_fk FOREIGN KEY (club_id, model_id) REFERENCES aircraft_models (club_id, id),
        CONSTRAINT checkouts_aircraft_fk FOREIGN KEY (club_id, aircraft_id) REFERENCES aircraft (club_id, id),
        CONSTRAINT checkouts_signer_fk FOREIGN KEY (club_id, signed_by) REFERENCES members (club_id, id),
        CONSTRAINT checkouts_own_chk CHECK (signed_by <> member_id),
        CONSTRAINT checkouts_span_chk CHECK (expires_on IS NULL OR expires_on >= signed_on),
        CONSTRAINT checkouts_shape_chk CHECK (CASE kind
          WHEN 'model' THEN model_id IS NOT NULL
          WHEN 'differences' THEN aircraft_id IS NOT NULL
          ELSE model_id IS NULL AND aircraft_id IS NULL END)
      );
      CREATE INDEX checkouts_member_ix ON checkouts (club_id, member_id);
      ${tenantTable('checkouts', 'append-only')}
      ${auditedTable('checkouts')}

      CREATE TABLE checkout_voids (
        club_id uuid NOT NULL, checkout_id uuid NOT NULL,
        voided_by uuid NOT NULL,
        reason text NOT NULL CONSTRAINT checkout_voids_reason_chk CHECK (btrim(reason) <> ''),
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, checkout_id),
        CONSTRAINT checkout_voids_checkout_fk FOREIGN KEY (club_id, checkout_id) REFERENCES checkouts (club_id, id),
        CONSTRAINT checkout_voids_by_fk FOREIGN KEY (club_id, voided_by) REFERENCES members (club_id, id)
      );
      ${tenantTable('checkout_voids', 'append-only')}
    `);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP TABLE checkout_voids; DROP TABLE checkouts; DROP TABLE log_entries;');
  }
}
