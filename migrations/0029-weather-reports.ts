import type { MigrationInterface, QueryRunner } from 'typeorm';
import { tenantTable } from './support.js';

/** Weather reports and forecasts as they were got, word for word; what a decision read of them stands in its facts. */
export class WeatherReports1764000000029 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      CREATE TABLE weather_reports (
        club_id uuid NOT NULL, id uuid NOT NULL, airfield_id uuid NOT NULL,
        kind text NOT NULL CONSTRAINT weather_reports_kind_chk CHECK (kind IN ('metar', 'taf')),
        text text NOT NULL CONSTRAINT weather_reports_text_chk CHECK (btrim(text) <> '' AND length(text) <= 2000),
        -- Observed or issued; the text tells the day of the month only.
        issued_at timestamptz NOT NULL,
        valid_from timestamptz,
        valid_to timestamptz,
        -- Pasted for the flights of a member; null: fetched, and good for everybody.
        member_id uuid,
        pasted_by uuid,
        obtained_at timestamptz NOT NULL,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT weather_reports_airfield_fk FOREIGN KEY (club_id, airfield_id) REFERENCES airfields (club_id, id) ON DELETE CASCADE,
        CONSTRAINT weather_reports_member_fk FOREIGN KEY (club_id, member_id) REFERENCES members (club_id, id),
        CONSTRAINT weather_reports_paster_fk FOREIGN KEY (club_id, pasted_by) REFERENCES members (club_id, id),
        CONSTRAINT weather_reports_source_chk CHECK ((member_id IS NULL) = (pasted_by IS NULL)),
        CONSTRAINT weather_reports_span_chk CHECK (CASE WHEN kind = 'taf' THEN (valid_from IS NULL) = (valid_to IS NULL)
          AND (valid_to > valid_from) IS NOT FALSE ELSE num_nonnulls(valid_from, valid_to) = 0 END),
        -- Got again, it is the same report.
        CONSTRAINT weather_reports_once UNIQUE NULLS NOT DISTINCT (club_id, airfield_id, kind, issued_at, member_id, text)
      );
      ${tenantTable('weather_reports')}
      -- A text stays as it was; it goes when it is old, since decisions keep what they read.
      CREATE FUNCTION weather_reports_kept() RETURNS trigger LANGUAGE plpgsql AS $$
        BEGIN
          RAISE EXCEPTION 'a weather report stays as it was written'
            USING ERRCODE = 'check_violation', CONSTRAINT = 'weather_reports_kept_chk', TABLE = 'weather_reports';
        END $$;
      CREATE TRIGGER weather_reports_kept BEFORE UPDATE ON weather_reports FOR EACH ROW EXECUTE FUNCTION weather_reports_kept();
      CREATE TRIGGER weather_reports_noted AFTER INSERT OR UPDATE OR DELETE ON weather_reports FOR EACH ROW
        EXECUTE FUNCTION note_fact_change('airfield', 'airfield_id', '');
    `);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP TABLE weather_reports; DROP FUNCTION weather_reports_kept();');
  }
}
