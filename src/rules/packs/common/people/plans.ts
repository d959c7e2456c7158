/**
 * Whether a hypothetical act, placed at the moment the facts were gathered, would still serve the flight. Remedies that
 * would not are left out, so that none is offered in vain.
 */
import type { LocalDate } from '../../../calendar/dates.js';
import type { Moment } from '../../../engine/moment.js';

/** The flight lies ahead: something can still be done before it. */
export function canStillAct(moment: Moment): boolean {
  return moment.departsAtOrAfter(moment.hoursFromKnowledge(0));
}

/** Something done now would still count on the flight. `through` gives the last day on which an act of `today` counts. */
export function wouldServe(moment: Moment, through: (today: LocalDate) => LocalDate): boolean {
  return canStillAct(moment) && moment.endsOnOrBefore(through(moment.knowledgeDate()));
}
