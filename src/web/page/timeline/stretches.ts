/**
 * A timeline in words: days that go the same way are told together. What a drawing shows as a band (every day from sunrise
 * to sunset) would be hundreds of steps to whoever reads or hears it.
 */
import type { Answer } from '../api/types.js';
import { at, type Day } from './days.js';
import type { Step } from './types.js';

/** One answer over a part of one day. */
export interface Part {
  answer: Answer;
  from: number;
  to: number;
  /** Titles of the rules in the way. */
  because: string[];
}

/** Days in a row whose answers follow each other in the same order at about the same times. */
export interface Stretch {
  first: Day;
  last: Day;
  days: number;
  onFirst: Part[];
  onLast: Part[];
  /** What stands in the way of each answer, on any of the days. */
  because: Map<Answer, string[]>;
}

/** Sun and clocks move an edge from day to day by less than this; anything more is another matter. */
const NEXT_DAY = 12 * 60_000;
/** So far edges may have moved within one stretch. */
const IN_ALL = 45 * 60_000;
/** No stretch is longer, so that its first and last day tell of those between. */
const MOST_DAYS = 31;

/** The days of a timeline, told together where they go the same way. */
export function stretchesOf(days: readonly Day[], steps: readonly Step[]): Stretch[] {
  const stretches: Stretch[] = [];
  for (const { day, parts } of byDay(days, steps)) {
    const open = stretches.at(-1);
    if (open && goesOn(open, day, parts)) {
      Object.assign(open, { last: day, onLast: parts, days: open.days + 1 });
      gather(open.because, parts);
      continue;
    }
    const because = gather(new Map<Answer, string[]>(), parts);
    stretches.push({ first: day, last: day, days: 1, onFirst: parts, onLast: parts, because });
  }
  return stretches;
}

/** Each day's answers from midnight to midnight, or what of it lies in the span. */
export function byDay(days: readonly Day[], steps: readonly Step[]): { day: Day; parts: Part[] }[] {
  const told: { day: Day; parts: Part[] }[] = [];
  let next = 0;
  for (const day of days) {
    const parts: Part[] = [];
    while (next < steps.length && at(steps[next]!.to) <= day.from) next += 1;
    for (let index = next; index < steps.length && at(steps[index]!.from) < day.to; index += 1) {
      add(parts, steps[index]!, day);
    }
    if (parts.length > 0) told.push({ day, parts });
  }
  return told;
}

function add(parts: Part[], { from, to, answer, inTheWay }: Step, day: Day): void {
  const because = inTheWay.map(({ title }) => title);
  const last = parts.at(-1);
  const end = Math.min(at(to), day.to);
  if (last?.answer === answer) {
    last.to = end;
    last.because = [...new Set([...last.because, ...because])];
  } else parts.push({ answer, from: Math.max(at(from), day.from), to: end, because });
}

function goesOn(open: Stretch, day: Day, parts: readonly Part[]): boolean {
  if (open.days >= MOST_DAYS || parts.length !== open.onLast.length) return false;
  const edge = (of: Day, part: Part) => part.from - of.from;
  return parts.every((part, index) => {
    const [before, first] = [open.onLast[index]!, open.onFirst[index]!];
    if (part.answer !== before.answer) return false;
    // The first part begins with the day, or with the span.
    if (index === 0) return true;
    const moved = (of: Day, other: Part) => Math.abs(edge(day, part) - edge(of, other));
    return moved(open.last, before) <= NEXT_DAY && moved(open.first, first) <= IN_ALL;
  });
}

function gather(because: Map<Answer, string[]>, parts: readonly Part[]): Map<Answer, string[]> {
  for (const part of parts) {
    because.set(part.answer, [...new Set([...(because.get(part.answer) ?? []), ...part.because])]);
  }
  return because;
}
