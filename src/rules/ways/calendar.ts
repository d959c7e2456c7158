/** Where the acts done so far stand in time. */
import { toSeconds, type EpochSeconds } from '../calendar/instants.js';
import type { FactSheet } from '../facts/sheet.js';
import { inTheWay, secondsOf, type InTheWay, type Practice } from './practice.js';
import { firstSlot, type Taken } from './slots.js';
import { applyDone } from './apply.js';
import { marksOf, type State } from './state.js';
import type { World } from './world.js';

/** The facts as they will be at a time: only what is done by then has happened. */
export function sheetAt(state: State, at: EpochSeconds): FactSheet {
  if (state.done.every(({ to }) => to <= at)) return state.sheet;
  let root = state;
  while (root.parent) root = root.parent;
  return state.done.filter(({ to }) => to <= at).reduce(applyDone, root.sheet);
}

/** The first time from `at` on at which the practice flight fits into light and calendars; null when none does. */
export function practiceSlot(state: State, practice: Practice, at: EpochSeconds): EpochSeconds | null {
  const { aircraft, people, flight } = state.sheet;
  const { reservations } = aircraft;
  const commitments = people[practice.person]?.commitments;
  const taken: Taken[] = [
    ...(reservations.known ? reservations.value : []),
    ...(commitments?.known ? commitments.value : []),
  ].map(({ from, to }) => ({ from: toSeconds(from), to: toSeconds(to) }));
  return firstSlot({
    from: at,
    seconds: secondsOf(practice),
    light: practice.night ? 'night' : 'day',
    field: flight.route[0],
    taken,
  });
}

/** What stands in the way of a practice flight at a time, after what is done by then. */
export function practiceBlockers(
  world: World,
  state: State,
  practice: Practice,
  at: EpochSeconds,
): readonly InTheWay[] {
  const before = marksOf(state.done.filter(({ to }) => to <= at)).sort();
  const key = `${at} ${JSON.stringify(practice)}\n${before.join('\n')}`;
  let found = world.practised.get(key);
  if (!found) {
    found = inTheWay(sheetAt(state, at), world.ruleset, practice, at);
    world.practised.set(key, found);
  }
  return found;
}
