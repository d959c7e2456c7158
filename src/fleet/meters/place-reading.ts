import { toSeconds } from '../../rules/index.js';
import { aboveNext, belowLast, jump, replacementIncomplete, replacementTooLate } from './meter.problems.js';
import type { MeterReading } from './meter-reading.entity.js';

/** A reading to be written, in tenths. */
export interface ReadingToPlace {
  shownTenths: number;
  readAt: string;
  source: MeterReading['source'];
  /** What the replaced meter showed when it was taken out; with a replacement only. */
  replacedTenths?: number;
  confirmJump?: boolean;
}

/** The readings on either side of its time, of the same meter. */
export interface Neighbours {
  last: MeterReading | null;
  next: MeterReading | null;
}

/**
 * A tachometer runs by engine speed and can outrun the clock a little at full power (common practice, no source); half an
 * hour more covers readings noted before and after the flight.
 */
const FASTEST = 1.25;
const SLACK_TENTHS = 5;

/**
 * The offset that makes the running total of a new reading.
 * @throws ProblemException 422 when the total would fall, or run faster than the clock.
 */
export function placeReading(reading: ReadingToPlace, { last, next }: Neighbours): { offsetTenths: number } {
  if ((reading.source === 'replacement') !== (reading.replacedTenths !== undefined))
    throw replacementIncomplete();
  const before = last?.offsetTenths ?? 0;
  if (reading.replacedTenths !== undefined) {
    if (next) throw replacementTooLate(next);
    const total = reading.replacedTenths + before;
    if (last && total < last.totalTenths) throw belowLast(last, reading.replacedTenths, 'replacedMeterH');
    requireNoJump(reading, last, total);
    return { offsetTenths: total - reading.shownTenths };
  }
  const total = reading.shownTenths + before;
  if (last && total < last.totalTenths) throw belowLast(last, reading.shownTenths);
  if (next && total > next.totalTenths) throw aboveNext(next, reading.shownTenths);
  requireNoJump(reading, last, total);
  return { offsetTenths: before };
}

function requireNoJump(reading: ReadingToPlace, last: MeterReading | null, total: number): void {
  if (!last || reading.confirmJump) return;
  const elapsedTenths = (toSeconds(reading.readAt) - toSeconds(last.readAt)) / 360;
  const added = total - last.totalTenths;
  if (added > elapsedTenths * FASTEST + SLACK_TENTHS) throw jump(last, added);
}
