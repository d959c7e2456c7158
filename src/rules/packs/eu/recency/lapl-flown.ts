/** What a light aircraft pilot has flown lately, against what FCL.140.A asks for. */
import type { LocalDate } from '../../../calendar/dates.js';
import type { Moment } from '../../../engine/moment.js';
import type { Counted } from '../../../engine/rule.js';
import type { AircraftType } from '../../../facts/aircraft.js';
import type { LogFact } from '../../../facts/person.js';
import { hours } from '../../common/items/meter.js';
import { inAeroplane } from '../licence/standing.js';

/** Tenths of hours, and counts; of the whole, with an instructor, and in the class of the aircraft to be flown. */
const AMOUNTS = [
  'tenths',
  'takeoffs',
  'landings',
  'trainingTenths',
  'classTenths',
  'classTakeoffs',
  'classLandings',
] as const;
export type Amounts = Record<(typeof AMOUNTS)[number], number>;

/** What was flown, newest first, until all was there. */
export interface Flown extends Amounts {
  /** The oldest entry that is needed; null while something is missing. */
  governs: LocalDate | null;
  counted: Counted[];
}

const COMMAND: readonly LogFact['role'][] = ['pilot-in-command', 'solo', 'instructor'];

/**
 * Counts the newest first until all is there.
 *
 * @param through last day on which a flight of a day counts
 * @param dualCounts flights with an instructor count towards the whole, not only as training
 */
export function flownLately(
  log: readonly LogFact[],
  type: AircraftType,
  moment: Moment,
  asked: { needed: Amounts; through: (on: LocalDate) => LocalDate; dualCounts: boolean },
): Flown {
  const { needed, through, dualCounts } = asked;
  const flown: Flown = {
    ...{ tenths: 0, takeoffs: 0, landings: 0, trainingTenths: 0 },
    ...{ classTenths: 0, classTakeoffs: 0, classLandings: 0 },
    ...{ governs: null, counted: [] },
  };
  const recent = log
    .filter((entry) => entry.device === null && inAeroplane(entry, type))
    .filter(({ role }) => role === 'dual-received' || COMMAND.includes(role))
    .filter(({ departedAt, on }) => moment.departsAtOrAfter(departedAt) && moment.endsOnOrBefore(through(on)))
    .sort((a, b) => (`${a.on} ${a.departedAt} ${a.id}` < `${b.on} ${b.departedAt} ${b.id}` ? 1 : -1));
  for (const entry of recent) {
    const dual = entry.role === 'dual-received';
    if (dual) flown.trainingTenths += entry.totalTenths;
    if (!dual || dualCounts) {
      flown.tenths += entry.totalTenths;
      flown.takeoffs += entry.takeoffs;
      flown.landings += entry.landings;
      if (entry.class === type.class) {
        flown.classTenths += entry.totalTenths;
        flown.classTakeoffs += entry.takeoffs;
        flown.classLandings += entry.landings;
      }
    }
    flown.counted.push({ id: entry.id, on: entry.on, what: `${hours(entry.totalTenths)} h` });
    if (AMOUNTS.every((amount) => flown[amount] >= needed[amount])) return { ...flown, governs: entry.on };
  }
  return flown;
}
