/** When a practice flight can take place: in the light it needs, with aircraft and person free. */
import type { EpochSeconds } from '../calendar/instants.js';
import type { AirfieldFact } from '../facts/flight.js';
import { nightSpans } from '../sky/nights.js';
import { isPlace } from '../sky/sun.js';

/** Time that is taken, [from, to). */
export interface Taken {
  from: EpochSeconds;
  to: EpochSeconds;
}

/** Flights leave on the five minutes. */
const STEP = 300;
const DAY = 86_400;
/** How far ahead a slot is looked for. */
const REACH = 14 * DAY;
const TRIES = 200;

/** The first time from `from` on at which a flight of so many seconds fits, or null when none does within reach. */
export function firstSlot(of: {
  from: EpochSeconds;
  seconds: number;
  light: 'day' | 'night';
  field: AirfieldFact | undefined;
  taken: readonly Taken[];
}): EpochSeconds | null {
  const { from, seconds, light, field, taken } = of;
  let at = roundUp(from);
  for (let tries = 0; tries < TRIES && at <= from + REACH; tries += 1) {
    const lit = field && isPlace(field) ? inLight(at, seconds, light, field) : at;
    if (lit === null) return null;
    const clash = taken.filter((one) => one.from < lit + seconds && one.to > lit);
    if (clash.length === 0) return lit;
    at = roundUp(Math.max(...clash.map((one) => one.to)));
  }
  return null;
}

const roundUp = (at: EpochSeconds): EpochSeconds => Math.ceil(at / STEP) * STEP;

/** Wholly out of civil night; or wholly within the night in which landings count (14 CFR 61.57(b)). */
function inLight(
  from: EpochSeconds,
  seconds: number,
  light: 'day' | 'night',
  field: AirfieldFact,
): EpochSeconds | null {
  if (light === 'night') {
    for (const span of nightSpans('passenger', field, from, from + 3 * DAY)) {
      const at = roundUp(Math.max(from, span.from));
      if (at + seconds <= span.to) return at;
    }
    return null;
  }
  const to = from + 3 * DAY;
  let at = from;
  for (const span of nightSpans('civil', field, from, to)) {
    if (span.from > at + seconds) return at;
    at = roundUp(span.to + 1);
  }
  // Nights are known up to here only; one that is cut off may go on.
  return at + seconds <= to ? at : null;
}
