/**
 * The least that is still to come in a state: a bound from below, so that cheapest first stays cheapest first.
 *
 * Each rule in the way has to be put right by some act that changes what it reads. An act that may put several right is
 * charged to each of them in parts, so that no plan is charged more than it costs. Getting there and back is charged
 * once where only practice flights help, and waiting as long as the slowest of what cannot be done without.
 */
import { isOverridable } from '../engine/rule.js';
import { daysTo } from './bill.js';
import { candidatesIn, mayCure, type Candidate } from './candidates.js';
import { airBill, totalOf } from './cost.js';
import { airOf } from './place.js';
import type { Offer, State } from './state.js';
import type { World } from './world.js';

/** What a state leads to at the least, and the acts to go on with. */
export interface Outlook {
  /** The least that is to come, valued in money. */
  least: number;
  /** Acts one of which every plan from here on must hold. */
  next: readonly Offer[];
}

const OVER: Outlook = { least: 0, next: [] };

/** The outlook of a state; null when no act is known that could put something right. */
export function outlookOf(world: World, state: State): Outlook | null {
  const { blocking } = state.verdicts;
  if (blocking.length === 0 || !state.settled) return OVER;
  const { rules } = world.ruleset;
  const candidates = candidatesIn(world, state);
  const lists = blocking.map((rule) => ({
    rule,
    // An officer may do instead.
    byLeave: world.aim === 'officer' && isOverridable(rules[rule]!),
    may: candidates.filter((one) => mayCure(world, state, one.offer, rule)),
  }));
  if (lists.some(({ may, byLeave }) => may.length === 0 && !byLeave)) return null;
  const must = lists.filter(({ byLeave }) => !byLeave);
  const next =
    must.length > 0
      ? must.reduce((best, one) => (easierThan(one.may, best.may) ? one : best)).may
      : lists.flatMap(({ may }) => may);
  const shared = new Map<Candidate, number>();
  for (const { may } of lists) for (const one of may) shared.set(one, (shared.get(one) ?? 0) + 1);
  const part = (one: Candidate): number => one.least / shared.get(one)!;
  const leave =
    world.prices.number('club.cost.points.officer') * world.prices.number('club.cost.value-of-point');
  let least = 0;
  for (const { may, byLeave } of lists) least += Math.min(...may.map(part), ...(byLeave ? [leave] : []));
  const musts = must.map(({ may }) => may);
  return {
    least: least + gettingThere(world, state, musts, shared) + waiting(world, state, musts),
    next: [...new Set(next.map(({ offer }) => offer))],
  };
}

/** What takes no flying comes first, then what leaves the least choice. */
function easierThan(a: readonly Candidate[], b: readonly Candidate[]): boolean {
  const flies = (list: readonly Candidate[]): number => (list.some(({ air }) => air !== null) ? 1 : 0);
  return flies(a) !== flies(b) ? flies(a) < flies(b) : a.length < b.length;
}

/** Practice flights that are still to be begun, at the least: by hours in the air, by light, or one. */
function gettingThere(
  world: World,
  state: State,
  lists: readonly (readonly Candidate[])[],
  shared: ReadonlyMap<Candidate, number>,
): number {
  const flown = lists.filter((list) => list.every(({ air }) => air !== null));
  if (flown.length === 0) return 0;
  const there = world.prices.number('club.cost.hours.sortie');
  const room = world.prices.number('club.cost.hours.longest') - there;
  const planned = plannedFlights(world, state);
  const hours = flown.reduce(
    (sum, list) => sum + Math.min(...list.map((one) => Math.min(one.air!, room) / shared.get(one)!)),
    planned.reduce((sum, { air }) => sum + Math.min(air, room), 0),
  );
  const needs = (light: Candidate['light']): boolean =>
    flown.some((list) => list.every((one) => one.light === light));
  const [day, night] = [needs('day'), needs('night')];
  const begun = Math.max(
    room > 0 ? Math.ceil(hours / room - 0.001) - planned.length : 0,
    (day && night ? 2 : 1) - planned.length,
    (day && planned.every(({ light }) => light === 'night') ? 1 : 0) +
      (night && planned.every(({ light }) => light === 'day') ? 1 : 0),
  );
  const dual = flown.every((list) => list.every((one) => one.dual));
  return Math.max(0, begun) * totalOf(world.prices, airBill(there, dual, world.prices));
}

/** The practice flights of a plan: hours of what is flown on them, and the light it needs. */
function plannedFlights(world: World, { done }: State): { air: number; light: Candidate['light'] }[] {
  const sorties = [...new Set(done.flatMap(({ sortie }) => sortie ?? []))];
  return sorties.map((sortie) => {
    const flown = done.filter((one) => one.sortie === sortie).map(({ offer }) => offer);
    const lights = flown.flatMap(({ entries }) => entries.flatMap(({ sketch }) => sketch?.light ?? []));
    return {
      air: flown.reduce((sum, offer) => sum + airOf(world, offer), 0),
      light: lights.find((light) => light !== 'any') ?? 'any',
    };
  });
}

/** Waiting for the slowest of what cannot be done without. */
function waiting(world: World, state: State, lists: readonly (readonly Candidate[])[]): number {
  const ready = lists.map((list) => Math.min(...list.map((one) => one.ready)));
  const days = daysTo(world, [{ to: Math.max(world.start, ...ready) }]) - state.cost.days;
  return Math.max(0, days) * world.prices.number('club.cost.value-of-day');
}
