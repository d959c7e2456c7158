/** Ways to yes: the cheapest proven plans that make the answer yes. */
import { weigh } from '../engine/weigh.js';
import { candidateOf, choose, MOST_PLANS, type Candidate } from './choose.js';
import { laterWay, noWay } from './none.js';
import { prove } from './prove.js';
import { cheapest, DEFAULT_LIMITS, rootOf, type Spent } from './search.js';
import { departureOf, type State } from './state.js';
import type { Proof, WaysQuestion, WaysToYes } from './types.js';
import { WAYS_CAUTION } from './words.js';
import { worldOf, type Aim, type World } from './world.js';

/** The ways, and the hypothetical facts each was judged on. */
export interface FoundWays {
  ways: WaysToYes;
  proofs: Proof[];
  laterProof: Proof | null;
  /** Ways that came out of the search and that the fresh judgement did not bear out: 0, or the search is wrong. */
  disproved: number;
}

type Proven = Candidate & { proof: Proof };

/**
 * Searches for the cheapest ways to yes: the cheapest plain one, the cheapest with an instructor still to be found, the
 * cheapest that an officer must allow, and what else there is without one or other act of the first. Deterministic: the
 * same question gives the same ways, but for a caller's `shouldStop` that looks at a clock.
 */
export function findWays(question: WaysQuestion): FoundWays {
  const world = worldOf(question);
  const root = rootOf(world);
  const { answer } = weigh(question.sheet, world.ruleset, departureOf(question.sheet));
  const shared = {
    schema: 'bellcrank.ways/1' as const,
    answer,
    currency: world.prices.text('club.cost.currency'),
    caution: WAYS_CAUTION,
  };
  if (answer === 'yes' || answer === 'yes-with-conditions')
    return {
      ways: { ...shared, plans: [], none: null, later: null, bound: null, looked: 0 },
      proofs: [],
      laterProof: null,
      disproved: 0,
    };

  const limits = question.limits ?? DEFAULT_LIMITS;
  const spent: Spent = { limits, looked: 0, bound: null, cured: new Set() };
  const chosen = choose(candidates(world, root, spent));
  const none = chosen.length > 0 ? null : noWay(world, root, spent);
  const later = chosen.some(({ plain }) => plain) || spent.bound ? null : laterWay(world, spent);
  return {
    ways: {
      ...shared,
      plans: chosen.map(({ proof }) => proof.way),
      none,
      later: later?.later ?? null,
      bound: spent.bound,
      looked: spent.looked,
    },
    proofs: chosen.map(({ proof }) => proof),
    laterProof: later?.proof ?? null,
    disproved: world.disproved.count,
  };
}

/** Ways worth choosing from, in order of cost. */
function candidates(world: World, root: State, spent: Spent): Proven[] {
  const found: Proven[] = [];
  const look = (aim: Aim, banned: readonly string[]): Proven | null => {
    if (spent.bound) return null;
    const then: World = { ...world, aim, banned: new Set(banned) };
    const proven = cheapest(then, root, spent, (end) => {
      const proof = prove(then, end);
      return proof && { ...candidateOf(end, root), proof };
    });
    if (proven) found.push(proven);
    return proven;
  };
  const plain = look('plain', []);
  look('instructor', []);
  look('officer', []);
  const steps = [...(plain?.proof.way.steps ?? [])].sort(
    (a, b) => b.cost.total - a.cost.total || (a.act < b.act ? -1 : 1),
  );
  for (const kind of new Set(steps.map((step) => step.kind))) look('plain', [`kind ${kind}`]);
  // Without one act of the cheapest, the dearest first, as long as there is room for another way.
  for (const act of new Set(steps.map((step) => step.act))) {
    if (choose(inOrder(found)).length === MOST_PLANS) break;
    look('plain', [act]);
  }
  return inOrder(found);
}

/** By cost. What hangs on somebody's leave is worth showing only where it is no dearer than what does not. */
function inOrder(found: readonly Proven[]): Proven[] {
  const plain = Math.min(...found.filter((one) => one.plain).map(({ total }) => total));
  return found
    .filter((one) => one.plain || one.total <= plain)
    .sort((a, b) => a.total - b.total || (a.kinds < b.kinds ? -1 : 1));
}

/** The ways alone. */
export const waysToYes = (question: WaysQuestion): WaysToYes => findWays(question).ways;
