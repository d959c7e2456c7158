/** The best plan there is, by HiGHS, and the proof that it is. */
import highsLoader from 'highs';
import { evaluate, type Evaluation } from './evaluate.js';
import { lpText } from './lp-text.js';
import { modelOf, type Model, type Treatment } from './model.js';
import { startsOf, type Plan, type Problem } from './problem.js';

/** How the search ended. `optimal`: proven, nothing is better. */
export type Outcome =
  | { status: 'optimal'; plan: Plan; evaluation: Evaluation }
  | { status: 'infeasible' }
  | { status: 'stopped' };

/** Seconds after which the search is given up, unless told otherwise. */
export const MOST_SECONDS = 60;

/** What is left between a solver's objective and the cost worked out from its plan: rounding. */
const ROUNDING = 1e-4;

/** A solution of a program: the status and the value of each variable. */
export interface Solution {
  status: 'optimal' | 'infeasible' | 'stopped';
  objective: number;
  value(name: string): number;
}

// Its types tell of the CommonJS form, where the loader is a member; what is imported is the loader itself.
const load = highsLoader as unknown as typeof highsLoader.default;
/** Loaded once: each program gets a fresh solver of it all the same. */
let loaded: ReturnType<typeof load> | undefined;

/** Runs HiGHS to a gap of nothing. */
export async function runHighs(model: Model, mostSeconds = MOST_SECONDS): Promise<Solution> {
  const highs = await (loaded ??= load());
  const answer = highs.solve(lpText(model), {
    ...{
      output_flag: false,
      mip_rel_gap: 0,
      mip_abs_gap: 1e-6,
      time_limit: mostSeconds,
      threads: 1,
      random_seed: 1,
    },
  });
  const columns = answer.Columns as Record<string, { Primal?: number } | undefined>;
  return {
    status:
      answer.Status === 'Optimal' ? 'optimal' : answer.Status === 'Infeasible' ? 'infeasible' : 'stopped',
    objective: answer.ObjectiveValue + model.constant,
    value: (name) => columns[name]?.Primal ?? 0,
  };
}

/** Finds the best plan. Its cost is worked out anew from the plan itself: the solver is not taken at its word. */
export async function solve(problem: Problem, mostSeconds = MOST_SECONDS): Promise<Outcome> {
  const model = modelOf(problem);
  const solution = await runHighs(model, mostSeconds);
  if (solution.status !== 'optimal') return { status: solution.status };
  const plan = planOf(problem, model, solution);
  const evaluation = evaluate(problem, plan);
  if (evaluation.violations.length > 0)
    throw new Error(`the plan found breaks a rule: ${JSON.stringify(evaluation.violations[0])}`);
  if (
    Math.abs(evaluation.cost.total - solution.objective) >
    ROUNDING * Math.max(1, Math.abs(solution.objective))
  )
    throw new Error(
      `the plan found costs ${evaluation.cost.total} and was said to cost ${solution.objective}`,
    );
  return { status: 'optimal', plan, evaluation };
}

/** Is there any plan with these needs, and which is the greatest number of them that can be met together? */
export async function metTogether(
  problem: Problem,
  treatment: Treatment,
): Promise<ReadonlySet<string> | null> {
  const model = modelOf(problem, treatment);
  const solution = await runHighs(model);
  if (solution.status === 'stopped') throw new Error('the search for what stands in the way was given up');
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
