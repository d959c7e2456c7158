import type { MigrationInterface, QueryRunner } from 'typeorm';

/** What a club starts with for the weather, given to clubs that are there already, as in 0025. */
export const WEATHER_VALUES: [parameter: string, value: number, section: string][] = [
  ['club.weather.ceiling-ft', 1000, '6.3'],
  ['club.weather.visibility-sm', 3, '6.3'],
  ['club.weather.report-hours', 2, '6.3'],
  ['club.weather.forecast-hours', 7, '6.3'],
];

export class WeatherValues1764000000030 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    const values = JSON.stringify(
      WEATHER_VALUES.map(([id, value, section]) => ({
        ...{ id, value, reference: `Club handbook, section ${section}` },
      })),
    );
    // The owner is bound by row-level security too: it may look which clubs there are, and then speaks for each in turn.
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
