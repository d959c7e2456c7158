/**
 * What is rusty across the club, counted and never named. Practice is told so that people dare to write down what went
 * wrong; who is rusty in what is between the member and who teaches them.
 */
import {
  watchedFor,
  rustOf,
  type ConditionLimits,
  type DecayModel,
  type Flown,
} from '../../practice/rust/index.js';
import { pairKey, type Condition } from '../../practice/rust/conditions.js';
import { equipmentIn } from '../../practice/advice/flown.js';
import type { Level, Task } from '../../practice/tolerances/index.js';
import type { LocalDate } from '../../rules/index.js';

/** Fewer would tell who. Not the club's to set: it keeps members' practice from the officers who set the club's numbers. */
export const FEWEST_TOLD = 5;

/** A member's practice, without the member. */
export interface Practised {
  levels: readonly Level[];
  flown: readonly Flown[];
}

/** How the club stands in one manoeuvre in one condition; null where too few are watched in it to be told. */
export interface Gap {
  manoeuvre: Task;
  condition: Condition;
  key: string;
  /** Whom it is watched for. */
  members: number;
  counts: {
    /** Not on record as done to standard. */
    never: number;
    /** As rusty as the club's practice plans take up, or more. */
    rusty: number;
    fresh: number;
    /** Days since it was last good, in the middle of those for whom it ever was. */
    middleDays: number | null;
  } | null;
}

/** The gaps, those that most members have first; those not told last. */
export function gapsOf(
  everybody: readonly Practised[],
  by: { decay: DecayModel; limits: ConditionLimits; rustFrom: number; on: LocalDate },
): Gap[] {
  const found = new Map<
    string,
    { manoeuvre: Task; condition: Condition; days: (number | null)[]; rusty: number }
  >();
  for (const { levels, flown } of everybody)
    for (const { manoeuvre, condition } of watchedFor(levels, by.limits, equipmentIn(flown))) {
      const key = pairKey(manoeuvre, condition);
      const gap = found.get(key) ?? { manoeuvre, condition, days: [], rusty: 0 };
      const { rust, lastGoodOn, days } = rustOf(manoeuvre, condition, flown, by.decay, by.on);
      gap.days.push(days);
      if (lastGoodOn !== null && rust >= by.rustFrom) gap.rusty += 1;
      found.set(key, gap);
    }
  return [...found]
    .map(([key, { manoeuvre, condition, days, rusty }]): Gap => {
      const known = days.filter((one) => one !== null).sort((a, b) => a - b);
      const never = days.length - known.length;
      const counts = {
        ...{ never, rusty, fresh: known.length - rusty },
        middleDays: known.length < FEWEST_TOLD ? null : known[Math.floor((known.length - 1) / 2)]!,
      };
      const told = days.length >= FEWEST_TOLD;
      return { ...{ manoeuvre, condition, key, members: days.length }, counts: told ? counts : null };
    })
    .sort((a, b) => shareOf(b) - shareOf(a) || (a.key < b.key ? -1 : 1));
}

const shareOf = ({ counts, members }: Gap): number =>
  counts === null ? -1 : (counts.never + counts.rusty) / members;
