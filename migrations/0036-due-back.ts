import type { MigrationInterface, QueryRunner } from 'typeorm';

/** The time an aircraft is due back may be put off: everybody is told once of each time that passed without it. */
export class DueBack1764000000036 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      ALTER TABLE overdue_alerts DROP CONSTRAINT overdue_alerts_once_uq,
        ADD CONSTRAINT overdue_alerts_once_uq UNIQUE (club_id, dispatch_id, member_id, due_back_at);
    `);
  }

  /** Of several alerts the first stays. */
  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      -- The owner is bound by row-level security too, and here it speaks for every club.
      ALTER TABLE overdue_alerts NO FORCE ROW LEVEL SECURITY;
      DELETE FROM overdue_alerts x WHERE EXISTS (SELECT 1 FROM overdue_alerts y
        WHERE y.club_id = x.club_id AND y.dispatch_id = x.dispatch_id AND y.member_id = x.member_id AND y.id < x.id);
      ALTER TABLE overdue_alerts FORCE ROW LEVEL SECURITY;
      ALTER TABLE overdue_alerts DROP CONSTRAINT overdue_alerts_once_uq,
        ADD CONSTRAINT overdue_alerts_once_uq UNIQUE (club_id, dispatch_id, member_id);
    `);
  }
}
