/**
 * The days of a span in the club's zone, and where in them departures lie. Times are milliseconds of the epoch. A day of 23
 * or 25 hours is as high as any other: midnight is always at the top and at the bottom.
 */
import { Temporal } from 'temporal-polyfill';

/** A day, from its midnight to the next. */
export interface Day {
  date: string;
  from: number;
  to: number;
}

/** A part of one day: `top` and `bottom` from 0 (midnight) to 1 (the next). */
export interface Piece {
  day: number;
  top: number;
  bottom: number;
}

export const at = (instant: string): number => Date.parse(instant);
export const instantOf = (ms: number): string => new Date(ms).toISOString().replace('.000Z', 'Z');

/** So many days from a date on. */
export function daysFrom(zone: string, date: string, count: number): Day[] {
  const first = Temporal.PlainDate.from(date);
  const starts = Array.from({ length: count + 1 }, (_, index) => {
    const day = first.add({ days: index });
    return { date: day.toString(), from: day.toZonedDateTime(zone).epochMilliseconds };
  });
  return starts.slice(0, -1).map((start, index) => ({ ...start, to: starts[index + 1]!.from }));
}

/** Index of the day a time lies in; the first or the last for a time outside. */
export function dayAt(days: readonly Day[], time: number): number {
  let low = 0;
  let high = days.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (days[middle]!.from <= time) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** How far into its day a time lies, 0 to 1. */
export const partOf = (day: Day, time: number): number =>
  Math.min(1, Math.max(0, (time - day.from) / (day.to - day.from)));

/** A stretch of time cut at the midnights. */
export function cut(days: readonly Day[], from: number, to: number): Piece[] {
  const pieces: Piece[] = [];
  for (let index = dayAt(days, from); index < days.length; index += 1) {
    const day = days[index]!;
    if (day.from >= to) break;
    const [top, bottom] = [partOf(day, Math.max(from, day.from)), partOf(day, Math.min(to, day.to))];
    if (bottom > top) pieces.push({ day: index, top, bottom });
  }
  return pieces;
}
