/** Takes one step of the search: an act, or several on one practice flight, and judges what is left in the way. */
import { localDateOf, startOfDay, type EpochSeconds } from '../calendar/instants.js';
import type { Effect } from '../engine/remedy.js';
import { isOverridable } from '../engine/rule.js';
import { billOf, daysTo, leaveBill } from './bill.js';
import { costOf, NOTHING, plus, type Bill } from './cost.js';
import { inconvenience } from './inconvenience.js';
import { effectsAt } from './offers.js';
import { isRefusal, place, refusal, tellLate, type Placed, type Refusal } from './place.js';
import { applyDone, changedBy } from './apply.js';
import {
  departureOf,
  endOf,
  keyOf,
  markOf,
  marksOf,
  requestOf,
  type Change,
  type Done,
  type Offer,
  type Sortie,
  type State,
  type Unit,
} from './state.js';
import { judgeAgain } from './verdicts.js';
import type { World } from './world.js';

/** The state after the step, or why there is none. `placed` is worked out unless known. */
export function advance(world: World, state: State, unit: Unit, placed?: Placed): State | Refusal {
  let at: Placed | Refusal = placed ?? place(world, state, unit);
  // A rule may date an act later than it was asked for; then that is when it is done.
  for (let tries = 0; tries < 3; tries += 1) {
    if (isRefusal(at)) return at;
    const next = perform(world, state, unit, at);
    if (typeof next !== 'number') return next;
    at = place(world, state, unit, next);
  }
  return refusal('gone');
}

const DATED = ['on', 'examOn', 'courseOn', 'issuedOn', 'lastDoneOn'];

function lastDate(effects: readonly Effect[]): string | null {
  const dates = effects.flatMap((effect) => {
    if (effect.op !== 'append' && effect.op !== 'amend') return [];
    const record = (effect.op === 'append' ? effect.value : effect.fields) as Record<string, unknown>;
    return DATED.map((field) => record[field]).filter((date): date is string => typeof date === 'string');
  });
  return dates.sort().at(-1) ?? null;
}

/** Does the acts of a unit, one after the other; or gives the later time for which a rule dates one of them. */
function perform(world: World, before: State, unit: Unit, placed: Placed): State | Refusal | EpochSeconds {
  const { at, sortie } = placed;
  const { zone } = before.sheet;
  let state: State = { ...before, parent: before, unit };
  for (const [index, offer] of unit.offers.entries()) {
    if (offer.change.is === 'leave' && !onlyOverridable(world, state)) return refusal('gone');
    const fresh = freshly(world, state, offer, at, sortie);
    if (!fresh) return refusal('gone');
    const { change, as, title } = fresh;
    const day = change.is === 'effects' && offer.askers.length > 0 ? lastDate(change.effects) : null;
    if (day !== null && day > localDateOf(at, zone)) return startOfDay(day, zone);
    const done: Done = {
      offer: { ...offer, title },
      change,
      as,
      from: sortie ? sortie.from : at,
      to: sortie ? endOf(sortie) : at,
      bill: NOTHING,
      cures: [],
      sortie,
      books: sortie !== null && index === 0,
      mark: markOf(offer, placed),
    };
    state = after(world, state, done, billOf(world, unit, index, sortie));
  }
  const last = Math.max(...state.done.map(({ to }) => to));
  if (last <= departureOf(state.sheet)) return state;
  tellLate(world, unit, last);
  return refusal('late');
}

function freshly(
  world: World,
  state: State,
  offer: Offer,
  at: EpochSeconds,
  sortie: Sortie | null,
): { change: Change; as: Done['as']; title: string } | null {
  if (offer.askers.length === 0)
    return { change: offer.change, as: { crew: state.verdicts.crew, flight: null }, title: offer.title };
  const asked = effectsAt(world, state, offer, at);
  if (!asked) return null;
  const effects = sortie?.dual ? asked.effects.map(asTaught) : asked.effects;
  return { change: { is: 'effects', effects }, as: asked.as, title: asked.title };
}

/** With an instructor in command, the person who practises logs it as instruction received. */
function asTaught(effect: Effect): Effect {
  if (effect.op !== 'append' || !('role' in effect.value) || effect.value.role !== 'pilot-in-command')
    return effect;
  return { ...effect, value: { ...effect.value, role: 'dual-received' } };
}

/** The sheet, the verdicts and the bill after one act. */
function after(world: World, state: State, done: Done, bill: Bill): State {
  const sheet = applyDone(state.sheet, done);
  const { ruleset } = world;
  const verdicts =
    done.change.is === 'leave'
      ? { ...state.verdicts, blocking: [] }
      : judgeAgain(state.verdicts, sheet, ruleset, departureOf(sheet), changedBy(state.sheet, done));
  const cured = state.verdicts.blocking.filter((rule) => !verdicts.blocking.includes(rule));
  const ids = cured.map((rule) => ruleset.rules[rule]!.id);
  const trouble = inconvenience(
    { sheet: state.sheet, crew: state.verdicts.crew },
    { sheet, crew: verdicts.crew },
    world.prices,
  );
  const whole = plus(plus(bill, trouble), leaveBill(world, state, done));
  const all = [...state.done, { ...done, bill: whole, cures: ids }];
  return {
    ...state,
    sheet,
    verdicts,
    done: all,
    overrides: done.change.is === 'leave' ? ids : state.overrides,
    cost: costOf(all.map((one) => one.bill).reduce(plus, NOTHING), daysTo(world, all), world.prices),
    key: keyOf({ settled: state.settled, request: requestOf(sheet), marks: marksOf(all) }),
    trail: `${state.trail}
${done.mark}`,
  };
}

/** May an officer set aside all that is left in the way? */
export const onlyOverridable = (world: World, state: State): boolean =>
  state.verdicts.blocking.length > 0 &&
  state.verdicts.blocking.every((rule) => isOverridable(world.ruleset.rules[rule]!));
