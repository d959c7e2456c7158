/** What counts as annual and 100-hour inspection of an aircraft: its own, and the last of a programme it is no longer under. */
import type { Moment } from '../../../../engine/moment.js';
import type { Parameters } from '../../../../engine/parameters.js';
import type { FactView } from '../../../../engine/rule.js';
import type { ItemFact } from '../../../../facts/aircraft.js';
import { itemsEnded, itemsInForce } from '../../../common/items/in-force.js';
import { afterProgramme, isOfProgramme, PROGRAMME_MONTHS } from './programme.js';

/** Items in force, or null while the aircraft is under a progressive programme. */
export function inspectionsCounted(
  f: FactView<'aircraft.items'>,
  moment: Moment,
  p: Parameters,
): readonly ItemFact[] | null {
  const items = itemsInForce(f, moment);
  if (items.some(isOfProgramme)) return null;
  return afterProgramme(items, itemsEnded(f, moment), p.number(PROGRAMME_MONTHS));
}
