/** A plan as one would draw it up by hand: by due date, each as late as it goes, together with what is in the shop already. */
import { evaluate } from './evaluate.js';
import { startsOf, type Need, type Plan, type Problem } from './problem.js';

/** The plan; needs that found no place are missing in it. */
export function greedyPlan(problem: Problem): Plan {
  const plan: Plan = { needs: {}, wishes: {} };
  const due = (need: Need): number => need.latest ?? problem.weeks.length;
  const must = problem.needs.filter((need) => need.latest !== null || need.follows !== null);
  for (const need of [...must].sort((a, b) => due(a) - due(b) || (a.id < b.id ? -1 : 1))) {
    const limit =
      need.follows === null ? null : (plan.needs[need.follows.needId] ?? 0) + need.follows.withinWeeks;
    if (limit !== null && limit >= problem.weeks.length) continue;
    const starts = startsOf(problem, need).filter((week) => limit === null || week <= limit);
    place(
      problem,
      plan,
      'needs',
      need.id,
      need.overdue ? starts : [...together(problem, plan, need, starts), ...starts.reverse()],
    );
  }
  for (const wish of problem.wishes)
    place(problem, plan, 'wishes', wish.id, startsOf(problem, wish).reverse());
  return plan;
}

/** Weeks in which the aircraft is in the shop anyway, last first: at most a month of life is thrown away for it. */
function together(problem: Problem, plan: Plan, need: Need, starts: readonly number[]): number[] {
  const last = starts.at(-1) ?? 0;
  return evaluate(problem, plan)
    .visits.filter(({ aircraftId }) => aircraftId === need.aircraftId)
    .flatMap(({ from, to }) => starts.filter((week) => week >= from && week <= to))
    .filter((week) => last - week <= 4)
    .reverse();
}

/** The first of some weeks that breaks nothing new. */
function place(problem: Problem, plan: Plan, kind: keyof Plan, id: string, weeks: readonly number[]): void {
  const before = evaluate(problem, plan).violations.length;
  for (const week of weeks) {
    const tried: Plan = { ...plan, [kind]: { ...plan[kind], [id]: week } };
    const { violations } = evaluate(problem, tried);
    const own = violations.filter(
      ({ rule, about }) => (rule !== 'due' && rule !== 'follows') || about === id,
    );
    if (own.length > 0 || violations.length > before + 1) continue;
    plan[kind][id] = week;
    return;
  }
}
