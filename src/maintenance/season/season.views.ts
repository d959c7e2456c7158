import { addDays, type LocalDate } from '../../rules/index.js';
import { dueWeek, type Evaluation, usedDays } from '../plan/evaluate.js';
import type { Explained } from '../plan/explain.js';
import type { Pin, Plan, Problem } from '../plan/problem.js';
import type { Season, Today } from '../plan/run.js';
import { itemOf } from './needs-of.js';
import type { SeasonBeside, SeasonView, SeasonVisit, SeasonWork } from './season.dto.js';
import { SEASON_CAUTION, whyNone, whyVisit } from './words.js';

/** A plan for people. */
export function seasonView(
  problem: Problem,
  season: Season,
  of: { tooSoon: string[]; booked: readonly Pin[] },
): SeasonView {
  const { tooSoon, booked } = of;
  const empty: SeasonView = {
    ...{
      status: season.status,
      weeks: problem.weeks,
      visits: [],
      wishesLeft: [],
      cost: null,
      leastPossible: null,
    },
    ...{ byHand: null, asBooked: null, because: null, tooSoon, caution: SEASON_CAUTION },
  };
  if (season.status === 'stopped')
    return {
      ...empty,
      because: 'Time was up before a plan was found. Search longer, plan fewer weeks, or pin some visits.',
    };
  if (season.status === 'infeasible')
    return { ...empty, because: whyNone(season.conflict.map((id) => needWords(problem, id))) };
  const { plan, evaluation } = season;
  return {
    ...empty,
    visits: season.visits.map((visit) => visitView(problem, plan, visit, booked)).sort(byAircraft),
    wishesLeft: problem.wishes
      .filter(({ id }) => plan.wishes[id] === undefined)
      .map(({ title, aircraftId }) => `${title}, ${nameOf(problem, aircraftId)}`),
    cost: rounded(evaluation),
    leastPossible: Math.round(Math.min(season.bound, evaluation.cost.total) * 100) / 100,
    byHand: beside(problem, season.greedy),
    asBooked: season.today === null ? null : todayView(problem, season.today),
  };
}

function visitView(problem: Problem, plan: Plan, visit: Explained, booked: readonly Pin[]): SeasonVisit {
  const monday = (week: number): LocalDate => problem.weeks[week]!;
  const needs = problem.needs
    .filter(({ id }) => visit.needs.includes(id))
    .map((need): SeasonWork => {
      const due = dueWeek(need, plan);
      return {
        id: itemOf(need.id),
        ...{ title: need.title, kind: 'need', week: monday(plan.needs[need.id]!), shopDays: need.shopDays },
        dueWeek: need.overdue || due === null || due >= problem.weeks.length ? null : monday(due),
      };
    });
  const wishes = problem.wishes
    .filter(({ id }) => visit.wishes.includes(id))
    .map((wish): SeasonWork => ({
      id: wish.id,
      ...{ title: wish.title, kind: 'wish', week: monday(plan.wishes[wish.id]!), shopDays: wish.shopDays },
      dueWeek: null,
    }));
  return {
    aircraftId: visit.aircraftId,
    registration: nameOf(problem, visit.aircraftId),
    ...{ from: monday(visit.from), to: monday(visit.to), work: [...needs, ...wishes] },
    ...{ firstDay: monday(visit.from), lastDay: addDays(monday(visit.to), daysIn(problem, plan, visit) - 1) },
    booked: weeksOf(visit).every((week) =>
      booked.some((pin) => pin.aircraftId === visit.aircraftId && pin.week === week),
    ),
    why: whyVisit(visit, problem.weeks),
    otherWeeks: visit.alternatives.map(({ week, more }) => ({
      week: monday(week),
      more: more === null ? null : Math.round(more * 100) / 100,
    })),
  };
}

const weeksOf = ({ from, to }: Explained): number[] =>
  Array.from({ length: to - from + 1 }, (_none, at) => from + at);

/** Days of the last week it is in the shop, one at least. */
const daysIn = (problem: Problem, plan: Plan, { aircraftId, to }: Explained): number =>
  Math.min(7, Math.max(1, Math.ceil(usedDays(problem, plan).get(aircraftId)![to]! - 1e-9)));

const nameOf = (problem: Problem, id: string): string =>
  problem.aircraft.find((one) => one.id === id)?.name ?? id;

function needWords(problem: Problem, id: string): { title: string; aircraft: string; dueBy: LocalDate } {
  const { title, aircraftId, latest } = problem.needs.find((need) => need.id === id)!;
  return { title, aircraft: nameOf(problem, aircraftId), dueBy: problem.weeks[latest!]! };
}

const rounded = ({ cost }: Evaluation): Evaluation['cost'] =>
  Object.fromEntries(
    Object.entries(cost).map(([term, value]) => [term, Math.round(value * 100) / 100]),
  ) as unknown as Evaluation['cost'];

/** Work a plan leaves undone, or does too late. */
function beside(problem: Problem, evaluation: Evaluation): SeasonBeside {
  const left = evaluation.violations.flatMap(({ about }) => {
    const need = problem.needs.find(({ id }) => id === about);
    return need ? [`${need.title}, ${nameOf(problem, need.aircraftId)}`] : [];
  });
  const sound = evaluation.violations.length === 0;
  return { total: sound ? Math.round(evaluation.cost.total * 100) / 100 : null, left: [...new Set(left)] };
}

function todayView(problem: Problem, today: Today): SeasonBeside {
  if (today.plan !== null) return beside(problem, today.evaluation);
  const left = today.left.map((id) => {
    const { title, aircraft } = needWords(problem, id);
    return `${title}, ${aircraft}`;
  });
  return { total: null, left };
}

const byAircraft = (a: SeasonVisit, b: SeasonVisit): number =>
  a.registration < b.registration || (a.registration === b.registration && a.from < b.from) ? -1 : 1;
