/** When a row's flight was. Pure; where the file gives no times, the latest the day allows stands for them. */
import { Temporal } from 'temporal-polyfill';
import { addDays, type LocalDate } from '../../rules/calendar/dates.js';
import { localDateOf, toInstant, toSeconds } from '../../rules/calendar/instants.js';
import { readDay, type When } from './cells.js';
import type { FileClock } from './choices.js';
import type { Fault, Reading, Values } from './row-values.js';
import { latestTimes, type Times } from './untimed.js';

export interface TimesOf extends Reading {
  clock: FileClock | null;
  /** Zone of times by a clock of a zone, and of dates at airfields the club does not know. */
  zone: string;
  /** Zones of the airfields the club knows, by code. */
  zones: ReadonlyMap<string, string>;
}

const fault = (because: string): { fault: Fault } => ({ fault: { column: null, cell: null, because } });

export function timesOf(values: Values, totalTenths: number, of: TimesOf): Times | { fault: Fault } {
  const on = values.flownOn as LocalDate | undefined;
  const [off, onBlocks] = [values.departedAt as When | undefined, values.arrivedAt as When | undefined];
  const there = of.zones.get(String(values.fromAirfield ?? '').toUpperCase()) ?? of.zone;
  if (off === undefined || onBlocks === undefined)
    return withoutTimes(on, off ?? onBlocks, totalTenths, there, of);
  const began = instantOf(off, on, { ...of, there });
  if (typeof began === 'string') return fault(began);
  const ended = instantOf(onBlocks, on, { ...of, there }, began);
  if (typeof ended === 'string') return fault(ended);
  // What the file gives as the date counts where its dates are those of the place.
  const given = 'instant' in off || of.clock === 'utc-local-date' ? on : undefined;
  return {
    ...{ departedAt: toInstant(began), arrivedAt: toInstant(ended), timesKnown: true },
    flownOn: given ?? localDateOf(began, there),
  };
}

function withoutTimes(
  on: LocalDate | undefined,
  one: When | undefined,
  totalTenths: number,
  zone: string,
  of: TimesOf,
): Times | { fault: Fault } {
  let day = on;
  if (day === undefined && one !== undefined && 'clock' in one && one.date !== null) {
    const read = readDay(one.date, of.dates, of.today);
    if ('value' in read) day = read.value;
  }
  if (day === undefined) return fault('It has no date.');
  return latestTimes(day, totalTenths, zone);
}

/**
 * Seconds of a time of a day.
 * @param after where given, the time is the first one after it
 * @returns why it cannot be told, in words
 */
function instantOf(
  when: When,
  on: LocalDate | undefined,
  of: TimesOf & { there: string },
  after?: number,
): number | string {
  if ('instant' in when) return toSeconds(when.instant);
  const written = when.date ?? on;
  if (written === undefined) return 'It has times and no date.';
  const read = readDay(written, of.dates, of.today);
  if ('refused' in read) return `“${written}” ${read.refused}`;
  const day = read.value;
  const clock = when.utc && of.clock !== 'utc-local-date' ? 'utc' : of.clock;
  if (clock === null) return 'It is not said by whose clock its times are.';
  if (when.date !== null || after === undefined)
    return onDay(day, when.clock, clock, clock === 'zone' ? of.zone : of.there);
  if (clock === 'utc-local-date' || clock === 'utc') {
    const same = toSeconds(`${toInstant(after).slice(0, 10)}T${when.clock}Z`);
    if (same === after) return 'Off and on blocks are at the same time.';
    return same > after ? same : same + 86_400;
  }
  const began = localDateOf(after, of.zone);
  const same = onDay(began, when.clock, clock, of.zone);
  if (typeof same === 'string' || same > after) return same;
  if (same === after) return 'Off and on blocks are at the same time.';
  return onDay(addDays(began, 1), when.clock, clock, of.zone);
}

function onDay(day: LocalDate, clock: string, by: FileClock, zone: string): number | string {
  if (by === 'utc') return toSeconds(`${day}T${clock}Z`);
  if (by === 'utc-local-date') {
    // Just one of the three has that date in the zone.
    const found = [-1, 0, 1]
      .map((days) => toSeconds(`${addDays(day, days)}T${clock}Z`))
      .filter((at) => localDateOf(at, zone) === day);
    return found[0] ?? `${clock.slice(0, 5)} UTC does not come on ${day} in ${zone}.`;
  }
  try {
    const local = Temporal.PlainDateTime.from(`${day}T${clock}`);
    const zoned = local.toZonedDateTime(zone, { disambiguation: 'reject' });
    return Math.floor(zoned.epochMilliseconds / 1000);
  } catch {
    return `${clock.slice(0, 5)} on ${day} does not come, or comes twice, by the clock of ${zone}: give it in UTC.`;
  }
}
