/** Departures to put into the form. It holds one day, so the flight must be back on the day it leaves. */
import type { Answer } from '../api/types.js';
import { at, dayAt, instantOf, type Day } from './days.js';
import type { Slot, Step } from './types.js';

export const GOOD: readonly Answer[] = ['yes', 'yes-with-conditions'];
const MINUTE = 60_000;

/** The frame departures are chosen in. */
export interface Frame {
  days: readonly Day[];
  /** Length of the flight, milliseconds. */
  length: number;
  /** Earlier departures have gone by. */
  now: number;
}

/** The first departure of the step, not before `wish`, on a whole minute; null when none ends on its own day. */
export function departureIn(step: Step, frame: Frame, wish = 0): Slot | null {
  const { days, length, now } = frame;
  const to = at(step.to);
  let departs = Math.ceil(Math.max(at(step.from), wish, now) / MINUTE) * MINUTE;
  for (let day = dayAt(days, departs); day < days.length && departs < to; day += 1) {
    // Midnight itself is already the next day.
    if (departs + length < days[day]!.to) {
      return { departs: instantOf(departs), arrives: instantOf(departs + length), answer: step.answer };
    }
    departs = days[day]!.to;
  }
  return null;
}

/** The first departure of all whose answer is one of `good`. */
export function firstIn(steps: readonly Step[], good: readonly Answer[], frame: Frame): Slot | null {
  for (const step of steps) {
    const slot = good.includes(step.answer) ? departureIn(step, frame) : null;
    if (slot) return slot;
  }
  return null;
}
