import type { Instant } from '../calendar/instants.js';
import type { Crew } from './crew.js';
import type { ParameterRead } from './parameters.js';
import type { Remedy } from './remedy.js';
import type { Citation, Counted, Rule, Status, Weight } from './rule.js';

/** What one rule says of one flight. */
export interface Finding {
  rule: string;
  version: number;
  title: string;
  weight: Weight;
  /** An officer may set it aside, with a reason. */
  overridable: boolean;
  binds: Rule['binds'];
  status: Status;
  /** Which way the judgement went; 'unknown' and 'error' have no branch of their own. */
  branch: string;
  /** One sentence for people. */
  says: string;
  citation: Citation;
  counted: Counted[];
  conditions: string[];
  remedies: Remedy[];
  reads: readonly string[];
  parameters: ParameterRead[];
  /**
   * The departure from which the verdict changes if nothing else happens: it does not change before. Where the search
   * stopped without finding a change, the next departure at which it may. Null when time alone never changes it.
   */
  until: Instant | null;
}

/** yes ... no, best first. */
export type Answer = 'yes' | 'yes-with-conditions' | 'dual-only' | 'ask-officer' | 'no';

/** The decision on one flight. */
export interface Decision {
  schema: 'bellcrank.decision/1';
  answer: Answer;
  /** One sentence: why this answer. */
  says: string;
  asOf: Instant;
  knownAt: Instant;
  crew: Crew;
  findings: Finding[];
  conditions: string[];
  /** Earliest departure at which the answer changes if nothing else happens, and the rules that change it. */
  horizon: Horizon;
  caution: string;
  /** SHA-256 of the canonical fact sheet, policy and rule versions. */
  digest: string;
}

/**
 * `until` null: time alone does not change the answer before `searchedTo`. `certain` false: nothing changes before
 * `until`, and the search stopped there.
 */
export interface Horizon {
  until: Instant | null;
  becomes: Answer | null;
  because: string[];
  searchedTo: Instant;
}

export const CAUTION =
  'Bellcrank is an aid. The pilot in command decides whether the flight is safe and legal, the certificated mechanic ' +
  'decides on airworthiness, and local rules stand over both.';
