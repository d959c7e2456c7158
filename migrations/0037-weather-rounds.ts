import type { MigrationInterface, QueryRunner } from 'typeorm';
import { giveStartingValues, tenantTable, type StartingValue } from './support.js';

/** What a club starts with for weather that is fetched by itself, given to clubs that are there already, as in 0025. */
export const WEATHER_ROUND_VALUES: StartingValue[] = [
  ['club.weather.fetch-ahead-hours', 6, '6.4'],
  ['club.weather.fetch-minutes', 60, '6.4'],
];

/** When the weather of an airfield was last fetched for booked flights, whatever came of it. */
export class WeatherRounds1764000000037 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      CREATE TABLE weather_fetches (
        club_id uuid NOT NULL, airfield_id uuid NOT NULL,
        fetched_at timestamptz NOT NULL,
        PRIMARY KEY (club_id, airfield_id),
        CONSTRAINT weather_fetches_airfield_fk FOREIGN KEY (club_id, airfield_id) REFERENCES airfields (club_id, id) ON DELETE CASCADE
      );
      ${tenantTable('weather_fetches')}
    `);
    await giveStartingValues(runner, WEATHER_ROUND_VALUES);
  }

  /** The numbers stay: a club may have built on them. */
  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP TABLE weather_fetches');
  }
}
