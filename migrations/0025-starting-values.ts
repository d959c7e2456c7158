import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Club numbers with what a club starts with, and the section of the handbook. A club that was made before a number existed has no
 * row of it, and everything that asks for it would be unknown: it gets the starting value. A number added later needs a
 * migration of its own like this one (test/rules/starting-values.spec.ts).
 */
export const STARTING_VALUES: [parameter: string, value: boolean | number | string, section: string][] = [
  ['club.model-checkout.required', true, '3.1'],
  ['club.model-checkout.instructors-too', true, '3.1'],
  ['club.model-checkout.like-models', false, '3.1'],
  ['club.model-recency.days', 60, '3.2'],
  ['club.model-recency.landings', 3, '3.2'],
  ['club.annual-check.days', 365, '3.3'],
  ['club.annual-check.instructors-too', true, '3.3'],
  ['club.differences-checkout.required', true, '3.4'],
  ['club.differences-checkout.elsewhere-counts', false, '3.4'],
  ['club.differences-checkout.instructors-too', true, '3.4'],
  ['club.equipment-checkout.glass-panel', false, '3.5'],
  ['club.equipment-checkout.autopilot', false, '3.5'],
  ['club.equipment-checkout.gps-navigator', false, '3.5'],
  ['club.equipment-checkout.instructors-too', true, '3.5'],
  ['club.condition-checkout.night', false, '3.6'],
  ['club.condition-checkout.mountain-ft', 0, '3.6'],
  ['club.condition-checkout.short-field-ft', 0, '3.6'],
  ['club.condition-checkout.grass', false, '3.6'],
  ['club.condition-checkout.crosswind-kt', 0, '3.6'],
  ['club.condition-checkout.instructors-too', true, '3.6'],
  ['club.booking-length.local-hours', 10, '4.1'],
  ['club.booking-length.trip-days', 14, '4.1'],
  ['club.booking-length.instruction-hours', 10, '4.1'],
  ['club.booking-lead.min-hours', 0, '4.2'],
  ['club.booking-lead.max-days', 60, '4.2'],
  ['club.standing.arrears-days', 30, '2.2'],
  ['club.crew.second-pilot-is-passenger', true, '5.1'],
  ['club.override.allowed', true, '6.1'],
  ['club.papers.unverified-count', false, '2.3'],
  ['club.insurance.required', false, '8.1'],
  ['club.identity.required', false, '2.4'],
  ['club.identity.days-good', 0, '2.4'],
  ['club.background.required', false, '2.4'],
  ['club.background.days-good', 0, '2.4'],
  ['club.citizenship.required-for-training', false, '2.5'],
  ['club.citizenship.days-good', 0, '2.5'],
  ['club.airworthiness.kept-under', '', '7.1'],
  ['club.loading.kept-minutes', 60, '6.1'],
  ['club.runway.margin-factor', 1.33, '6.2'],
  ['club.runway.weather-hours', 2, '6.2'],
  ['club.practice.first-half-life-days', 30, '8.2'],
  ['club.practice.growth', 1.5, '8.2'],
  ['club.practice.longest-half-life-days', 180, '8.2'],
  ['club.practice.spacing-days', 5, '8.2'],
  ['club.practice.counted-days', 730, '8.2'],
  ['club.practice.outside-share', 0.5, '8.2'],
  ['club.practice.rust-from', 0.35, '8.2'],
  ['club.practice.dual-from', 0.85, '8.2'],
  ['club.practice.weight-rust', 1, '8.2'],
  ['club.practice.weight-booking', 2, '8.2'],
  ['club.practice.weight-checkout', 3, '8.2'],
  ['club.practice.booking-half-days', 14, '8.2'],
  ['club.practice.repetition-share', 0.5, '8.2'],
  ['club.practice.crosswind-kt', 8, '8.2'],
  ['club.practice.gust-kt', 8, '8.2'],
  ['club.practice.short-runway-ft', 2500, '8.2'],
  ['club.practice.transit-minutes', 20, '8.2'],
  ['club.practice.own-word', false, '8.2'],
  ['club.limits.looser-after-days', 1, '8.3'],
  ['club.limits.suggested-days', 180, '8.3'],
  ['club.shop.bays', 2, '7.3'],
  ['club.shop.days-per-week', 5, '7.3'],
  ['club.shop.days-in-all', 10, '7.3'],
  ['club.shop.lead-weeks', 1, '7.3'],
  ['club.shop.longest-weeks', 6, '7.3'],
  ['club.shop.days-annual', 4, '7.3'],
  ['club.shop.days-hundred-hour', 2, '7.3'],
  ['club.shop.days-other', 1, '7.3'],
  ['club.shop.trainers-kept', 1, '7.3'],
  ['club.season.booked-hour', 1, '7.4'],
  ['club.season.expected-hour', 0.5, '7.4'],
  ['club.season.week-of-life', 0.4, '7.4'],
  ['club.season.week-overdue', 10, '7.4'],
  ['club.season.visit', 3, '7.4'],
  ['club.season.wish-hour', 0.5, '7.4'],
  ['club.squawks.deferral-days', 30, '7.2'],
  ['club.checkouts.quiz-wait-hours', 24, '3.7'],
  ['club.checkouts.ending-days', 60, '3.7'],
  ['club.cost.currency', 'dollars', '7.1'],
  ['club.cost.aircraft-hour', 150, '7.1'],
  ['club.cost.instructor-hour', 60, '7.1'],
  ['club.cost.medical-exam', 140, '7.1'],
  ['club.cost.physician', 90, '7.1'],
  ['club.cost.practical-test', 750, '7.1'],
  ['club.cost.course', 130, '7.1'],
  ['club.cost.document', 30, '7.1'],
  ['club.cost.annual', 1600, '7.2'],
  ['club.cost.hundred-hour', 600, '7.2'],
  ['club.cost.test', 350, '7.2'],
  ['club.cost.items', 300, '7.2'],
  ['club.cost.repair', 300, '7.2'],
  ['club.cost.fitting', 2000, '7.2'],
  ['club.cost.hours.sortie', 0.4, '7.3'],
  ['club.cost.hours.longest', 3, '7.3'],
  ['club.cost.hours.landing', 0.2, '7.3'],
  ['club.cost.hours.review', 1, '7.3'],
  ['club.cost.hours.review-ground', 1, '7.3'],
  ['club.cost.hours.check', 1.2, '7.3'],
  ['club.cost.hours.differences', 0.6, '7.3'],
  ['club.cost.hours.instrument', 2, '7.3'],
  ['club.cost.hours.training', 3, '7.3'],
  ['club.cost.hours.test', 1.5, '7.3'],
  ['club.cost.hours.test-ground', 2.5, '7.3'],
  ['club.cost.hours.appointment', 2, '7.3'],
  ['club.cost.hours.course', 16, '7.3'],
  ['club.cost.hours.office', 0.5, '7.3'],
  ['club.cost.points.passenger-left', 80, '7.4'],
  ['club.cost.points.hour-moved', 15, '7.4'],
  ['club.cost.points.other-aircraft', 25, '7.4'],
  ['club.cost.points.instructor', 40, '7.4'],
  ['club.cost.points.instructor-to-find', 15, '7.4'],
  ['club.cost.points.plan-changed', 20, '7.4'],
  ['club.cost.points.others-asked', 70, '7.4'],
  ['club.cost.points.officer', 50, '7.4'],
  ['club.cost.value-of-hour', 25, '7.5'],
  ['club.cost.value-of-day', 5, '7.5'],
  ['club.cost.value-of-point', 1, '7.5'],
  ['club.lead.alone', 1, '7.6'],
  ['club.lead.instructor', 3, '7.6'],
  ['club.lead.examiner', 21, '7.6'],
  ['club.lead.medical', 7, '7.6'],
  ['club.lead.course', 7, '7.6'],
  ['club.lead.inspection', 7, '7.6'],
  ['club.lead.repair', 3, '7.6'],
  ['club.lead.fitting', 21, '7.6'],
  ['club.lead.document', 10, '7.6'],
  ['club.lead.office', 1, '7.6'],
  ['club.lead.others', 1, '7.6'],
];

export class StartingValues1764000000025 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    const values = JSON.stringify(
      STARTING_VALUES.map(([id, value, section]) => ({
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
