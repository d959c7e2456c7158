/** Readings of a zone's clock, and when they next come round. */
import { Temporal } from 'temporal-polyfill';
import type { EpochSeconds } from './instants.js';
import { remember } from './remember.js';

const DAY = 86_400;
/** Zones change their clocks on a quarter hour, so within one the clock runs evenly. */
const QUARTER = 900;

const offsetOfQuarter = remember((quarter: number, zone: string): number =>
  Math.round(
    Temporal.Instant.fromEpochMilliseconds(quarter * QUARTER * 1000).toZonedDateTimeISO(zone)
      .offsetNanoseconds / 1e9,
  ),
);

const offsetAt = (at: EpochSeconds, zone: string): number => offsetOfQuarter(Math.floor(at / QUARTER), zone);

/** Seconds the zone's clock shows past midnight, 0 to 86399. */
export function clockSeconds(at: EpochSeconds, zone: string): number {
  return modulo(at + offsetAt(at, zone), DAY);
}

/** Seconds past midnight of 'HH:MM'; null when it is no clock reading. */
export function readClock(text: string): number | null {
  const read = /^([01]\d|2[0-3]):([0-5]\d)$/.exec(text);
  return read ? Number(read[1]) * 3600 + Number(read[2]) * 60 : null;
}

/**
 * The next instant after `at` at which the zone's clock shows one of the readings (seconds past midnight), or jumps.
 * Between `at` and it no comparison with those readings changes.
 */
export function nextReading(at: EpochSeconds, zone: string, readings: readonly number[]): EpochSeconds {
  const offset = offsetAt(at, zone);
  const shown = modulo(at + offset, DAY);
  const wait = Math.min(...readings.map((reading) => modulo(reading - shown - 1, DAY) + 1));
  const next = at + wait;
  if (offsetAt(next, zone) === offset) return next;
  // The clock jumps by then.
  let quarter = Math.floor(at / QUARTER) * QUARTER;
  while (offsetAt(quarter, zone) === offset) quarter += QUARTER;
  return quarter;
}

const modulo = (value: number, by: number): number => ((value % by) + by) % by;
