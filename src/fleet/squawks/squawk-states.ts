import { notClosed, stepNotOpen } from './squawk.problems.js';
import type { Squawk, SquawkState } from './squawk.entity.js';

/** Where a squawk may go from each state. A closed one is reopened first. */
export const NEXT_STATES: Record<SquawkState, SquawkState[]> = {
  reported: ['grounding', 'deferred', 'fixed', 'no-fault-found', 'duplicate'],
  grounding: ['deferred', 'fixed', 'no-fault-found', 'duplicate'],
  deferred: ['grounding', 'fixed', 'no-fault-found', 'duplicate'],
  fixed: [],
  'no-fault-found': [],
  duplicate: [],
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

/**
 * The state a closed squawk goes back to: one that grounded the aircraft grounds it again, any other has to be looked at.
 * @throws ProblemException 409 while it is open.
 */
export function reopenedState({ state, closedFrom }: Pick<Squawk, 'state' | 'closedFrom'>): SquawkState {
  if (OPEN_STATES.includes(state)) throw notClosed(state);
  return closedFrom === 'grounding' ? 'grounding' : 'reported';
}
