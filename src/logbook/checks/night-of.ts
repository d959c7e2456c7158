/** How much of a flight lies in the night: along the straight way, and at the least and the most wherever it went. */
import {
  CIVIL_TWILIGHT_ALTITUDE_DEG,
  sunAltitudeDeg,
  SUNSET_ALTITUDE_DEG,
  type Place,
} from '../../rules/sky/sun.js';
import { along } from './along.js';
import type { Placed } from './check.js';
import { reachOf, type Reach } from './reach.js';

/** Seconds of a flight. */
export interface NightSeconds {
  /** On the straight way at an even speed. */
  straight: number;
  /** Wherever the aircraft can have been. */
  least: number;
  most: number;
}

export interface NightOf {
  /** Between the end of evening and the beginning of morning civil twilight (14 CFR 1.1). */
  civil: NightSeconds;
  /** From an hour after sunset to an hour before sunrise (14 CFR 61.57(b)). */
  passenger: NightSeconds;
  reach: Reach;
  /** From block to block. */
  seconds: number;
}

const MINUTE = 60;
const HOUR = 3600;
/** The flight is looked at this often, and a very long one in so many pieces. */
const PIECE_SECONDS = MINUTE;
const MOST_PIECES = 900;
/** The earth turns by a degree in four minutes, so no sun is faster. */
const DEG_PER_SECOND = 1 / 240;

export function nightOf(flown: Placed): NightOf {
  const reach = reachOf(flown);
  const seconds = flown.arrives - flown.departs;
  const night: NightOf = { civil: none(), passenger: none(), reach, seconds };
  if (allDay(flown, reach, seconds)) return night;
  const way = along(flown.from.at, flown.to.at);
  const pieces = Math.min(MOST_PIECES, Math.max(1, Math.ceil(seconds / PIECE_SECONDS)));
  const length = seconds / pieces;
  for (let piece = 0; piece < pieces; piece += 1) {
    const since = (piece + 0.5) * length;
    const { done, strayDeg } = reach.at(since);
    const [place, at] = [way(done), flown.departs + since];
    count(
      night.civil,
      length,
      sunAltitudeDeg(place, at) - CIVIL_TWILIGHT_ALTITUDE_DEG,
      // The sun's steps between two looks are small against the minute it is looked at.
      strayDeg,
    );
    count(night.passenger, length, aboveWithinTheHour(place, at) - SUNSET_ALTITUDE_DEG, strayDeg);
  }
  return night;
}

/**
 * The highest the sun stands an hour before, now and an hour after: below the horizon at all three, sunset is an hour past
 * and sunrise an hour off. (Only near the poles can it rise and set between two of them.)
 */
const aboveWithinTheHour = (place: Place, at: number): number =>
  Math.max(...[at - HOUR, at, at + HOUR].map((one) => sunAltitudeDeg(place, one)));

const none = (): NightSeconds => ({ straight: 0, least: 0, most: 0 });

function count(into: NightSeconds, seconds: number, aboveDeg: number, strayDeg: number): void {
  if (aboveDeg < 0) into.straight += seconds;
  if (aboveDeg + strayDeg < 0) into.least += seconds;
  if (aboveDeg - strayDeg < 0) into.most += seconds;
}

/** So high a sun that no part of the flight can be in the night: most flights, and nothing more is worked out for them. */
function allDay({ from, departs }: Placed, reach: Reach, seconds: number): boolean {
  const awayDeg = reach.at(seconds / 2).strayDeg + reach.distanceNm / 60;
  const fallDeg = awayDeg + (seconds / 2 + HOUR) * DEG_PER_SECOND;
  return sunAltitudeDeg(from.at, departs + seconds / 2) - fallDeg > 0;
}
