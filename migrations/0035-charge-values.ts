import type { MigrationInterface, QueryRunner } from 'typeorm';
import { giveStartingValues, type StartingValue } from './support.js';

/** Club numbers of the accounts with what a club starts with, for clubs that are there already (see 0025). */
export const CHARGE_VALUES: StartingValue[] = [
  ['club.charges.currency', 'USD', '2.6'],
  ['club.charges.due-days', 30, '2.6'],
  ['club.charges.arrears-limit', 0, '2.6'],
  ['club.charges.day-away-hours', 0, '2.6'],
];

export class ChargeValues1764000000035 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await giveStartingValues(runner, CHARGE_VALUES);
  }

  /** Nothing: the club may have built on them, and they cannot be told from rows it wrote itself. */
  async down(): Promise<void> {}
}
