/** What is fitted to the aircraft on the day of the flight, and what of it works. */
import { addDays } from '../../../../calendar/dates.js';
import type { Moment } from '../../../../engine/moment.js';
import type { EquipmentFact, EquipmentKind, SquawkFact } from '../../../../facts/aircraft.js';
import { isOpen } from '../../../common/squawks/open.js';

/** One fitted piece of equipment and the squawks that take it out of use. */
export interface Fitted {
  equipment: EquipmentFact;
  kinds: ReadonlySet<EquipmentKind>;
  squawks: SquawkFact[];
}

export interface Panel {
  fitted: Fitted[];
}

/**
 * Equipment fitted for the whole flight. Portable equipment is left out: it never satisfies a requirement. What an open
 * squawk names does not work, whatever the squawk's state: reported, grounding or deferred.
 */
export function panelOf(
  equipment: readonly EquipmentFact[],
  squawks: readonly SquawkFact[],
  moment: Moment,
): Panel {
  const fitted = [...equipment]
    .filter((one) => !one.portable && moment.startsOnOrAfter(one.installedOn))
    .filter((one) => one.removedOn === null || moment.endsOnOrBefore(addDays(one.removedOn, -1)))
    .sort((a, b) => (a.id < b.id ? -1 : 1))
    .map((one) => ({
      equipment: one,
      kinds: new Set([one.kind, ...one.satisfies]),
      squawks: squawks.filter((squawk) => squawk.equipmentId === one.id && isOpen(squawk, moment)),
    }));
  return { fitted };
}

/** Fitted equipment that serves one of the kinds. */
export const fittedOf = (panel: Panel, kinds: readonly EquipmentKind[]): Fitted[] =>
  panel.fitted.filter((one) => kinds.some((kind) => one.kinds.has(kind)));

export const works = (one: Fitted): boolean => one.squawks.length === 0;
