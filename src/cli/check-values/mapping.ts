import type { NeutralFacts } from './facts.js';

/**
 * What the real rules and functions gave, by the name an entry expects it under. Asked for only when expected. The value
 * expected is handed in for its shape alone (a bound or a range, one name or a list), never for its content.
 */
export type Found = Record<string, (expected: unknown) => unknown>;

/** How the neutral facts of some rule names reach the real rules. */
export interface Mapping {
  /** Rule names as the entries give them. */
  rules: readonly string[];
  /** Reads every fact it has a meaning for, at once, and says how to find each expected value. */
  map(facts: NeutralFacts, rule: string): Found;
}
