/** When an act can be done at the earliest, and on what practice flight where it is one. */
import type { EpochSeconds } from '../calendar/instants.js';
import { practiceBlockers, practiceSlot } from './calendar.js';
import { airHours } from './cost.js';
import { secondsOf, type InTheWay, type Practice } from './practice.js';
import {
  departureOf,
  endOf,
  isPractice,
  isRequest,
  type Offer,
  type Sortie,
  type State,
  type Unit,
} from './state.js';
import type { World } from './world.js';

/** Why a step cannot be taken: too late, something in its way, or no longer offered. */
export interface Refusal {
  refused: 'late' | 'blocked' | 'gone';
  blockers: readonly InTheWay[];
}

/** A step with its time. */
export interface Placed {
  at: EpochSeconds;
  sortie: Sortie | null;
  /** It need not wait for another act to be done. */
  atOnce: boolean;
}

export const refusal = (refused: Refusal['refused'], blockers: readonly InTheWay[] = []): Refusal => ({
  refused,
  blockers,
});
export const isRefusal = (of: object): of is Refusal => 'refused' in of;

const DAY = 86_400;

/** The first time, not before `from`, at which a step can be taken. */
export function place(world: World, state: State, unit: Unit, from: EpochSeconds = 0): Placed | Refusal {
  const first = unit.offers[0]!;
  if (isRequest(first)) return { at: world.start, sortie: null, atOnce: true };
  const found = unit.dual ? world.start + world.prices.number('club.lead.instructor') * DAY : 0;
  const at = Math.max(from, found, ...unit.offers.map((offer) => earliest(world, offer)));
  if (isPractice(first)) return practise(world, state, unit, at);
  if (at <= departureOf(state.sheet)) return { at, sortie: null, atOnce: true };
  tellLate(world, unit, at);
  return refusal('late');
}

/** The first time at which the wait for an act is over. */
export function earliest(world: World, offer: Offer): EpochSeconds {
  const leads = offer.entries.map(({ lead }) =>
    lead === null ? 0 : world.prices.number(`club.lead.${lead}`),
  );
  return Math.max(world.start + Math.max(0, ...leads) * DAY, offer.notBefore);
}

/** The practice flight of a unit, at the first time at which nothing stands in its way. */
function practise(world: World, state: State, unit: Unit, from: EpochSeconds): Placed | Refusal {
  if (!canBeFlownTogether(world, unit)) return refusal('gone');
  const practice = practiceOf(world, state, unit);
  const times = [from, ...state.done.map(({ to }) => to).filter((to) => to > from)].sort((a, b) => a - b);
  let blockers: readonly InTheWay[] = [];
  for (const time of times) {
    const at = practiceSlot(state, practice, time);
    if (at === null) continue;
    const { dual, night, tenths, person } = practice;
    const { flights } = lengthOf(world, unit.offers);
    const sortie: Sortie = { dual, night, tenths, flights, from: at, to: at + secondsOf(practice), person };
    if (endOf(sortie) > departureOf(state.sheet)) {
      if (blockers.length > 0) break;
      tellLate(world, unit, endOf(sortie));
      return refusal('late');
    }
    const now = practiceBlockers(world, state, practice, at);
    if (now.length > 0) {
      if (blockers.length === 0) blockers = now;
      continue;
    }
    return { at, sortie, atOnce: blockers.length === 0 };
  }
  tellHeld(world, unit, blockers);
  return refusal('blocked', blockers);
}

/** Nothing by day with something by night, nothing alone with a safety pilot, and no longer than anybody learns from. */
function canBeFlownTogether(world: World, { offers, dual }: Unit): boolean {
  if (offers.length === 1) return true;
  const sketches = offers.flatMap(({ entries }) => entries.flatMap(({ sketch }) => sketch ?? []));
  const lights = sketches.map(({ light }) => light);
  const whom = sketches.map((sketch) => sketch.with);
  if (!dual && whom.includes('nobody') && whom.includes('safety-pilot')) return false;
  return !(lights.includes('day') && lights.includes('night')) && lengthOf(world, offers).flights === 1;
}

/** How many flights it takes, and how long each is. */
function lengthOf(world: World, offers: readonly Offer[]): { flights: number; tenths: number } {
  const task = offers.reduce((sum, offer) => sum + airOf(world, offer), 0);
  const there = world.prices.number('club.cost.hours.sortie');
  const room = Math.max(0.1, world.prices.number('club.cost.hours.longest') - there);
  const flights = Math.max(1, Math.ceil(task / room - 0.001));
  // To a thousandth first: sums of tenths come out a hair above.
  return { flights, tenths: Math.max(1, Math.ceil(Math.round((task / flights + there) * 1000) / 100)) };
}

function practiceOf(world: World, state: State, { offers, dual }: Unit): Practice {
  const sketches = offers.flatMap(({ entries }) => entries.flatMap(({ sketch }) => sketch ?? []));
  return {
    person: offers[0]!.person ?? state.sheet.flight.memberId,
    dual,
    night: sketches.some(({ light }) => light === 'night'),
    tenths: lengthOf(world, offers).tenths,
    transponder: state.sheet.flight.usesTransponder,
    alsoMet: [...new Set(sketches.flatMap(({ alsoMet }) => alsoMet ?? []))],
  };
}

/** Hours of an act in the air, without getting there and back. */
export function airOf(world: World, { entries, change }: Offer): number {
  const effects = change.is === 'effects' ? change.effects : [];
  return entries.reduce((sum, entry) => sum + airHours(entry, effects, world.prices), 0);
}

/** Keeps the earliest time at which an act that comes too late could have been done. */
export function tellLate(world: World, unit: Unit, done: EpochSeconds): void {
  for (const { act, title } of unit.offers) {
    const known = world.late.get(act);
    if (!known || done < known.done) world.late.set(act, { title, done });
  }
}

/** Keeps what stood in the way of an act. */
function tellHeld(world: World, { offers }: Unit, blockers: readonly InTheWay[]): void {
  for (const { act, title } of offers) {
    const known = world.held.get(act) ?? { title, by: new Set<number>() };
    for (const { rule } of blockers) known.by.add(rule);
    world.held.set(act, known);
  }
}
