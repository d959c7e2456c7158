import type { MigrationInterface, QueryRunner } from 'typeorm';
import { factTable } from './support.js';

/** Upgrades the club wishes for, which ride along with shop visits. */
export class UpgradeWishes1764000000010 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      CREATE TABLE upgrade_wishes (
        club_id uuid NOT NULL, id uuid NOT NULL, aircraft_id uuid NOT NULL,
        title text NOT NULL CONSTRAINT upgrade_wishes_title_chk CHECK (btrim(title) <> '' AND length(title) <= 200),
        shop_days double precision NOT NULL CONSTRAINT upgrade_wishes_days_chk CHECK (shop_days > 0 AND shop_days <= 60),
        -- Hours of flying it is worth to the club.
        worth_hours double precision NOT NULL CONSTRAINT upgrade_wishes_worth_chk CHECK (worth_hours >= 0),
        -- Day the parts are there; null: they are.
        parts_on date,
        with_annual boolean NOT NULL DEFAULT true,
        done_on date,
        row_version integer NOT NULL DEFAULT 1,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT upgrade_wishes_aircraft_fk FOREIGN KEY (club_id, aircraft_id) REFERENCES aircraft (club_id, id)
      );
      CREATE INDEX upgrade_wishes_aircraft_ix ON upgrade_wishes (club_id, aircraft_id);
      ${factTable('upgrade_wishes')}
    `);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP TABLE upgrade_wishes');
  }
}
