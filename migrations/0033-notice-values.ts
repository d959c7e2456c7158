import type { MigrationInterface, QueryRunner } from 'typeorm';
import { giveStartingValues, type StartingValue } from './support.js';

/** Numbers of notices, for clubs that are there already: as 0025 does. */
export const NOTICE_VALUES: StartingValue[] = [
  ['club.notices.gather-minutes', 3, '9.1'],
  ['club.notices.lapse-lead-days', '30, 7, 1', '9.2'],
  ['club.notices.maintenance-lead-days', '30, 7', '9.2'],
  ['club.notices.maintenance-lead-hours', '10', '9.2'],
];

export class NoticeValues1764000000033 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await giveStartingValues(runner, NOTICE_VALUES);
  }

  /** Nothing: the club may have built on them, and they cannot be told from rows it wrote itself. */
  async down(): Promise<void> {}
}
