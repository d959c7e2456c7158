/** Counting take-offs and landings for 14 CFR 61.57(a) and (b). */
import { addDays, type LocalDate } from '../../../../calendar/dates.js';
import type { AircraftType } from '../../../../facts/aircraft.js';
import type { LogFact } from '../../../../facts/person.js';
import type { Moment } from '../../../../engine/moment.js';
import type { Counted } from '../../../../engine/rule.js';

/** What one flight gives towards the count. */
export interface Given {
  takeoffs: number;
  landings: number;
}

/** The result of a count: how many of each, and the last date on which both are still enough (null when short). */
export interface RecencyCount extends Given {
  enough: boolean;
  through: LocalDate | null;
  counted: Counted[];
}

/**
 * Does an entry serve this aircraft? Same category and class, and type where a type rating is required (61.57(a)(1)(ii)).
 * Simulator time is left to the rules that take it.
 */
export function sameKind(entry: LogFact, type: AircraftType): boolean {
  return (
    entry.device === null &&
    entry.category === type.category &&
    entry.class === type.class &&
    (type.typeRating === null || entry.typeRating === type.typeRating)
  );
}

/**
 * Counts what `give` grants for each entry flown as sole manipulator of the controls within the preceding `days` of
 * the whole flight. Take-offs and landings are counted apart: two take-offs and four landings are not three of each.
 * An event exactly `days` days back still counts (usual reading; the text does not spell the boundary out).
 */
export function countRecent(
  log: readonly LogFact[],
  moment: Moment,
  days: number,
  needed: number,
  give: (entry: LogFact) => Given,
): RecencyCount {
  const recent: Found[] = [];
  const untold = moment.aside();
  for (const entry of log) {
    // The cheap question first: of a long log hardly anything lies within the days.
    if (!untold.endsWithinDaysOf(entry.on, days) || !entry.soleManipulator) continue;
    const given = give(entry);
    if (given.takeoffs + given.landings > 0 && untold.departsAtOrAfter(entry.departedAt))
      recent.push({ entry, ...given });
  }
  recent.sort((a, b) => newestFirst(a.entry, b.entry));

  let takeoffs = 0;
  let landings = 0;
  let governing: LocalDate | null = null;
  const counted: Counted[] = [];
  for (const flight of recent) {
    const stillShort = takeoffs < needed || landings < needed;
    takeoffs += flight.takeoffs;
    landings += flight.landings;
    if (!stillShort) continue;
    // Dates of two zones may stand the other way round than their instants.
    if (governing === null || flight.entry.on < governing) governing = flight.entry.on;
    counted.push({ id: flight.entry.id, on: flight.entry.on, what: words(flight.takeoffs, flight.landings) });
  }
  const enough = takeoffs >= needed && landings >= needed;
  watchCount(log, moment, days, enough ? governing : null);
  return {
    takeoffs,
    landings,
    enough,
    through: enough && governing !== null ? addDays(governing, days) : null,
    counted,
  };
}

/** What counts of it, for '2 of 3': no more than is asked for. */
export const upTo = (needed: number, { takeoffs, landings }: Given): Given => ({
  takeoffs: Math.min(takeoffs, needed),
  landings: Math.min(landings, needed),
});

type Found = { entry: LogFact } & Given;

/**
 * What the count hangs on, asked of the moment. While it is enough, only the oldest flight it rests on can end it: all
 * older ones go before it does, and flights to come only add. Short of enough, any flight yet to come may cure it.
 */
function watchCount(
  log: readonly LogFact[],
  moment: Moment,
  days: number,
  governing: LocalDate | null,
): void {
  if (governing !== null) moment.endsWithinDaysOf(governing, days);
  else for (const entry of log) moment.departsAtOrAfter(entry.departedAt);
}

/** By departure, then by id, so that the order of the log does not matter. */
function newestFirst(a: LogFact, b: LogFact): number {
  if (a.departedAt !== b.departedAt) return a.departedAt < b.departedAt ? 1 : -1;
  return a.id < b.id ? 1 : -1;
}

const words = (takeoffs: number, landings: number): string =>
  `${takeoffs} take-off${takeoffs === 1 ? '' : 's'}, ${landings} landing${landings === 1 ? '' : 's'}`;
