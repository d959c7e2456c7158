/**
 * The next practice flight: what, in which order, how often, to which tolerances, with an instructor or not. Made from
 * what is rusty, what bookings to come need and what a checkout lacks; every item says why, as data. It permits nothing:
 * the flight itself is judged as any flight is.
 */
import { daysBetween } from '../../rules/calendar/dates.js';
import { editionOn } from '../tolerances/judge.js';
import type { Task } from '../tolerances/standards.js';
import { meets, pairKey, type Condition } from './conditions.js';
import { fitTime, type Candidate, type Option } from './fit-time.js';
import type {
  Drill,
  LeftOut,
  PlanInput,
  PlanItem,
  PlanSettings,
  PlanTolerance,
  PracticePlan,
} from './plan-types.js';
import type { Rust } from './rust.js';
import { said, type Said } from './words.js';

/** A manoeuvre in a condition, with everything that speaks for it. */
interface Wanted {
  manoeuvre: Task;
  condition: Condition;
  rust: Rust;
  value: number;
  /** Times a checkout lacks; 0: none does. */
  lacking: number;
  why: Said[];
}

interface Placed extends Wanted {
  drill: Drill;
  dualWhy: Said | null;
  ifOffered: boolean;
  /** Most times worth flying. */
  wanted: number;
}

export function buildPlan(input: PlanInput): PracticePlan {
  checkInput(input);
  const leftOut: LeftOut[] = [];
  const placed = together(wantedOf(input).flatMap((one) => place(one, input, leftOut)));
  const { offer, settings } = input;
  const candidates = placed.map((one) => candidateOf(one, settings));
  const fit = fitTime(candidates, offer.minutes, offer.transitMinutes);
  const items: { item: PlanItem; drill: Drill }[] = [];
  for (const [at, one] of placed.entries()) {
    const taken = fit.taken[at];
    if (taken === null || taken === undefined) {
      const minutes = candidates[at]!.options[0]!.minutes;
      leftOut.push(out(one, 'no-time', said('plan.out.no-time', { minutes, available: offer.minutes })));
    } else items.push({ item: itemOf(one, candidates[at]!.options[taken]!, input), drill: one.drill });
  }
  items.sort(
    (a, b) =>
      inOrder(a.drill, b.drill) || harder(a.item.condition, b.item.condition) || byKey(a.item, b.item),
  );
  leftOut.sort(byKey);
  const planned = items.map(({ item }) => item);
  const away = items.some(({ drill }) => drill.where === 'practice-area');
  const inItems = planned.reduce((sum, { minutes }) => sum + minutes, 0);
  const transit = away ? offer.transitMinutes : 0;
  return {
    items: planned,
    leftOut,
    dual: planned.some(({ withInstructor }) => withInstructor),
    minutes: { items: inItems, transit, total: inItems + transit, available: offer.minutes },
    totalTenths: Math.ceil((inItems + transit) / 6),
    cautions: cautionsOf(planned),
  };
}

/** Throws RangeError on numbers that no plan can be made from. */
function checkInput({ offer, drills, checkouts, settings }: PlanInput): void {
  const whole = (value: number, least: number): boolean => Number.isInteger(value) && value >= least;
  if (!whole(offer.minutes, 0) || !whole(offer.transitMinutes, 0) || offer.minutes > 24 * 60)
    throw new RangeError('minutes of a flight are whole, and at most a day');
  for (const { manoeuvre, setUpMinutes, minutesEach, least, most } of drills)
    if (
      !whole(setUpMinutes, 0) ||
      !whole(minutesEach, 1) ||
      !whole(least, 1) ||
      !whole(most, least) ||
      most > 50
    )
      throw new RangeError(`the drill of ${manoeuvre} has no whole minutes and times`);
  if (new Set(drills.map(({ manoeuvre }) => manoeuvre)).size < drills.length)
    throw new RangeError('a manoeuvre has two drills');
  if (!checkouts.every(({ times }) => whole(times, 1)))
    throw new RangeError('a checkout lacks a whole number of times');
  const { rustFrom, dualFromRust, repetitionShare, bookingHalfDays, ...weights } = settings;
  const share = (value: number): boolean => value >= 0 && value <= 1;
  if (!share(rustFrom) || !share(dualFromRust) || !(repetitionShare > 0 && repetitionShare < 1))
    throw new RangeError('shares lie between 0 and 1');
  if (
    !(bookingHalfDays > 0) ||
    !Object.values(weights).every((weight) => weight >= 0 && Number.isFinite(weight))
  )
    throw new RangeError('weights are not negative');
}

/** Everything that anything speaks for, in a fixed order. */
function wantedOf({ watched, bookings, checkouts, rustOf, settings, offer }: PlanInput): Wanted[] {
  const found = new Map<string, Wanted>();
  const want = (manoeuvre: Task, condition: Condition): Wanted => {
    const key = pairKey(manoeuvre, condition);
    let one = found.get(key);
    if (!one) {
      const rust = rustOf(manoeuvre, condition);
      one = { manoeuvre, condition, rust, value: 0, lacking: 0, why: [...rust.said] };
      found.set(key, one);
    }
    return one;
  };
  const forRust = new Set<string>();
  for (const { manoeuvre, condition } of watched) {
    const key = pairKey(manoeuvre, condition);
    const one = want(manoeuvre, condition);
    if (forRust.has(key) || one.rust.rust < settings.rustFrom) continue;
    forRust.add(key);
    one.value += settings.weightRust * one.rust.rust;
  }
  for (const { on, manoeuvre, condition } of bookings) {
    // A flight on the same day or before cannot be prepared for by this one.
    if (on < offer.on) continue;
    const one = want(manoeuvre, condition);
    if (one.rust.rust < settings.rustFrom) continue;
    const urgency = 2 ** (-daysBetween(offer.on, on) / settings.bookingHalfDays);
    one.value += settings.weightBooking * one.rust.rust * urgency;
    one.why.push(said('plan.booking', { on }));
  }
  for (const { manoeuvre, condition, times } of checkouts) {
    const one = want(manoeuvre, condition);
    one.value += settings.weightCheckout;
    one.lacking += times;
    one.why.push(said('plan.checkout', { times }));
  }
  return [...found.values()].filter(({ value }) => value > 0).sort(byKey);
}

/** With its drill and instructor, or left out with the reason. */
function place(one: Wanted, { drills, offer, settings }: PlanInput, leftOut: LeftOut[]): Placed[] {
  const drill = drills.find(({ manoeuvre }) => manoeuvre === one.manoeuvre);
  if (!drill) {
    leftOut.push(out(one, 'no-drill', said('plan.out.no-drill')));
    return [];
  }
  const offered = meets(offer, one.condition);
  if (offered === false) {
    leftOut.push(out(one, 'not-offered', said('plan.out.not-offered')));
    return [];
  }
  const dualWhy = whyDual(one, drill, settings);
  if (dualWhy && !offer.instructor) {
    leftOut.push(
      out({ ...one, why: [...one.why, dualWhy] }, 'no-instructor', said('plan.out.no-instructor')),
    );
    return [];
  }
  const byRust = Math.round(drill.least + (drill.most - drill.least) * one.rust.rust);
  const wanted = Math.min(drill.most, Math.max(byRust, one.lacking, drill.least));
  return [{ ...one, drill, dualWhy, ifOffered: offered === null, wanted }];
}

/** What is flown in a harder condition is practised in any: one item, with all that speaks for both. */
function together(placed: readonly Placed[]): Placed[] {
  const kept: Placed[] = placed
    .filter(({ condition }) => condition.kind !== 'any')
    .map((one) => ({ ...one }));
  for (const one of placed.filter(({ condition }) => condition.kind === 'any')) {
    const harder = kept.find(
      ({ manoeuvre, condition, ifOffered }) =>
        manoeuvre === one.manoeuvre && condition.kind !== 'any' && !ifOffered,
    );
    if (!harder) {
      kept.push(one);
      continue;
    }
    harder.value += one.value;
    harder.wanted = Math.max(harder.wanted, one.wanted);
    harder.why = [...harder.why, ...one.why];
    harder.dualWhy ??= one.dualWhy;
  }
  return kept.sort(byKey);
}

function whyDual({ rust, lacking }: Wanted, drill: Drill, settings: PlanSettings): Said | null {
  if (drill.alwaysDual) return said('plan.dual.always');
  if (lacking > 0) return said('plan.dual.checkout');
  if (rust.lastGoodOn === null) return said('plan.dual.never');
  if (rust.outsideSince > 0) return said('plan.dual.outside');
  if (rust.rust >= settings.dualFromRust) return said('plan.dual.rusty');
  return null;
}

/** From the least times to those wanted; each repetition is worth a share of the one before. */
function candidateOf({ drill, wanted, value }: Placed, { repetitionShare }: PlanSettings): Candidate {
  const worth = (times: number): number => 1 - repetitionShare ** times;
  const options: Option[] = [];
  for (let times = drill.least; times <= wanted; times += 1)
    options.push({
      times,
      minutes: drill.setUpMinutes + drill.minutesEach * times,
      value: (value * worth(times)) / worth(wanted),
    });
  return { away: drill.where === 'practice-area', options };
}

function itemOf(one: Placed, option: Option, { levels, offer }: PlanInput): PlanItem {
  const fewer =
    option.times < one.wanted
      ? [said('plan.fewer', { times: option.times, wanted: one.wanted, minutes: offer.minutes })]
      : [];
  return {
    manoeuvre: one.manoeuvre,
    condition: one.condition,
    times: option.times,
    minutes: option.minutes,
    tolerance: toleranceOf(one.manoeuvre, levels, offer.on),
    withInstructor: one.dualWhy !== null,
    ifOffered: one.ifOffered,
    rust: one.rust.rust,
    why: [
      ...one.why,
      ...(one.dualWhy ? [one.dualWhy] : []),
      ...(one.ifOffered ? [said('plan.if-offered')] : []),
      ...fewer,
    ],
  };
}

function toleranceOf(manoeuvre: Task, levels: PlanInput['levels'], on: string): PlanTolerance | null {
  for (const level of levels) {
    const edition = editionOn(level, on);
    const standard = edition?.tasks[manoeuvre];
    if (edition && standard)
      return { document: edition.document, known: standard.known, limits: standard.limits };
  }
  return null;
}

const out = (
  { manoeuvre, condition, why }: Pick<Wanted, 'manoeuvre' | 'condition' | 'why'>,
  reason: LeftOut['reason'],
  because: Said,
): LeftOut => ({ manoeuvre, condition, reason, why: [...why, because] });

function cautionsOf(items: readonly PlanItem[]): Said[] {
  return [
    said('plan.caution.no-decision'),
    said('plan.caution.model'),
    ...(items.some(({ tolerance }) => tolerance?.known === 'from memory')
      ? [said('plan.caution.from-memory')]
      : []),
    ...(items.some(({ tolerance }) => tolerance === null) ? [said('plan.caution.no-standard')] : []),
  ];
}

/** The practice area first, so that the flight ends in the pattern. */
function inOrder(a: Drill, b: Drill): number {
  const place = (one: Drill): number => (one.where === 'practice-area' ? 0 : 1);
  return place(a) - place(b) || a.order - b.order;
}

/** A manoeuvre is flown in any conditions before in harder ones. */
function harder(a: Condition, b: Condition): number {
  const rank = ({ kind }: Condition): number => (kind === 'any' ? 0 : 1);
  return rank(a) - rank(b);
}

function byKey(
  a: { manoeuvre: Task; condition: Condition },
  b: { manoeuvre: Task; condition: Condition },
): number {
  const [one, other] = [pairKey(a.manoeuvre, a.condition), pairKey(b.manoeuvre, b.condition)];
  return one < other ? -1 : one > other ? 1 : 0;
}
