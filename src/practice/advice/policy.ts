import type { EntityManager } from 'typeorm';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import type { LocalDate } from '../../rules/index.js';
import { CLUB_PRACTICE } from '../../rules/parameters/club/practice.js';
import { checkModel, type ConditionLimits, type DecayModel, type PlanSettings } from '../rust/index.js';

/** The club's numbers for practice on a day. */
export interface PracticePolicy {
  decay: DecayModel;
  plan: PlanSettings;
  limits: ConditionLimits;
  transitMinutes: number;
  ownWord: boolean;
}

/** Reads them in one statement; what the club never set is the value a new club starts with. @throws 409 */
export async function practicePolicy(
  em: EntityManager,
  clubId: string,
  on: LocalDate,
): Promise<PracticePolicy> {
  const rows = await em.query<{ id: string; value: unknown }[]>(
    `SELECT DISTINCT ON (parameter_id) parameter_id AS id, value FROM policy_values
      WHERE club_id = $1 AND parameter_id LIKE 'club.practice.%' AND valid_from <= $2
      ORDER BY parameter_id, valid_from DESC`,
    [clubId, on],
  );
  const valueOf = (name: string): unknown => {
    const id = `club.practice.${name}`;
    return (
      rows.find((row) => row.id === id)?.value ?? CLUB_PRACTICE.find((one) => one.id === id)!.values[0]!.value
    );
  };
  const number = (name: string): number => Number(valueOf(name));
  const policy: PracticePolicy = {
    decay: {
      firstHalfLifeDays: number('first-half-life-days'),
      growth: number('growth'),
      longestHalfLifeDays: number('longest-half-life-days'),
      spacingDays: number('spacing-days'),
      countedDays: number('counted-days'),
      outsideShare: number('outside-share'),
    },
    plan: {
      rustFrom: number('rust-from'),
      dualFromRust: number('dual-from'),
      weightRust: number('weight-rust'),
      weightBooking: number('weight-booking'),
      weightCheckout: number('weight-checkout'),
      bookingHalfDays: number('booking-half-days'),
      repetitionShare: number('repetition-share'),
    },
    limits: {
      crosswindKt: number('crosswind-kt'),
      gustKt: number('gust-kt'),
      shortRunwayFt: number('short-runway-ft'),
    },
    transitMinutes: Math.round(number('transit-minutes')),
    ownWord: valueOf('own-word') === true,
  };
  return asUsable(() => {
    checkModel(policy.decay);
    return policy;
  });
}

/** A club's numbers that make no sense are the club's to mend, and no fault of the request. @throws 409 */
export function asUsable<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    throw new ProblemException('practice-policy-unusable', {
      detail: `The club’s values for practice make no sense together (${error.message}). An administrator looks at club.practice.*.`,
      cause: error,
    });
  }
}
