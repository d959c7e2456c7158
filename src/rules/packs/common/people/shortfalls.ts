/**
 * What a flight lacks under a rule with many limits, each with the ways to put it right. A remedy must cure the whole
 * finding, so it has to put every shortfall right at once.
 */
import type { Actor, Effect, Remedy } from '../../../engine/remedy.js';

/**
 * One thing that is not as the rule wants it, and the ways (possibly none) to put it right, best first. They are made
 * only when somebody asks to see them.
 */
export interface Shortfall {
  /** Completes a sentence: 'the aircraft has 180 hp, more than 160 hp'. */
  what: string;
  cures: () => readonly Remedy[];
}

/** All shortfalls as one clause. */
export function saysAll(shortfalls: readonly Pick<Shortfall, 'what'>[]): string {
  return shortfalls.map((shortfall) => shortfall.what).join('; ');
}

/** Nothing puts it right. */
export const NO_CURE = (): readonly Remedy[] => [];

/** Remedies that cure them all: each cure of a single shortfall, else the first cures together under the name `act`. */
export function curesOf(shortfalls: readonly Shortfall[], act: string): Remedy[] {
  if (shortfalls.length === 1) return [...shortfalls[0]!.cures()];
  const firsts = shortfalls.map((shortfall) => shortfall.cures()[0]);
  if (firsts.some((cure) => cure === undefined)) return [];
  const cures = firsts as Remedy[];
  return [
    {
      act,
      title: [...new Set(cures.map((cure) => cure.title))].join(' '),
      by: hardestActor(cures),
      effects: cures.flatMap((cure): Effect[] => cure.effects),
    },
  ];
}

/** A plan of several acts waits for the person furthest from the member. */
function hardestActor(cures: readonly Remedy[]): Actor {
  const order: readonly Actor[] = ['medical-examiner', 'examiner', 'instructor'];
  return order.find((actor) => cures.some((cure) => cure.by === actor)) ?? 'member';
}
