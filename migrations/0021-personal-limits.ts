import type { MigrationInterface, QueryRunner } from 'typeorm';
import { tenantTable } from './support.js';

/** Limits that members set themselves beyond the law, and those that instructors set for students. */
export class PersonalLimits1764000000021 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      CREATE TABLE personal_limits (
        club_id uuid NOT NULL, id uuid NOT NULL, member_id uuid NOT NULL,
        -- The member, or the instructor who set them for the member.
        set_by uuid NOT NULL,
        -- First day they hold, in the club's zone. Of one side's rows the one written last counts from that day on.
        valid_from date NOT NULL,
        -- An instructor's: through when they bind whoever is no student any more. Null: students only.
        binds_through date,
        -- Null: no such limit is set.
        wind_kt integer CONSTRAINT personal_limits_wind_chk CHECK (wind_kt BETWEEN 0 AND 80),
        crosswind_kt integer CONSTRAINT personal_limits_crosswind_chk CHECK (crosswind_kt BETWEEN 0 AND 80),
        gust_spread_kt integer CONSTRAINT personal_limits_gust_chk CHECK (gust_spread_kt BETWEEN 0 AND 80),
        ceiling_day_ft_agl integer CONSTRAINT personal_limits_ceiling_day_chk CHECK (ceiling_day_ft_agl BETWEEN 0 AND 20000),
        ceiling_night_ft_agl integer CONSTRAINT personal_limits_ceiling_night_chk CHECK (ceiling_night_ft_agl BETWEEN 0 AND 20000),
        visibility_day_sm double precision CONSTRAINT personal_limits_visibility_day_chk CHECK (visibility_day_sm BETWEEN 0 AND 50),
        visibility_night_sm double precision CONSTRAINT personal_limits_visibility_night_chk CHECK (visibility_night_sm BETWEEN 0 AND 50),
        runway_ft integer CONSTRAINT personal_limits_runway_chk CHECK (runway_ft BETWEEN 100 AND 20000),
        -- False: no flying at night.
        night boolean,
        note text NOT NULL DEFAULT '' CONSTRAINT personal_limits_note_chk CHECK (length(note) <= 2000),
        -- The second it was written and not when its transaction began: the order of rows hangs on it.
        recorded_at timestamptz NOT NULL DEFAULT clock_timestamp(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT personal_limits_member_fk FOREIGN KEY (club_id, member_id) REFERENCES members (club_id, id),
        CONSTRAINT personal_limits_setter_fk FOREIGN KEY (club_id, set_by) REFERENCES members (club_id, id),
        CONSTRAINT personal_limits_through_chk CHECK (binds_through IS NULL OR (set_by <> member_id AND binds_through >= valid_from))
      );
      CREATE INDEX personal_limits_member_ix ON personal_limits (club_id, member_id, recorded_at, id);
      ${tenantTable('personal_limits', 'append-only')}
      CREATE TRIGGER personal_limits_audit AFTER INSERT ON personal_limits FOR EACH ROW EXECUTE FUNCTION audit_row();

      -- No law asks for them: they go when the member is erased, within that transaction and in no other way.
      CREATE FUNCTION personal_limits_kept() RETURNS trigger LANGUAGE plpgsql AS $$
        BEGIN
          IF TG_OP = 'DELETE' AND EXISTS (SELECT 1 FROM erasures e WHERE e.club_id = OLD.club_id
               AND e.member_id = OLD.member_id AND e.recorded_at = transaction_timestamp()) THEN
            RETURN OLD;
          END IF;
          RAISE EXCEPTION 'personal_limits is append-only'
            USING ERRCODE = 'check_violation', CONSTRAINT = 'personal_limits_append_only';
        END $$;
      DROP TRIGGER personal_limits_append_only ON personal_limits;
      CREATE TRIGGER personal_limits_append_only BEFORE UPDATE OR DELETE ON personal_limits
        FOR EACH ROW EXECUTE FUNCTION personal_limits_kept();
      GRANT DELETE ON personal_limits TO bellcrank_app;
    `);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP TABLE personal_limits; DROP FUNCTION personal_limits_kept();');
  }
}
