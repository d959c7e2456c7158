import { stepNotOpen } from './squawk.problems.js';
import type { SquawkState } from './squawk.entity.js';

/** Where a squawk may go from each state. A closed one stays closed: a fault that shows again is a new squawk. */
export const NEXT_STATES: Record<SquawkState, SquawkState[]> = {
  reported: ['grounding', 'deferred', 'fixed', 'no-fault-found'],
  grounding: ['deferred', 'fixed', 'no-fault-found'],
  deferred: ['grounding', 'fixed', 'no-fault-found'],
  fixed: [],
  'no-fault-found': [],
};

/** States that something is still to be done about. */
export const OPEN_STATES: SquawkState[] = ['reported', 'grounding', 'deferred'];

/** @throws ProblemException 409 naming the steps that are open. */
export function requireStep(from: SquawkState, to: SquawkState): void {
  const open = NEXT_STATES[from];
  if (!open.includes(to)) throw stepNotOpen(from, open);
}

/** @throws ProblemException 409 when nothing can be changed about it any more. */
export function requireOpen(state: SquawkState): void {
  if (NEXT_STATES[state].length === 0) throw stepNotOpen(state, []);
}
