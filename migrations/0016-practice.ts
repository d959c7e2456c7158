import type { MigrationInterface, QueryRunner } from 'typeorm';
import { tenantTable } from './support.js';

const MANOEUVRES = `'steep_turn', 'slow_flight', 'power_off_stall_straight', 'power_off_stall_turning', 'power_on_stall_straight',
'power_on_stall_turning', 'normal_landing', 'short_field_landing', 'soft_field_landing', 'forward_slip_landing',
'power_off_180_landing', 'approach_speed', 'traffic_pattern', 'ground_reference', 'normal_takeoff_climb',
'short_field_takeoff_climb', 'soft_field_takeoff_climb', 'go_around', 'basic_instrument', 'chandelle', 'lazy_eight',
'steep_spiral', 'holding', 'instrument_flight', 'intercept_and_track', 'dme_arc', 'approach_before_final',
'nonprecision_final', 'precision_final', 'missed_approach', 'circling'`;

/** Manoeuvres practised. Nothing is edited: a correction is a record of its own that takes the other's place. */
export class Practice1764000000016 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      -- So that a practice record can name a log entry of the same person only.
      ALTER TABLE log_entries ADD CONSTRAINT log_entries_owner_uq UNIQUE (club_id, member_id, id);

      CREATE TABLE practice_records (
        club_id uuid NOT NULL, id uuid NOT NULL, member_id uuid NOT NULL,
        -- In the club's zone.
        flown_on date NOT NULL,
        manoeuvre text NOT NULL CONSTRAINT practice_records_manoeuvre_chk CHECK (manoeuvre IN (${MANOEUVRES})),
        seen_by text NOT NULL CONSTRAINT practice_records_seen_chk CHECK (seen_by IN ('self', 'instructor')),
        instructor_id uuid,
        recorded_by uuid NOT NULL,
        -- Null: not recorded, which does not count as flown in it.
        crosswind_kt double precision CONSTRAINT practice_records_crosswind_chk CHECK (crosswind_kt BETWEEN 0 AND 80),
        gust_spread_kt double precision CONSTRAINT practice_records_gust_chk CHECK (gust_spread_kt BETWEEN 0 AND 80),
        night boolean,
        runway_ft integer CONSTRAINT practice_records_runway_chk CHECK (runway_ft BETWEEN 100 AND 20000),
        equipment text[] CONSTRAINT practice_records_equipment_chk CHECK (cardinality(equipment) <= 20),
        -- {"altitudeDevFt": {"least": -40, "most": 60}}: the unit is in the measure's name.
        measured jsonb NOT NULL CONSTRAINT practice_records_measured_chk CHECK (jsonb_typeof(measured) = 'object'
          AND NOT jsonb_path_exists(measured, '$.* ? (!(@.least.type() == "number") || !(@.most.type() == "number") || @.least > @.most)')),
        -- What who saw it says, apart from what was measured.
        to_standard boolean,
        level text NOT NULL CONSTRAINT practice_records_level_chk CHECK (level IN ('private', 'commercial', 'instrument')),
        -- The judgement as it was given, with the document and its figures.
        verdict jsonb NOT NULL,
        -- Null where nothing was outside and something was not measured, or nothing is published.
        within boolean,
        note text NOT NULL DEFAULT '' CONSTRAINT practice_records_note_chk CHECK (length(note) <= 2000),
        log_entry_id uuid,
        -- The file it was read from and the event in it, where it was.
        track_sha256 text CONSTRAINT practice_records_track_chk CHECK (track_sha256 ~ '^[0-9a-f]{64}$'),
        track_event text CONSTRAINT practice_records_event_chk CHECK (track_event ~ '^[a-z]+(-[a-z]+)*-[0-9]{1,5}$'),
        corrects uuid,
        because text CONSTRAINT practice_records_because_chk CHECK (length(btrim(because)) BETWEEN 5 AND 500),
        -- A correction that leaves nothing in the other's place.
        withdraws boolean NOT NULL DEFAULT false,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT practice_records_owner_uq UNIQUE (club_id, member_id, id),
        CONSTRAINT practice_records_corrects_uq UNIQUE (club_id, corrects),
        CONSTRAINT practice_records_track_uq UNIQUE (club_id, member_id, track_sha256, track_event),
        CONSTRAINT practice_records_member_fk FOREIGN KEY (club_id, member_id) REFERENCES members (club_id, id),
        CONSTRAINT practice_records_instructor_fk FOREIGN KEY (club_id, instructor_id) REFERENCES members (club_id, id),
        CONSTRAINT practice_records_recorder_fk FOREIGN KEY (club_id, recorded_by) REFERENCES members (club_id, id),
        CONSTRAINT practice_records_log_fk FOREIGN KEY (club_id, member_id, log_entry_id)
          REFERENCES log_entries (club_id, member_id, id),
        CONSTRAINT practice_records_corrects_fk FOREIGN KEY (club_id, member_id, corrects)
          REFERENCES practice_records (club_id, member_id, id),
        CONSTRAINT practice_records_instructor_chk CHECK ((seen_by = 'instructor') = (instructor_id IS NOT NULL)),
        CONSTRAINT practice_records_own_chk CHECK (seen_by = 'self' OR (instructor_id <> member_id AND recorded_by <> member_id)),
        CONSTRAINT practice_records_pair_chk CHECK ((track_sha256 IS NULL) = (track_event IS NULL)),
        CONSTRAINT practice_records_itself_chk CHECK (corrects <> id),
        CONSTRAINT practice_records_correction_chk CHECK ((corrects IS NULL) = (because IS NULL) AND (corrects IS NOT NULL OR NOT withdraws)),
        CONSTRAINT practice_records_verdict_chk CHECK (
          jsonb_typeof(verdict -> 'status') IS NOT DISTINCT FROM 'string'
          AND within IS NOT DISTINCT FROM CASE jsonb_typeof(verdict -> 'within') WHEN 'boolean' THEN (verdict ->> 'within')::boolean END)
      );
      CREATE INDEX practice_records_member_ix ON practice_records (club_id, member_id, flown_on DESC, id DESC);
      ${tenantTable('practice_records', 'append-only')}
      CREATE TRIGGER practice_records_audit AFTER INSERT ON practice_records FOR EACH ROW EXECUTE FUNCTION audit_row();

      -- No law asks for them: they go when the member is erased, within that transaction and in no other way.
      CREATE FUNCTION practice_records_kept() RETURNS trigger LANGUAGE plpgsql AS $$
        BEGIN
          IF TG_OP = 'DELETE' AND EXISTS (SELECT 1 FROM erasures e WHERE e.club_id = OLD.club_id
               AND e.member_id = OLD.member_id AND e.recorded_at = transaction_timestamp()) THEN
            RETURN OLD;
          END IF;
          RAISE EXCEPTION 'practice_records is append-only'
            USING ERRCODE = 'check_violation', CONSTRAINT = 'practice_records_append_only';
        END $$;
      DROP TRIGGER practice_records_append_only ON practice_records;
      CREATE TRIGGER practice_records_append_only BEFORE UPDATE OR DELETE ON practice_records
        FOR EACH ROW EXECUTE FUNCTION practice_records_kept();
      GRANT DELETE ON practice_records TO bellcrank_app;

      -- What an instructor signed is corrected under an instructor's name only; what was withdrawn is not corrected further.
      CREATE FUNCTION practice_correction_fits() RETURNS trigger LANGUAGE plpgsql AS $$
        DECLARE
          old practice_records;
        BEGIN
          SELECT * INTO old FROM practice_records WHERE club_id = NEW.club_id AND id = NEW.corrects;
          IF FOUND AND (old.withdraws OR (old.seen_by = 'instructor' AND NEW.seen_by <> 'instructor')) THEN
            RAISE EXCEPTION 'a signed record is corrected by an instructor, a withdrawn one not at all'
              USING ERRCODE = 'check_violation', CONSTRAINT = 'practice_records_signed_chk', TABLE = 'practice_records';
          END IF;
          RETURN NEW;
        END $$;
      CREATE TRIGGER practice_records_signed BEFORE INSERT ON practice_records
        FOR EACH ROW WHEN (NEW.corrects IS NOT NULL) EXECUTE FUNCTION practice_correction_fits();
    `);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      DROP TABLE practice_records;
      DROP FUNCTION practice_correction_fits(); DROP FUNCTION practice_records_kept();
      ALTER TABLE log_entries DROP CONSTRAINT log_entries_owner_uq;
    `);
  }
}
