import type { MigrationInterface, QueryRunner } from 'typeorm';
import { giveStartingValues, type StartingValue } from './support.js';

/** What a club starts with for the weather, given to clubs that are there already, as in 0025. */
export const WEATHER_VALUES: StartingValue[] = [
  ['club.weather.ceiling-ft', 1000, '6.3'],
  ['club.weather.visibility-sm', 3, '6.3'],
  ['club.weather.report-hours', 2, '6.3'],
  ['club.weather.forecast-hours', 7, '6.3'],
];

export class WeatherValues1764000000030 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await giveStartingValues(runner, WEATHER_VALUES);
  }

  /** Nothing: the club may have built on them, and they cannot be told from rows it wrote itself. */
  async down(): Promise<void> {}
}
