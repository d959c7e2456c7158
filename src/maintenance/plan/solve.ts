/** The best plan there is, by HiGHS, and the proof that it is. */
import highsLoader from 'highs';
import { evaluate, type Evaluation } from './evaluate.js';
import { lpText } from './lp-text.js';
import { modelOf, type Model, type Treatment } from './model.js';
import { startsOf, type Plan, type Problem } from './problem.js';

/**
 * How the search ended. `optimal`: proven, nothing is better. `found`: time was up with a plan in hand; `bound`: no plan costs less than
 * that, which is proven. `stopped`: time was up and there is no plan yet.
 */
export type Outcome =
  | { status: 'optimal'; plan: Plan; evaluation: Evaluation }
  | { status: 'found'; plan: Plan; evaluation: Evaluation; bound: number }
  | { status: 'infeasible' }
  | { status: 'stopped' };

/** Seconds after which the search takes what it has, unless told otherwise: an answer within a minute passes every proxy. */
export const MOST_SECONDS = 45;

/** What is left between a solver's objective and the cost worked out from its plan: rounding. */
const ROUNDING = 1e-4;

/** A solution of a program: the status, the least that is proven, and the value of each variable. */
export interface Solution {
  status: Outcome['status'];
  objective: number;
  /** No solution has a lower objective. */
  bound: number;
  value(name: string): number;
}

// Its types tell of the CommonJS form, where the loader is a member; what is imported is the loader itself.
const load = highsLoader as unknown as typeof highsLoader.default;
/** Loaded once: each program gets a fresh solver of it all the same. */
let loaded: ReturnType<typeof load> | undefined;

/** Runs HiGHS to a gap of nothing, or as far as it comes. */
export async function runHighs(model: Model, mostSeconds = MOST_SECONDS): Promise<Solution> {
  const highs = await (loaded ??= load());
  return highs.withModel({ format: 'lp', data: lpText(model) }, (solver): Solution => {
    solver.options.set({
      ...{ output_flag: false, mip_rel_gap: 0, mip_abs_gap: 1e-6 },
      ...{ time_limit: mostSeconds, random_seed: 1 },
    });
    solver.run();
    const { modelStatus, solutionStatus } = highs.constants;
    const ended = solver.getModelStatus();
    const found = solver.info.get('primal_solution_status') === solutionStatus.feasible;
    const values = found ? solver.getSolution().colValue : [];
    const places = new Map(Array.from(values, (value, at) => [solver.getColName(at), value]));
    return {
      status:
        ended === modelStatus.optimal
          ? 'optimal'
          : ended === modelStatus.infeasible
            ? 'infeasible'
            : found
              ? 'found'
              : 'stopped',
      objective: solver.getObjectiveValue() + model.constant,
      bound: Number(solver.info.get('mip_dual_bound')) + model.constant,
      value: (name) => places.get(name) ?? 0,
    };
  });
}

/**
 * Finds the best plan, or the best in the time there is. Its cost is worked out anew from the plan itself: the solver is not taken at
 * its word.
 */
export async function solve(problem: Problem, mostSeconds = MOST_SECONDS): Promise<Outcome> {
  const model = modelOf(problem);
  const solution = await runHighs(model, mostSeconds);
  const { status, bound } = solution;
  if (status === 'infeasible' || status === 'stopped') return { status };
  const plan = planOf(problem, model, solution);
  const evaluation = evaluate(problem, plan);
  if (evaluation.violations.length > 0)
    throw new Error(`the plan found breaks a rule: ${JSON.stringify(evaluation.violations[0])}`);
  const { total } = evaluation.cost;
  const rounding = ROUNDING * Math.max(1, Math.abs(solution.objective));
  // A plan that is only found may leave slack in what is counted early: its cost is then below the solver's, never above.
  if (
    total > solution.objective + rounding ||
    (status === 'optimal' && total < solution.objective - rounding)
  )
    throw new Error(`the plan found costs ${total} and was said to cost ${solution.objective}`);
  return status === 'optimal' ? { status, plan, evaluation } : { status, plan, evaluation, bound };
}

/** Is there any plan with these needs, and which is the greatest number of them that can be met together? */
export async function metTogether(
  problem: Problem,
  treatment: Treatment,
): Promise<ReadonlySet<string> | null> {
  const model = modelOf(problem, treatment);
  const solution = await runHighs(model);
  if (solution.status === 'stopped' || solution.status === 'found')
    throw new Error('the search for what stands in the way was given up');
  if (solution.status === 'infeasible') return null;
  const plan = planOf(problem, model, solution);
  return new Set(Object.keys(plan.needs));
}

function planOf(problem: Problem, { names }: ReturnType<typeof modelOf>, { value }: Solution): Plan {
  const starts = (works: Problem['needs'] | Problem['wishes']): Record<string, number> =>
    Object.fromEntries(
      works.flatMap((work): [string, number][] => {
        const start = startsOf(problem, work).find((week) => value(names.starts(work, week)) > 0.5);
        return start === undefined ? [] : [[work.id, start]];
      }),
    );
  return { needs: starts(problem.needs), wishes: starts(problem.wishes) };
}
