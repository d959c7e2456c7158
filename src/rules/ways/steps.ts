/** Single steps from a state: an act on its own, alone or with an instructor, or flown together with others. */
import type { Sketch } from './act.js';
import { advance } from './advance.js';
import { daysTo, leaveBill, unitBill } from './bill.js';
import { costOf, minus, NOTHING, plus, type Bill } from './cost.js';
import { requested } from './inconvenience.js';
import { isRefusal, place, refusal, type Placed, type Refusal } from './place.js';
import {
  endOf,
  isPractice,
  isRequest,
  isUnnamed,
  keyOf,
  markOf,
  marksOf,
  requestOf,
  type Offer,
  type State,
  type Unit,
} from './state.js';
import type { World } from './world.js';

/** A step not taken yet. */
export interface Step {
  /** What the state after it costs at the least. */
  atLeast: number;
  acts: number;
  settled: boolean;
  /** The key of the state after it, unless a rule dates an act later than was thought. */
  key: string;
  /** Where it begins and what it is. */
  name: string;
  take(): State | Refusal;
}

/** Nothing is done: what the request is to be is settled. */
export function settle(state: State): Step {
  const { done, sheet, cost, trail } = state;
  const key = keyOf({ settled: true, request: requestOf(sheet), marks: marksOf(done) });
  const settled = { ...state, settled: true, key };
  return {
    atLeast: cost.total,
    acts: done.length,
    settled: true,
    key,
    name: `settle ${trail}`,
    take: () => settled,
  };
}

/** The ways to do an act: alone or with an instructor, on a flight of its own or together with others. */
export function stepsWith(world: World, state: State, offer: Offer): (Step | Refusal)[] {
  if (!isPractice(offer)) {
    const unit = { offers: [offer], dual: false };
    const placed = place(world, state, unit);
    return [isRefusal(placed) ? placed : ownStep(world, state, unit, placed)];
  }
  const taught = offer.entries.some(({ sketch }) => sketch !== null && needsTeacher(sketch));
  const flown = (dual: boolean): { step: Step | Refusal; atOnce: boolean } => {
    const unit = { offers: [offer], dual };
    const placed = place(world, state, unit);
    if (isRefusal(placed)) return { step: placed, atOnce: false };
    return { step: ownStep(world, state, unit, placed), atOnce: placed.atOnce };
  };
  const own = flown(taught);
  const steps = [own.step];
  // On one's own where nothing is in the way at once; else an instructor may be the shorter way.
  if (!taught && !own.atOnce) steps.push(flown(true).step);
  if (joins(offer)) steps.push(...joined(world, state, offer, taught));
  return steps;
}

/** The act as a unit of its own. */
function ownStep(world: World, state: State, unit: Unit, placed: Placed): Step {
  const { done, settled } = state;
  const offer = unit.offers[0]!;
  if (isRequest(offer)) return requestStep(world, state, unit, placed);
  const bill = plus(unitBill(world, unit, placed.sortie), leaveBill(world, state, offer));
  const to = placed.sortie ? endOf(placed.sortie) : placed.at;
  const mark = markOf(offer, placed);
  return {
    atLeast: costOf(plus(sumOf(state), bill), daysTo(world, [...done, { to }]), world.prices).total,
    acts: done.length + 1,
    settled,
    key: keyOf({ settled, request: requestOf(state.sheet), marks: [...marksOf(done), mark] }),
    name: `${mark} after ${state.trail}`,
    take: () => advance(world, state, unit, placed),
  };
}

function requestStep(world: World, state: State, unit: Unit, placed: Placed): Step {
  const { done, settled } = state;
  const offer = unit.offers[0]!;
  const { bill, request } = requested(world, state, offer);
  const mark = markOf(offer, placed);
  const marks = offer.change.is === 'parts' ? [...marksOf(done), mark] : marksOf(done);
  return {
    atLeast: costOf(plus(sumOf(state), bill), state.cost.days, world.prices).total,
    acts: done.length + 1,
    settled,
    key: keyOf({ settled, request, marks }),
    name: `${world.aim} ${mark} after ${state.trail}`,
    take: () => useful(world, state, advance(world, state, unit, placed)),
  };
}

/** The request is changed only for what it gets out of the way, or for an instructor the flight waits for. */
function useful(world: World, before: State, next: State | Refusal): State | Refusal {
  if (isRefusal(next)) return next;
  if (isUnnamed(next) && world.aim !== 'instructor' && !isUnnamed(before)) return refusal('gone');
  const cures = before.verdicts.blocking.some((rule) => !next.verdicts.blocking.includes(rule));
  return cures || before.verdicts.blocking.length === 0 ? next : refusal('gone');
}

const sumOf = (state: State): Bill => state.done.map(({ bill }) => bill).reduce(plus, NOTHING);

const needsTeacher = ({ with: whom }: Sketch): boolean => whom === 'instructor' || whom === 'examiner';

/** A test is flown on its own. */
const joins = (offer: Offer): boolean =>
  offer.entries.every(({ sketch }) => sketch === null || sketch.with !== 'examiner');

/** The act flown on a practice flight that is planned already: the plan is made again from there on. */
function joined(world: World, state: State, offer: Offer, taught: boolean): (Step | Refusal)[] {
  const trail: State[] = [];
  for (let at: State | null = state; at?.parent; at = at.parent) trail.unshift(at);
  return trail.flatMap((at, index): (Step | Refusal)[] => {
    const unit = at.unit!;
    const [first] = unit.offers;
    if (!first || !isPractice(first) || !joins(first)) return [];
    if ((first.person ?? null) !== (offer.person ?? null)) return [];
    const together: Unit = { offers: [...unit.offers, offer], dual: unit.dual || taught };
    const before = at.parent!;
    const placed = place(world, before, together);
    if (isRefusal(placed)) return [placed];
    const was = at.done[before.done.length]!.sortie;
    const dearer = minus(unitBill(world, together, placed.sortie), unitBill(world, unit, was));
    const flown = new Set(together.offers.map(({ meaning }) => meaning));
    const rest = state.done.filter(({ offer: { meaning } }) => !flown.has(meaning));
    const marks = together.offers.map((one) => markOf(one, placed));
    const key = keyOf({
      settled: true,
      request: requestOf(state.sheet),
      marks: [...marksOf(rest), ...marks],
    });
    const take = (): State | Refusal => {
      let next: State | Refusal = advance(world, before, together, placed);
      for (const later of trail.slice(index + 1)) {
        if (isRefusal(next)) break;
        next = advance(world, next, later.unit!);
      }
      return next;
    };
    const atLeast = costOf(plus(sumOf(state), dearer), 0, world.prices).total;
    return [
      {
        atLeast,
        acts: state.done.length + 1,
        settled: true,
        key,
        name: `joined ${marks.join()} after ${state.trail}`,
        take,
      },
    ];
  });
}
