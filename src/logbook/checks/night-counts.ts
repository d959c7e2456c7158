import { toInstant } from '../../rules/calendar/instants.js';
import { firstNight, nightSpans } from '../../rules/sky/nights.js';
import { counted, type Check, type Placed } from './check.js';
import type { NightOf } from './night-of.js';

/** From one landing to the next at the very least (common practice, no source). */
const CIRCUIT_SECONDS = 60;
const SOURCE =
  'One hour after sunset to one hour before sunrise (14 CFR 61.57(b)), from the position of the sun';
const DAY = 86_400;
/** The sun is taken a minute at a time. */
const HONEST_SECONDS = 60;

/** Take-offs by night: the first is where the flight began. */
export const nightTakeOffs = (flown: Placed, night: NightOf): Check => ({
  ...{ check: 'night-take-offs', field: 'nightTakeoffs' },
  ...held(
    { night: flown.nightTakeoffs, of: flown.takeoffs, what: 'take-off' },
    { field: flown.from, from: flown.departs, to: flown.arrives - night.reach.leastSeconds, end: 'first' },
    night,
  ),
});

/** Full-stop landings by night: the last is where the flight ended. */
export const nightLandings = (flown: Placed, night: NightOf): Check => ({
  ...{ check: 'night-landings', field: 'nightFullStopLandings' },
  ...held(
    { night: flown.nightFullStopLandings, of: flown.fullStopLandings, what: 'full-stop landing' },
    { field: flown.to, from: flown.departs + night.reach.leastSeconds, to: flown.arrives, end: 'last' },
    night,
  ),
});

interface Counts {
  night: number;
  of: number;
  what: string;
}

/** The one whose airfield is known, and when it can have been. */
interface KnownOne {
  field: Placed['from'];
  from: number;
  to: number;
  end: 'first' | 'last';
}

type Held = Pick<Check, 'outcome' | 'written' | 'computed' | 'says' | 'source'>;

function held(counts: Counts, known: KnownOne, night: NightOf): Held {
  const { least, most } = bounds(counts, known, night);
  const fits = counts.night >= least && counts.night <= most;
  return {
    outcome: fits ? 'fits' : 'flagged',
    written: counted(counts.night, counts.what),
    computed: most === least ? String(most) : `${least} to ${most}`,
    says: fits
      ? 'The count goes with the sun at the time.'
      : counts.night < least
        ? `The whole flight lies in the night that counts for this, so every ${counts.what} does.`
        : tooMany(counts, known, night),
    source: SOURCE,
  };
}

/** Fewest and most that can have been in the night. */
function bounds(
  { of }: Counts,
  known: KnownOne,
  { passenger, seconds }: NightOf,
): { least: number; most: number } {
  if (passenger.most === 0) return { least: 0, most: 0 };
  const room = Math.floor(passenger.most / CIRCUIT_SECONDS) + 1;
  const least = passenger.least >= seconds - HONEST_SECONDS ? of : 0;
  return { least, most: Math.max(least, Math.min(room, inNight(known) ? of : of - 1, of)) };
}

/** Why so many cannot be. */
function tooMany({ what }: Counts, known: KnownOne, { passenger }: NightOf): string {
  const { code, at } = known.field;
  const next = firstNight('passenger', at, Math.floor(known.from), Math.ceil(known.from) + DAY);
  const opens = next && next.from > known.from ? ` At ${code} it begins at ${toInstant(next.from)}.` : '';
  if (passenger.most === 0) return `No part of the flight lies in the night that counts for this.${opens}`;
  if (!inNight(known))
    return `The ${known.end} ${what} was at ${code}, and not in the night that counts for this.${opens}`;
  return `Too little of the flight lies in the night that counts for this.${opens}`;
}

/** Whether the one whose airfield is known can have been in the night there. A flight faster than can be has no such time. */
function inNight({ field, from, to }: KnownOne): boolean {
  const [first, last] = [Math.min(from, to), Math.max(from, to)];
  return nightSpans('passenger', field.at, Math.floor(first), Math.ceil(last)).length > 0;
}
