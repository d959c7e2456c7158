/** Which groups of equipment an aircraft is flown with, from what is fitted to it. */
import { addDays } from '../../../calendar/dates.js';
import type { Moment } from '../../../engine/moment.js';
import type { EquipmentFact, EquipmentKind, SquawkFact } from '../../../facts/aircraft.js';
import type { EquipmentGroup } from '../../../facts/person.js';
import { isOpen } from '../../common/squawks/open.js';

/** In the order in which sentences name them. */
export const EQUIPMENT_GROUPS: readonly EquipmentGroup[] = ['glass-panel', 'autopilot', 'gps-navigator'];

/**
 * `fitted`: flown with. `unclear`: the records do not tell whether what is fitted is one. `off`: fitted, but deferred as
 * removed or deactivated, and so not used.
 */
export type GroupState = 'fitted' | 'unclear' | 'off';

/** A group that may be aboard, with the piece that says so. */
export interface GroupAboard {
  group: EquipmentGroup;
  state: GroupState;
  piece: EquipmentFact;
}

/**
 * What an electronic primary flight display shows at the least: 14 CFR 61.129(j)(1), seen. Either kind of altimeter
 * serves.
 */
const FLIGHT_DISPLAY: readonly (readonly EquipmentKind[])[] = [
  ['airspeed-indicator'],
  ['rate-of-turn'],
  ['attitude-indicator'],
  ['heading-indicator'],
  ['altimeter', 'sensitive-altimeter'],
  ['vertical-speed'],
];

/** Strongest first: one piece that is flown with outweighs another that is switched off. */
const ORDER: readonly GroupState[] = ['fitted', 'unclear', 'off'];

/**
 * The groups aboard on any part of the flight, in their usual order; what comes in or goes out on a day of the flight
 * counts. Portable equipment makes none. A piece counts until it is deferred as removed or deactivated: what is only
 * reported as faulty can still be switched on.
 */
export function groupsAboard(
  asked: readonly EquipmentGroup[],
  equipment: readonly EquipmentFact[],
  squawks: readonly SquawkFact[],
  moment: Moment,
): GroupAboard[] {
  const aboard = equipment
    .filter((one) => !one.portable && !moment.endsOnOrBefore(addDays(one.installedOn, -1)))
    .filter(({ removedOn }) => removedOn === null || !moment.startsOnOrAfter(addDays(removedOn, 1)))
    .sort((a, b) => (a.id < b.id ? -1 : 1));
  return asked.flatMap((group): GroupAboard[] => {
    const found = aboard.flatMap((piece): GroupAboard[] => {
      const is = isOf(group, piece);
      if (is === 'no') return [];
      return [{ group, piece, state: switchedOff(piece, squawks, moment) ? 'off' : is }];
    });
    found.sort((a, b) => ORDER.indexOf(a.state) - ORDER.indexOf(b.state));
    return found.slice(0, 1);
  });
}

/**
 * A display that does the work of all six instruments is a glass panel, and what serves one of them is none. What serves
 * several may be part of one (or a substitute that the law allows), and the records do not say.
 */
function isOf(group: EquipmentGroup, piece: EquipmentFact): 'fitted' | 'unclear' | 'no' {
  const kinds = [piece.kind, ...piece.satisfies];
  if (group !== 'glass-panel') return kinds.includes(group) ? 'fitted' : 'no';
  const served = FLIGHT_DISPLAY.filter((anyOf) => anyOf.some((kind) => kinds.includes(kind))).length;
  if (served === FLIGHT_DISPLAY.length) return 'fitted';
  return served > 1 ? 'unclear' : 'no';
}

const switchedOff = ({ id }: EquipmentFact, squawks: readonly SquawkFact[], moment: Moment): boolean =>
  squawks.some(
    (one) =>
      one.equipmentId === id &&
      one.state === 'deferred' &&
      one.deferral?.removedOrDeactivated === true &&
      isOpen(one, moment),
  );
