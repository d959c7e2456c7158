import { UnknownFact } from '../engine/unknown.js';

/** The member has not told it yet; it is usually told shortly before departure, and a rule may wait for it. */
export class NotYetTold extends UnknownFact {}

/** Gives `value` unless the member has not told it. */
export function tell<T>(value: T | null | undefined, fact: string, because: string): T {
  if (value === null || value === undefined) throw new NotYetTold(fact, because);
  return value;
}
