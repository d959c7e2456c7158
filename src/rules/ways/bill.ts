/** What a step costs. */
import { daysBetween } from '../calendar/dates.js';
import { localDateOf } from '../calendar/instants.js';
import { airBill, groundBill, NOTHING, plus, type Bill } from './cost.js';
import { airOf } from './place.js';
import { isRequest, type Done, type Sortie, type State, type Unit } from './state.js';
import type { World } from './world.js';

/** Getting there and back is paid once, with the first task of a practice flight. */
export function billOf(world: World, unit: Unit, index: number, sortie: Sortie | null): Bill {
  const offer = unit.offers[index]!;
  if (isRequest(offer)) return NOTHING;
  const ground = offer.entries.map((entry) => groundBill(entry, world.prices)).reduce(plus, NOTHING);
  if (!sortie) return ground;
  const there = index === 0 ? sortie.flights * world.prices.number('club.cost.hours.sortie') : 0;
  const byExaminer = offer.entries.some(({ sketch }) => sketch?.with === 'examiner');
  return plus(ground, airBill(airOf(world, offer) + there, sortie.dual && !byExaminer, world.prices));
}

/** All acts of a unit. */
export const unitBill = (world: World, unit: Unit, sortie: Sortie | null): Bill =>
  unit.offers.map((_, index) => billOf(world, unit, index, sortie)).reduce(plus, NOTHING);

/** Asking an officer costs by the number of rules to be set aside. */
export function leaveBill(world: World, state: State, { change }: Pick<Done, 'change'>): Bill {
  if (change.is !== 'leave') return NOTHING;
  const each = world.prices.number('club.cost.points.officer');
  return { ...NOTHING, points: each * state.verdicts.blocking.length };
}

/** Calendar days until the last act is done. */
export function daysTo({ start, question, days }: World, done: readonly Pick<Done, 'to'>[]): number {
  const last = done.reduce((latest, { to }) => Math.max(latest, to), start);
  let count = days.get(last);
  if (count === undefined) {
    const { zone } = question.sheet;
    count = daysBetween(localDateOf(start, zone), localDateOf(last, zone));
    days.set(last, count);
  }
  return count;
}
