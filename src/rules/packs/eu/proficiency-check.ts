import type { Moment } from '../../engine/moment.js';
import type { Remedy } from '../../engine/remedy.js';
import { plannedReview } from '../planned-review.js';

/** A proficiency check (Part-FCL) passed on the day the facts were gathered. */
export function passProficiencyCheck(moment: Moment): Remedy {
  const act = 'pass-proficiency-check';
  return {
    act,
    title: 'Pass a proficiency check with an examiner.',
    by: 'examiner',
    effects: [{ op: 'append', fact: 'pic.reviews', value: plannedReview(act, 'proficiency-check', moment) }],
  };
}
