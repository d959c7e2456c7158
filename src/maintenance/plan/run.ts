/** Everything that is worked out for a season, in one go: what the worker thread does, and what tests call directly. */
import { smallestConflict } from './conflict.js';
import { evaluate, type Evaluation } from './evaluate.js';
import { explain, type Explained } from './explain.js';
import { greedyPlan } from './greedy.js';
import type { Plan, Problem } from './problem.js';
import { metTogether, solve } from './solve.js';

/** What is asked of a run. */
export interface Task {
  problem: Problem;
  /** Weeks booked in the shop today, by aircraft; null: no comparison is wanted. */
  booked: { aircraftId: string; week: number }[] | null;
  /** Time for the search. */
  mostSeconds?: number;
}

/** Today's bookings of the shop: the best that can be done in them, or the needs that find no place. */
export type Today = { plan: Plan; evaluation: Evaluation } | { plan: null; left: string[] };

export type Season =
  | {
      status: 'optimal' | 'found';
      plan: Plan;
      evaluation: Evaluation;
      /** No plan costs less. */
      bound: number;
      visits: Explained[];
      greedy: Evaluation;
      today: Today | null;
    }
  | { status: 'infeasible'; conflict: string[] }
  | { status: 'stopped' };

/** Solves, explains and compares. */
export async function planSeason({ problem, booked, mostSeconds }: Task): Promise<Season> {
  const found = await solve(problem, mostSeconds);
  if (found.status === 'stopped') return { status: 'stopped' };
  if (found.status === 'infeasible')
    return { status: 'infeasible', conflict: await smallestConflict(problem) };
  const { status, plan, evaluation } = found;
  return {
    ...{ status, plan, evaluation },
    bound: status === 'found' ? found.bound : evaluation.cost.total,
    visits: explain(problem, plan, evaluation),
    greedy: evaluate(problem, greedyPlan(problem)),
    today: booked === null ? null : await todays(problem, booked),
  };
}

/** The same with no other weeks than those booked. */
async function todays(problem: Problem, booked: NonNullable<Task['booked']>): Promise<Today> {
  const fixed: Problem = {
    ...problem,
    pins: booked,
    // Only pinned weeks are open to work before the shop’s first week: with that after the span, there are no others.
    shop: { ...problem.shop, firstWeek: problem.weeks.length },
    groups: [],
  };
  const found = await solve(fixed);
  if (found.status === 'optimal' || found.status === 'found')
    return { plan: found.plan, evaluation: evaluate(problem, found.plan) };
  const must = problem.needs.filter(({ latest }) => latest !== null).map(({ id }) => id);
  const met = await metTogether(fixed, { asMany: new Set(must) });
  return { plan: null, left: must.filter((id) => !met?.has(id)) };
}
