/** What one search shares: the question made ready, and what has been worked out once already. */
import { localDateOf, toSeconds, type EpochSeconds } from '../calendar/instants.js';
import type { Ruleset } from '../engine/judge.js';
import type { Outcome } from '../engine/run.js';
import { rulesetFor } from '../packs/index.js';
import { catalogue, type Catalogue } from './acts.js';
import type { Asked } from './offers.js';
import type { InTheWay } from './practice.js';
import { Prices } from './prices.js';
import type { Refusal } from './place.js';
import type { Offer, State } from './state.js';
import type { WaysQuestion } from './types.js';

/** What the search is after: a plain yes, a yes once an instructor is found, or one that an officer allows. */
export type Aim = 'plain' | 'instructor' | 'officer';

export interface World {
  question: WaysQuestion;
  aim: Aim;
  /** Acts left out, by name or by kind, to find what else there is. */
  banned: ReadonlySet<string>;
  ruleset: Ruleset;
  prices: Prices;
  look: Catalogue;
  /** Nothing can be done before. */
  start: EpochSeconds;
  closed: ReadonlySet<string>;
  mayOverride: boolean;
  /** What stands in the way of practice flights, by acts done before and time. */
  practised: Map<string, readonly InTheWay[]>;
  /** Steps taken, by where they began and what they lead to: the searches of one question take many of the same. */
  taken: Map<string, State | Refusal>;
  /** The search's own changes of the request, by the state they change. */
  own: Map<string, readonly Offer[]>;
  /** Acts that made room for others, wherever they did. */
  enablers: Map<string, Offer>;
  /** Whether an act may put a rule right, by how the rule came out. */
  mayCure: WeakMap<Outcome, Map<string, boolean>>;
  /** Days from the start to an instant. */
  days: Map<EpochSeconds, number>;
  /** What rules offer as of a time, by how they came out. */
  asked: WeakMap<Outcome, Map<EpochSeconds, Asked | null>>;
  /** When the acts that come too late could have been done. */
  late: Map<string, { title: string; done: EpochSeconds }>;
  /** Ends that the fresh judgement did not bear out: defects of the search, never shown. */
  disproved: { count: number };
  /** What stood in the way of the acts that could not be done. */
  held: Map<string, { title: string; by: Set<number> }>;
}

const OVERRIDES = 'club.override.allowed';

export function worldOf(question: WaysQuestion): World {
  const { sheet, policy } = question;
  const ruleset = question.ruleset ?? rulesetFor(sheet.jurisdiction, policy);
  const known = toSeconds(sheet.knownAt);
  const start = question.from === undefined ? known : Math.max(known, toSeconds(question.from));
  const day = localDateOf(start, sheet.zone);
  const allowed = policy.values
    .filter(({ id, from }) => id === OVERRIDES && from <= day)
    .sort((a, b) => (a.from < b.from ? -1 : 1))
    .at(-1);
  return {
    question,
    aim: 'plain',
    banned: new Set(),
    ruleset,
    prices: new Prices(ruleset.book, day),
    look: question.catalogue ?? catalogue,
    start,
    closed: new Set(question.closedRecords ?? []),
    mayOverride: allowed?.value === true,
    practised: new Map(),
    taken: new Map(),
    own: new Map(),
    enablers: new Map(),
    mayCure: new WeakMap(),
    days: new Map(),
    asked: new WeakMap(),
    late: new Map(),
    disproved: { count: 0 },
    held: new Map(),
  };
}
