/** The first departure of a timeline that will do. */
import { toInstant, type Answer, type AnswerStep, type EpochSeconds } from '../../rules/index.js';

/** A departure, and the answer there. */
export interface Slot {
  departs: string;
  arrives: string;
  answer: Answer;
}

/** Answers with which a flight may be booked. */
export const BOOKABLE: readonly Answer[] = ['yes', 'yes-with-conditions'];

const MINUTE = 60;

/**
 * The first departure on a whole minute, not before `notBefore`, whose answer is one of `good`. Sun and clocks give edges to
 * the second, and nobody leaves at 13 seconds past.
 */
export function slotOf(
  steps: readonly AnswerStep[],
  good: readonly Answer[],
  of: { notBefore: EpochSeconds; durationSeconds: number },
): Slot | null {
  for (const { from, to, answer } of steps) {
    if (!good.includes(answer)) continue;
    const departs = Math.ceil(Math.max(from, of.notBefore) / MINUTE) * MINUTE;
    if (departs < to)
      return { departs: toInstant(departs), arrives: toInstant(departs + of.durationSeconds), answer };
  }
  return null;
}

/** The earliest of some slots; of two at the same time the better answer; of two alike the one that comes first. */
export function earliest<S extends Slot>(slots: readonly S[]): S | null {
  let best: S | null = null;
  for (const slot of slots) {
    const better =
      best === null ||
      slot.departs < best.departs ||
      (slot.departs === best.departs && BOOKABLE.indexOf(slot.answer) < BOOKABLE.indexOf(best.answer));
    if (better) best = slot;
  }
  return best;
}
