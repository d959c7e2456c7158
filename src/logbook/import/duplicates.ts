/** Rows that are in the log already, or twice in the file. Pure. */
import { toSeconds } from '../../rules/calendar/instants.js';
import { plate } from './detect.js';
import type { Draft } from './read-row.js';

/** A flight as far as it is told from others by. */
export interface FlightMark {
  departedAt: string;
  timesKnown: boolean;
  flownOn: string;
  totalTenths: number;
  aircraftId: string | null;
  aircraftWords: string;
}

export interface LoggedFlight extends FlightMark {
  id: string;
}

/**
 * `same`: nobody goes off blocks twice in one minute, so it is one flight. `alike`: the times of at least one are not known, and day,
 * aircraft and hours are the same, which may be two flights or one.
 */
export interface Duplicate {
  line: number;
  kind: 'same' | 'alike';
  /** The flight it repeats: an entry of the log, or an earlier line of the file. */
  entryId: string | null;
  earlierLine: number | null;
  flownOn: string;
}

interface Marked {
  entryId: string | null;
  earlierLine: number | null;
}

/** The first flight of a day, number of hours and aircraft; and the first of which the times are not known. */
interface DayMark {
  any: Marked;
  untimed: Marked | null;
}

export function duplicatesOf(drafts: readonly Draft[], log: readonly LoggedFlight[]): Duplicate[] {
  const byMinute = new Map<number, Marked>();
  const byDay = new Map<string, DayMark>();
  const keep = (flight: FlightMark, marked: Marked): void => {
    if (flight.timesKnown) byMinute.set(minuteOf(flight), marked);
    for (const key of dayKeys(flight)) {
      const there = byDay.get(key);
      const untimed = there?.untimed ?? (flight.timesKnown ? null : marked);
      byDay.set(key, { any: there?.any ?? marked, untimed });
    }
  };
  for (const flight of log) keep(flight, { entryId: flight.id, earlierLine: null });
  const found: Duplicate[] = [];
  for (const draft of drafts) {
    const same = draft.timesKnown ? byMinute.get(minuteOf(draft)) : undefined;
    const alike = dayKeys(draft)
      .map((key) => (draft.timesKnown ? byDay.get(key)?.untimed : byDay.get(key)?.any))
      .find((marked) => marked !== undefined && marked !== null);
    const of = same ?? alike;
    if (of) {
      const kind = same ? 'same' : 'alike';
      found.push({ line: draft.line, kind, ...of, flownOn: draft.flownOn });
    }
    if (!same) keep(draft, { entryId: null, earlierLine: draft.line });
  }
  return found;
}

const minuteOf = ({ departedAt }: FlightMark): number => Math.floor(toSeconds(departedAt) / 60);

/** Day, hours and aircraft: the aircraft itself, its words, and the registration behind their last comma. */
function dayKeys({ flownOn, totalTenths, aircraftId, aircraftWords }: FlightMark): string[] {
  const at = aircraftWords.lastIndexOf(',');
  const names = [
    ...(aircraftId === null ? [] : [aircraftId]),
    plate(aircraftWords),
    ...(at < 0 ? [] : [plate(aircraftWords.slice(at))]),
  ];
  return [...new Set(names)].map((name) => `${flownOn} ${totalTenths} ${name}`);
}
