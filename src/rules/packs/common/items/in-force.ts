/** Which airworthiness items are asked for on the day of the flight: some come and go with equipment. */
import type { Moment } from '../../../engine/moment.js';
import type { FactView } from '../../../engine/rule.js';
import type { ItemFact } from '../../../facts/aircraft.js';

/** The aircraft's items, without those that begin after the day of departure or ended on it or before. */
export function itemsInForce(f: FactView<'aircraft.items'>, moment: Moment): readonly ItemFact[] {
  return f
    .get('aircraft.items')
    .filter(({ since = null }) => since === null || moment.startsOnOrAfter(since))
    .filter(({ retiredOn = null }) => retiredOn === null || !moment.startsOnOrAfter(retiredOn));
}

/** Those that were asked for once and are no more by the day of departure. */
export function itemsEnded(f: FactView<'aircraft.items'>, moment: Moment): readonly ItemFact[] {
  return f
    .get('aircraft.items')
    .filter(({ retiredOn = null }) => retiredOn !== null && moment.startsOnOrAfter(retiredOn));
}
