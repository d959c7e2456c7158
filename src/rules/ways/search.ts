/** Cheapest first: every state is looked at in order of its cost, so the first that is a yes is the cheapest. */
import { departureOf, isUnnamed, keyOf, requestOf, type State } from './state.js';
import { isRefusal, type Refusal } from './place.js';
import type { Step } from './steps.js';
import { successors } from './successors.js';
import { judgeVerdicts } from './verdicts.js';
import { costOf, NOTHING } from './cost.js';
import { outlookOf, type Outlook } from './estimate.js';
import { Queue } from './queue.js';
import type { WaysLimits } from './types.js';
import type { World } from './world.js';

export const DEFAULT_LIMITS: WaysLimits = { nodes: 4000 };

/** The state before anything is done. */
export function rootOf(world: World): State {
  const { sheet } = world.question;
  return {
    parent: null,
    unit: null,
    sheet,
    verdicts: judgeVerdicts(sheet, world.ruleset, departureOf(sheet)),
    done: [],
    settled: false,
    overrides: [],
    cost: costOf(NOTHING, 0, world.prices),
    key: keyOf({ settled: false, request: requestOf(sheet), marks: [] }),
    trail: '',
  };
}

/** Whether a state is an end of what the search is after: nothing stands in the way any more. */
function isEnd(world: World, state: State, root: State): boolean {
  if (state.verdicts.blocking.length > 0 || !state.settled) return false;
  if (state.done.length === 0 && isUnnamed(root)) return false;
  if (world.aim === 'officer') return state.overrides.length > 0;
  return world.aim === 'instructor'
    ? isUnnamed(state) && !isUnnamed(root)
    : !isUnnamed(state) || isUnnamed(root);
}

/** What is shared by the searches of one question: states looked at, and the limit that was met. */
export interface Spent {
  limits: WaysLimits;
  looked: number;
  bound: 'nodes' | 'time' | null;
  /** Rules in the way at first that some state got out of the way. */
  cured: Set<number>;
}

/** A state to be looked at, or a step that would lead to one. */
interface Waiting {
  /** What its cheapest end costs at the least. */
  least: number;
  acts: number;
  settled: boolean;
  key: string;
  then: { state: State; outlook: Outlook } | null;
  step: Step | null;
}

/**
 * The cheapest end: states are looked at in order of what their ends cost at the least (A*), so the first end is the
 * cheapest that is accepted. Null when there is none, or a limit was met.
 */
export function cheapest<T>(
  world: World,
  root: State,
  spent: Spent,
  accept: (end: State) => T | null,
): T | null {
  const queue = new Queue<Waiting>(sooner);
  const seen = new Set<string>();
  const wait = (state: State, least: number): void => {
    const outlook = outlookOf(world, state);
    if (!outlook) return;
    const { key, done, cost } = state;
    const whole = Math.max(least, cents(cost.total + outlook.least));
    queue.push({
      least: whole,
      acts: done.length,
      settled: state.settled,
      key,
      then: { state, outlook },
      step: null,
    });
  };
  wait(root, 0);
  for (let next = queue.pop(); next; next = queue.pop()) {
    if (seen.has(next.key)) continue;
    if (next.step) {
      if (spent.looked >= spent.limits.nodes) spent.bound ??= 'nodes';
      else if (spent.limits.shouldStop?.()) spent.bound ??= 'time';
      if (spent.bound) return null;
      spent.looked += 1;
      const taken = take(world, next.step);
      if (isRefusal(taken) || seen.has(taken.key)) continue;
      for (const rule of root.verdicts.blocking)
        if (!taken.verdicts.blocking.includes(rule)) spent.cured.add(rule);
      wait(taken, next.least);
      continue;
    }
    const { state, outlook } = next.then!;
    seen.add(next.key);
    if (isEnd(world, state, root)) {
      const accepted = accept(state);
      if (accepted !== null) return accepted;
      // The same might be come by with less.
      seen.delete(next.key);
      continue;
    }
    for (const step of successors(world, state, outlook.next)) {
      if (!seen.has(step.key))
        queue.push({
          least: Math.max(next.least, step.atLeast),
          acts: step.acts,
          settled: step.settled,
          key: step.key,
          then: null,
          step,
        });
    }
  }
  return null;
}

function take(world: World, { name, take: go }: Step): State | Refusal {
  let taken = world.taken.get(name);
  if (!taken) world.taken.set(name, (taken = go()));
  return taken;
}

const cents = (value: number): number => Math.round(value * 100) / 100;

/**
 * By cost; then what is settled, the plan that is further on first; then the request that was changed least. At last by
 * name: the order of lists in the question changes nothing.
 */
const sooner = (a: Waiting, b: Waiting): boolean => {
  if (a.least !== b.least) return a.least < b.least;
  if (a.settled !== b.settled) return a.settled;
  if (a.acts !== b.acts) return a.settled ? a.acts > b.acts : a.acts < b.acts;
  if (a.key !== b.key) return a.key < b.key;
  return a.then !== null && b.then === null;
};
