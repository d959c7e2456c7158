import type { Moment } from '../engine/moment.js';
import type { ReviewFact, ReviewKind } from '../facts/person.js';

/** The record of a check or review that a remedy proposes, passed on the day the facts were gathered. */
export function plannedReview(
  act: string,
  kind: ReviewKind,
  moment: Moment,
  category: ReviewFact['category'] = null,
): ReviewFact {
  return {
    id: `planned:${act}`,
    kind,
    on: moment.knowledgeDate(),
    groundTenths: null,
    flightTenths: null,
    category,
    endorsedAsReview: false,
  };
}
