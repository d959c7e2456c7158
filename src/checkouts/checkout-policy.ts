import type { EntityManager } from 'typeorm';
import type { LocalDate } from '../rules/index.js';
import { CLUB_CHECKS } from '../rules/parameters/club/checks.js';
import { CLUB_SYLLABUS } from '../rules/parameters/club/syllabus.js';

const DECLARED = [...CLUB_CHECKS, ...CLUB_SYLLABUS];

/** The club's numbers for checkouts on a day. */
export interface CheckoutPolicy {
  /** Hours between a quiz that was not passed and the next. */
  quizWaitHours: number;
  /** Days before its end from which a sign-off is told as ending. */
  endingDays: number;
  /** Whether a sign-off counts for the like models its requirement names. */
  likeModels: boolean;
  /** Days the annual check is good for; 0: none is asked for. */
  annualCheckDays: number;
  /** Whether changes of equipment have to be shown. */
  differencesAsked: boolean;
  /** Whether the same equipment shown in another aircraft counts. */
  elsewhereCounts: boolean;
}

/** Reads them in one statement; numbers never set are those a new club starts with, what was never allowed is not. */
export async function checkoutPolicy(
  em: EntityManager,
  clubId: string,
  on: LocalDate,
): Promise<CheckoutPolicy> {
  const rows = await em.query<{ id: string; value: unknown }[]>(
    `SELECT DISTINCT ON (parameter_id) parameter_id AS id, value FROM policy_values
      WHERE club_id = $1 AND valid_from <= $2
        AND parameter_id = ANY (ARRAY['club.checkouts.quiz-wait-hours', 'club.checkouts.ending-days',
          'club.model-checkout.like-models', 'club.annual-check.days', 'club.differences-checkout.required',
          'club.differences-checkout.elsewhere-counts'])
      ORDER BY parameter_id, valid_from DESC`,
    [clubId, on],
  );
  const valueOf = (id: string): unknown => rows.find((row) => row.id === id)?.value;
  const number = (id: string): number =>
    Number(valueOf(id) ?? DECLARED.find((one) => one.id === id)!.values[0]!.value);
  return {
    quizWaitHours: number('club.checkouts.quiz-wait-hours'),
    endingDays: number('club.checkouts.ending-days'),
    annualCheckDays: number('club.annual-check.days'),
    differencesAsked: valueOf('club.differences-checkout.required') !== false,
    likeModels: valueOf('club.model-checkout.like-models') === true,
    elsewhereCounts: valueOf('club.differences-checkout.elsewhere-counts') === true,
  };
}
