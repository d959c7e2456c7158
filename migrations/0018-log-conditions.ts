import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Conditions of a logged flight: cross-country, and instrument time actual and simulated. Hours in tenths. */
export class LogConditions1764000000018 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      ALTER TABLE log_entries
        ADD COLUMN cross_country_tenths integer NOT NULL DEFAULT 0
          CONSTRAINT log_entries_cross_country_chk CHECK (cross_country_tenths BETWEEN 0 AND total_tenths),
        ADD COLUMN actual_instrument_tenths integer NOT NULL DEFAULT 0
          CONSTRAINT log_entries_actual_chk CHECK (actual_instrument_tenths BETWEEN 0 AND total_tenths),
        -- Under a view-limiting device, or in a training device: never at the same time as in cloud.
        ADD COLUMN simulated_instrument_tenths integer NOT NULL DEFAULT 0
          CONSTRAINT log_entries_simulated_chk
          CHECK (simulated_instrument_tenths BETWEEN 0 AND total_tenths - actual_instrument_tenths);
    `);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      ALTER TABLE log_entries
        DROP COLUMN simulated_instrument_tenths, DROP COLUMN actual_instrument_tenths, DROP COLUMN cross_country_tenths;
    `);
  }
}
