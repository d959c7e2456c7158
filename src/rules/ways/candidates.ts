/** The acts that may put right what stands in the way of a flight, and what each costs at the least. */
import type { EpochSeconds } from '../calendar/instants.js';
import { pullOf, weighable } from '../engine/combine.js';
import { crewAt, timeAt } from '../engine/judge.js';
import { runRule } from '../engine/run.js';
import { applyChange, PAPERS } from './apply.js';
import { airBill, groundBill, NOTHING, plus, totalOf } from './cost.js';
import { offersAgainst } from './offers.js';
import { waitingPapers } from './own/office.js';
import { airOf, earliest, tellLate } from './place.js';
import { departureOf, isBanned, isPractice, isRequest, type Offer, type State } from './state.js';
import { nameOf } from './verdicts.js';
import type { World } from './world.js';

/** An act that may put a rule right, and what it costs at the least. */
export interface Candidate {
  offer: Offer;
  least: number;
  ready: EpochSeconds;
  /** Hours in the air, where it is flown on a practice flight that may serve for more; else null. */
  air: number | null;
  dual: boolean;
  light: 'day' | 'night' | 'any';
}

/** What could be done: what is offered against what stands in the way, papers that wait, and what made room before. */
export function candidatesIn(world: World, state: State): Candidate[] {
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
    const least = totalOf(world.prices, plus(ground, airBill(hours, dual, world.prices)));
    const joins = practice && sketches.every((sketch) => sketch.with !== 'examiner');
    return [{ offer, least, ready, air: joins ? hours : null, dual, light }];
  });
}

/** Facts of which several records together may do what none does alone. */
const COUNTED = ['log', 'basicMed', 'endorsements'];

/** May the act put the rule right, by itself or together with others? */
export function mayCure(world: World, state: State, offer: Offer, rule: number): boolean {
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
