import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Numbers of notices, for clubs that are there already: as 0025 does. */
export const NOTICE_VALUES: [parameter: string, value: number | string, section: string][] = [
  ['club.notices.gather-minutes', 3, '9.1'],
  ['club.notices.lapse-lead-days', '30, 7, 1', '9.2'],
  ['club.notices.maintenance-lead-days', '30, 7', '9.2'],
  ['club.notices.maintenance-lead-hours', '10', '9.2'],
];

export class NoticeValues1764000000033 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    const values = JSON.stringify(
      NOTICE_VALUES.map(([id, value, section]) => ({
        ...{ id, value, reference: `Club handbook, section ${section}` },
      })),
    );
    await runner.query('ALTER TABLE clubs NO FORCE ROW LEVEL SECURITY');
    const clubs: { id: string }[] = await runner.query('SELECT club_id AS id FROM clubs ORDER BY club_id');
    await runner.query('ALTER TABLE clubs FORCE ROW LEVEL SECURITY');
    for (const { id } of clubs) {
      await runner.query("SELECT set_config('bellcrank.club_id', $1, true)", [id]);
      await runner.query(
        `INSERT INTO policy_values (club_id, id, parameter_id, valid_from, value, reference)
         SELECT $1, gen_random_uuid(), v.id, DATE '2000-01-01', v.value, v.reference
           FROM jsonb_to_recordset($2::jsonb) AS v (id text, value jsonb, reference text)
          WHERE NOT EXISTS (SELECT 1 FROM policy_values p WHERE p.club_id = $1 AND p.parameter_id = v.id)`,
        [id, values],
      );
    }
    await runner.query("SELECT set_config('bellcrank.club_id', '', true)");
  }

  /** Nothing: the club may have built on them, and they cannot be told from rows it wrote itself. */
  async down(): Promise<void> {}
}
