/**
 * The least that is still to come in a state: a bound from below, so that cheapest first stays cheapest first.
 *
 * Each rule in the way has to be put right by some act that changes what it reads. An act that may put several right is
 * charged to each of them in parts, so that no plan is charged more than it costs. Getting there and back is charged
 * once where only practice flights help, and waiting as long as the slowest of what cannot be done without.
 */
import type { EpochSeconds } from '../calendar/instants.js';
import { crewAt, timeAt } from '../engine/judge.js';
import { runRule } from '../engine/run.js';
import { pullOf } from '../engine/combine.js';
import { daysTo } from './bill.js';
import { airBill, costOf, groundBill, NOTHING, plus } from './cost.js';
import { offersAgainst } from './offers.js';
import { waitingPapers } from './others.js';
import { airOf, earliest, tellLate } from './place.js';
import {
  applyChange,
  departureOf,
  isBanned,
  isPractice,
  isRequest,
  PAPERS,
  type Offer,
  type State,
} from './state.js';
import { isOverridable, nameOf, weighable } from './verdicts.js';
import type { World } from './world.js';

/** An act that may put a rule right, and what it costs at the least. */
interface Candidate {
  offer: Offer;
  least: number;
  ready: EpochSeconds;
  /** Hours in the air, where it is flown on a practice flight that may serve for more; else null. */
  air: number | null;
  dual: boolean;
  light: 'day' | 'night' | 'any';
}

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
  return Math.max(0, begun) * value(world, airBill(there, dual, world.prices));
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

const value = (world: World, bill: Parameters<typeof costOf>[0]): number =>
  costOf(bill, 0, world.prices).total;

/** What could be done: what is offered against what stands in the way, papers that wait, and what made room before. */
function candidatesIn(world: World, state: State): Candidate[] {
  const offers = new Map<string, Offer>();
  for (const offer of [
    ...offersAgainst(world, state),
    ...waitingPapers(world, state),
    ...world.enablers.values(),
  ]) {
    if (isRequest(offer) || isBanned(world.banned, offer)) continue;
    const known = offers.get(offer.meaning);
    // What made room for another act may also be offered against the flight itself.
    offers.set(offer.meaning, known ? { ...known, askers: [...known.askers, ...offer.askers] } : offer);
  }
  const departs = departureOf(state.sheet);
  return [...offers.values()].flatMap((offer) => {
    const ready = earliest(world, offer);
    if (ready > departs) {
      tellLate(world, { offers: [offer], dual: false }, ready);
      return [];
    }
    const sketches = offer.entries.flatMap(({ sketch }) => sketch ?? []);
    const dual = sketches.some((sketch) => sketch.with === 'instructor');
    const light = sketches.find((sketch) => sketch.light !== 'any')?.light ?? 'any';
    const ground = offer.entries.map((entry) => groundBill(entry, world.prices)).reduce(plus, NOTHING);
    const practice = isPractice(offer);
    const hours = practice ? airOf(world, offer) : 0;
    const least = value(world, plus(ground, airBill(hours, dual, world.prices)));
    const joins = practice && sketches.every((sketch) => sketch.with !== 'examiner');
    return [{ offer, least, ready, air: joins ? hours : null, dual, light }];
  });
}

/** Facts of which several records together may do what none does alone. */
const COUNTED = ['log', 'basicMed', 'endorsements'];

function mayCure(world: World, state: State, offer: Offer, rule: number): boolean {
  if (offer.askers.some((asker) => asker.rule === rule && asker.practice === null)) return true;
  const { sheet, verdicts } = state;
  const outcome = verdicts.outcomes[rule]!;
  let known = world.mayCure.get(outcome);
  if (!known) world.mayCure.set(outcome, (known = new Map()));
  let may = known.get(offer.meaning);
  if (may === undefined) {
    const reads = new Set(world.ruleset.rules[rule]!.reads.map((key) => nameOf(sheet, verdicts.crew, key)));
    const touched = namesOf(offer).filter((name) => reads.has(name));
    may =
      touched.some((name) => COUNTED.includes(name.split('.').at(-1)!)) ||
      (touched.length > 0 && curesAlone(world, state, offer, rule));
    known.set(offer.meaning, may);
  }
  return may;
}

function namesOf({ change, person }: Offer): string[] {
  if (change.is === 'parts') return [...PAPERS, 'unverified'].map((subject) => `${person}.${subject}`);
  if (change.is === 'leave') return [];
  return change.effects.flatMap((effect) => {
    if (effect.op === 'flight') return [];
    const [role, subject] = effect.fact.split('.');
    return [role === 'aircraft' ? effect.fact : `${person}.${subject}`];
  });
}

function curesAlone({ ruleset }: World, state: State, offer: Offer, rule: number): boolean {
  const sheet = applyChange(state.sheet, offer.change, { crew: state.verdicts.crew, flight: null });
  const departs = departureOf(sheet);
  const time = timeAt(sheet, departs);
  const { crew } = crewAt(sheet, ruleset, departs, time);
  const judged = ruleset.rules[rule]!;
  return pullOf(weighable(judged, runRule(judged, sheet, ruleset.book, crew, time)), crew) === 'none';
}
