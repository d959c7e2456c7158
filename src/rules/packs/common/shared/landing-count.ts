/** Take-offs and landings within a stretch of time, as the European and the Canadian rules count them. */
import type { LocalDate } from '../../../calendar/dates.js';
import type { Moment } from '../../../engine/moment.js';
import type { Remedy } from '../../../engine/remedy.js';
import type { Counted, FactView } from '../../../engine/rule.js';
import type { AircraftType } from '../../../facts/aircraft.js';
import type { LogFact } from '../../../facts/person.js';
import { leavePassengers } from '../../leave-passengers.js';
import { plannedLandings } from '../../planned-flight.js';

/** What was found: how many of each, the records behind it, and the last date they serve (null when too few). */
export interface LandingCount {
  takeoffs: number;
  landings: number;
  enough: boolean;
  through: LocalDate | null;
  counted: Counted[];
}

/** What is counted: how many are needed, until when an event on a date serves, and whether only those by night. */
export interface LandingsAsked {
  needed: number;
  through: (on: LocalDate) => LocalDate;
  night: boolean;
}

/**
 * Counts what was flown as sole manipulator in the category and class (and type, where one is rated), in an aircraft or a
 * full flight simulator, before this flight and not too long before its end. Take-offs and landings count apart.
 */
export function countLandings(
  log: readonly LogFact[],
  type: AircraftType,
  moment: Moment,
  asked: LandingsAsked,
): LandingCount {
  const { needed, through, night } = asked;
  const untold = moment.aside();
  /** The newest day that was found too long ago: whatever is no newer needs no arithmetic. */
  let tooOld: LocalDate = '';
  const recent: { entry: LogFact; takeoffs: number; landings: number }[] = [];
  for (const entry of log) {
    if (entry.on <= tooOld || !serves(entry, type)) continue;
    const takeoffs = night ? entry.nightTakeoffs : entry.takeoffs;
    const landings = night ? entry.nightFullStopLandings : entry.landings;
    if (takeoffs + landings === 0 || !untold.departsAtOrAfter(entry.departedAt)) continue;
    if (untold.endsOnOrBefore(through(entry.on))) recent.push({ entry, takeoffs, landings });
    else tooOld = entry.on;
  }
  recent.sort((a, b) => newestFirst(a.entry, b.entry));
  let takeoffs = 0;
  let landings = 0;
  let governing: LocalDate | null = null;
  const counted: Counted[] = [];
  for (const flight of recent) {
    if (takeoffs >= needed && landings >= needed) break;
    takeoffs += flight.takeoffs;
    landings += flight.landings;
    if (governing === null || flight.entry.on < governing) governing = flight.entry.on;
    counted.push({
      id: flight.entry.id,
      on: flight.entry.on,
      what: `${flight.takeoffs} take-offs, ${flight.landings} landings${night ? ' by night' : ''}`,
    });
  }
  const enough = takeoffs >= needed && landings >= needed;
  // While it is enough only the oldest flight it rests on can end it; short of it any flight yet to come may cure it.
  if (enough && governing !== null) moment.endsOnOrBefore(through(governing));
  else for (const entry of log) moment.departsAtOrAfter(entry.departedAt);
  return { takeoffs, landings, enough, through: enough && governing ? through(governing) : null, counted };
}

const serves = (entry: LogFact, type: AircraftType): boolean =>
  entry.soleManipulator &&
  (entry.device === null || entry.device === 'full-flight-simulator') &&
  entry.category === type.category &&
  entry.class === type.class &&
  (type.typeRating === null || entry.typeRating === type.typeRating);

function newestFirst(a: LogFact, b: LogFact): number {
  if (a.departedAt !== b.departedAt) return a.departedAt < b.departedAt ? 1 : -1;
  return a.id < b.id ? 1 : -1;
}

/** Fly the landings without passengers, if they still serve on the day; or leave the passengers behind. */
export function landingsRemedies(
  type: AircraftType,
  f: Pick<FactView, 'flight' | 'crew'>,
  moment: Moment,
  asked: LandingsAsked,
): Remedy[] {
  const { needed, night } = asked;
  const on = moment.knowledgeDate();
  const entry = plannedLandings(type, needed, night, moment);
  const remedies: Remedy[] = [];
  if (moment.departsAtOrAfter(entry.departedAt) && moment.endsOnOrBefore(asked.through(on))) {
    remedies.push({
      act: `fly-landings-${night ? 'night' : 'day'}`,
      title: `Fly ${needed} take-offs and landings${night ? ' by night' : ''} without passengers.`,
      by: 'member',
      effects: [{ op: 'append', fact: 'pic.log', value: entry }],
    });
  }
  if (!f.flight.forHire) remedies.push(...leavePassengers(f));
  return remedies;
}

/** '2027-05-21 by day, 2027-05-02 by night': those by night count by day too, and may be older. */
export const throughWords = (day: LocalDate, { through: night }: LandingCount): string =>
  night === null
    ? `${day} by day`
    : night < day
      ? `${day} by day, ${night} by night`
      : `${day} by day and night`;
