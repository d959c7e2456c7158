import type { MigrationInterface, QueryRunner } from 'typeorm';
import { tenantTable } from './support.js';

/**
 * Which facts changed in which transaction, for whoever remembers facts between questions: what was gathered under a snapshot still
 * stands while no mark that concerns it was made by a transaction the snapshot does not show. `fact_changes` cannot tell, since its
 * rows go as soon as standing answers were judged again. Two changes that nobody noted so far are noted too: of a model, for whoever
 * is insured by hours in retractable ones, and of the aircraft or the hold of a booking, for its crew.
 */
export class FactMarks1764000000038 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      CREATE TABLE fact_marks (
        club_id uuid NOT NULL REFERENCES clubs (club_id) ON DELETE CASCADE,
        noted_by xid8 NOT NULL DEFAULT pg_current_xact_id(),
        subject text NOT NULL CONSTRAINT fact_marks_subject_chk CHECK (subject ~ '^[a-z]+:[^: ]+(:[A-Za-z]+)?$'),
        recorded_at timestamptz NOT NULL DEFAULT now(),
        -- A transaction that changes one fact a thousand times says so once, and two transactions never wait for each other here.
        PRIMARY KEY (club_id, noted_by, subject)
      );
      ${tenantTable('fact_marks')}
      -- An administrator who mends rows by hand speaks for no club, and cascades then write as the tables' owner.
      CREATE POLICY fact_marks_by_hand ON fact_marks FOR INSERT WITH CHECK (bellcrank_club() IS NULL);

      CREATE OR REPLACE FUNCTION note_fact(club uuid, what text) RETURNS void LANGUAGE plpgsql AS $$
        BEGIN
          INSERT INTO fact_changes (club_id, subject)
          SELECT club, what WHERE NOT EXISTS (
            SELECT 1 FROM fact_changes WHERE club_id = club AND subject = what AND noted_by = pg_current_xact_id());
          INSERT INTO fact_marks (club_id, subject) VALUES (club, what) ON CONFLICT DO NOTHING;
          PERFORM pg_notify('bellcrank_facts', club::text);
        END $$;

      -- Insurance asks for hours in retractable models, whichever those are.
      CREATE FUNCTION note_insured_by_model() RETURNS trigger LANGUAGE plpgsql AS $$
        DECLARE plane uuid; club uuid;
        BEGIN
          IF TG_OP = 'UPDATE' AND OLD.retractable_gear IS NOT DISTINCT FROM NEW.retractable_gear THEN RETURN NULL; END IF;
          club := CASE WHEN TG_OP = 'DELETE' THEN OLD.club_id ELSE NEW.club_id END;
          FOR plane IN SELECT DISTINCT t.aircraft_id FROM insurance_terms t WHERE t.club_id = club LOOP
            PERFORM note_fact(club, 'aircraft:' || plane || ':insurance');
          END LOOP;
          RETURN NULL;
        END $$;
      -- A commitment names the aircraft of its booking, and a hold counts until it runs out.
      CREATE FUNCTION note_crew_of_booking() RETURNS trigger LANGUAGE plpgsql AS $$
        DECLARE person uuid;
        BEGIN
          FOR person IN SELECT p.member_id FROM booking_people p WHERE p.club_id = NEW.club_id AND p.booking_id = NEW.id LOOP
            PERFORM note_fact(NEW.club_id, 'person:' || person || ':commitments');
          END LOOP;
          RETURN NULL;
        END $$;
      CREATE TRIGGER bookings_crew_noted AFTER UPDATE ON bookings FOR EACH ROW
        WHEN (OLD.aircraft_id IS DISTINCT FROM NEW.aircraft_id OR OLD.hold_until IS DISTINCT FROM NEW.hold_until
          OR OLD.recorded_at IS DISTINCT FROM NEW.recorded_at)
        EXECUTE FUNCTION note_crew_of_booking();
      CREATE TRIGGER aircraft_models_insured AFTER INSERT OR UPDATE OR DELETE ON aircraft_models
        FOR EACH ROW EXECUTE FUNCTION note_insured_by_model();
    `);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      DROP TRIGGER bookings_crew_noted ON bookings; DROP FUNCTION note_crew_of_booking();
      DROP TRIGGER aircraft_models_insured ON aircraft_models; DROP FUNCTION note_insured_by_model();
      CREATE OR REPLACE FUNCTION note_fact(club uuid, what text) RETURNS void LANGUAGE plpgsql AS $$
        BEGIN
          INSERT INTO fact_changes (club_id, subject)
          SELECT club, what WHERE NOT EXISTS (
            SELECT 1 FROM fact_changes WHERE club_id = club AND subject = what AND noted_by = pg_current_xact_id());
          PERFORM pg_notify('bellcrank_facts', club::text);
        END $$;
      DROP TABLE fact_marks;
    `);
  }
}
