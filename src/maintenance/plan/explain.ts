/** Why each visit is when it is: what it displaces, and what other weeks would cost with everything else left as it is. */
import { evaluate, usedDays, type Evaluation, type Rule, type Violation, type Visit } from './evaluate.js';
import type { Plan, Problem } from './problem.js';

/** Another week for a visit, everything else left as it is. */
export interface Alternative {
  week: number;
  /** How much more it would cost; null where it is not possible. */
  more: number | null;
  /** What stands in its way; empty where it is possible. */
  because: Violation[];
}

/** A visit with its reasons. */
export interface Explained extends Visit {
  bookedHours: number;
  expectedHours: number;
  /** Weeks of life thrown away, over its needs. */
  weeksEarly: number;
  alternatives: Alternative[];
  /** Rules that keep it from the week before and the week after. */
  binds: { earlier: Rule[]; later: Rule[] };
}

/** Explains every visit of a plan. */
export function explain(problem: Problem, plan: Plan, evaluation: Evaluation): Explained[] {
  const used = usedDays(problem, plan);
  return evaluation.visits.map((visit) => {
    const alternatives = [...problem.weeks.keys()]
      .filter((week) => week !== visit.from)
      .map((week) => alternative(problem, plan, evaluation, visit, week));
    const at = (week: number): Rule[] => [
      ...new Set(alternatives.find((one) => one.week === week)?.because.map(({ rule }) => rule) ?? []),
    ];
    const days = used.get(visit.aircraftId)!;
    const hours = (by: Record<string, number[]>): number => {
      let total = 0;
      for (let week = visit.from; week <= visit.to; week += 1)
        total += (by[visit.aircraftId]?.[week] ?? 0) * (days[week]! / problem.shop.daysPerWeek);
      return total;
    };
    return {
      ...visit,
      bookedHours: hours(problem.bookedHours),
      expectedHours: hours(problem.expectedHours),
      weeksEarly: visit.needs.reduce((sum, id) => sum + (evaluation.weeksEarly[id] ?? 0), 0),
      alternatives,
      binds: { earlier: at(visit.from - 1), later: at(visit.from + 1) },
    };
  });
}

function alternative(
  problem: Problem,
  plan: Plan,
  { cost }: Evaluation,
  visit: Visit,
  week: number,
): Alternative {
  const shift = week - visit.from;
  const moved = (starts: Record<string, number>, ids: readonly string[]): Record<string, number> =>
    Object.fromEntries(
      Object.entries(starts).map(([id, start]) => [id, ids.includes(id) ? start + shift : start]),
    );
  const tried = { needs: moved(plan.needs, visit.needs), wishes: moved(plan.wishes, visit.wishes) };
  const { violations, cost: then } = evaluate(problem, tried);
  return violations.length > 0
    ? { week, more: null, because: violations }
    : { week, more: then.total - cost.total, because: [] };
}
