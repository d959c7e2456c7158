/** What a plan costs, and what it breaks. Says it of any plan: the optimum, today's, a greedy one, one somebody drew up by hand. */
import {
  daysByWeek,
  isMandatory,
  startsOf,
  type Need,
  type Plan,
  type Problem,
  type Wish,
} from './problem.js';

export type Rule =
  'due' | 'follows' | 'start' | 'days' | 'length' | 'bays' | 'shop-days' | 'group' | 'rides-along' | 'pin';

/** A rule a plan breaks. */
export interface Violation {
  rule: Rule;
  /** Who or what it is about: a need, a wish, a group; null for the shop as a whole. */
  about: string | null;
  week: number | null;
}

/** Terms of the cost, each in the unit of the weights. */
export interface Cost {
  booked: number;
  expected: number;
  life: number;
  /** Weeks that something overdue waits. */
  waiting: number;
  visits: number;
  /** Negative: what was gained. */
  wishes: number;
  saved: number;
  total: number;
}

/** Weeks without a break in which an aircraft is in the shop, and what is done. */
export interface Visit {
  aircraftId: string;
  from: number;
  to: number;
  needs: string[];
  wishes: string[];
  days: number;
}

export interface Evaluation {
  violations: Violation[];
  cost: Cost;
  visits: Visit[];
  /** Weeks of life thrown away, by need. */
  weeksEarly: Record<string, number>;
  bookedHours: number;
  expectedHours: number;
}

type Used = Map<string, number[]>;

/** Evaluates a plan. */
export function evaluate(problem: Problem, plan: Plan): Evaluation {
  const used = usedDays(problem, plan);
  const visits = visitsOf(problem, plan, used);
  const weeksEarly = early(problem, plan);
  let [booked, expected] = [0, 0];
  for (const [aircraftId, days] of used) {
    for (const [week, many] of days.entries()) {
      const share = many / problem.shop.daysPerWeek;
      booked += share * (problem.bookedHours[aircraftId]?.[week] ?? 0);
      expected += share * (problem.expectedHours[aircraftId]?.[week] ?? 0);
    }
  }
  const { weights } = problem;
  const done = (id: string, kind: keyof Plan): boolean => plan[kind][id] !== undefined;
  const terms = {
    booked: booked * weights.bookedHour,
    expected: expected * weights.expectedHour,
    life: sum(Object.values(weeksEarly)) * weights.weekOfLife,
    waiting: waitingOf(problem, plan) * weights.weekOverdue,
    visits: visits.length * weights.visit,
    wishes:
      -sum(problem.wishes.filter(({ id }) => done(id, 'wishes')).map(({ worth }) => worth)) * weights.wish,
    saved: -sum(
      problem.needs.filter((need) => !isMandatory(need) && done(need.id, 'needs')).map(({ worth }) => worth),
    ),
  };
  return {
    violations: violationsOf(problem, plan, used, visits),
    cost: { ...terms, total: sum(Object.values(terms)) },
    ...{ visits, weeksEarly, bookedHours: booked, expectedHours: expected },
  };
}

/** Days of work by aircraft and week. */
export function usedDays(problem: Problem, plan: Plan): Used {
  const used: Used = new Map(problem.aircraft.map(({ id }) => [id, problem.weeks.map(() => 0)]));
  for (const [work, start] of begun(problem, plan))
    for (const [after, days] of daysByWeek(work.shopDays, problem.shop.daysPerWeek).entries()) {
      const weeks = used.get(work.aircraftId)!;
      if (start + after < weeks.length) weeks[start + after]! += days;
    }
  return used;
}

/** Work that is done, with the week it begins. */
function begun(problem: Problem, plan: Plan): [Need | Wish, number][] {
  return [
    ...problem.needs.map((work): [Need | Wish, number | undefined] => [work, plan.needs[work.id]]),
    ...problem.wishes.map((work): [Need | Wish, number | undefined] => [work, plan.wishes[work.id]]),
  ].filter((one): one is [Need | Wish, number] => one[1] !== undefined);
}

const isPinned = (problem: Problem, aircraftId: string, week: number): boolean =>
  problem.pins.some((pin) => pin.aircraftId === aircraftId && pin.week === week);

function visitsOf(problem: Problem, plan: Plan, used: Used): Visit[] {
  const visits: Visit[] = [];
  for (const { id } of problem.aircraft) {
    const days = used.get(id)!;
    for (let week = 0; week < days.length; week += 1) {
      const down = days[week]! > 0 || isPinned(problem, id, week);
      const running = visits.at(-1);
      if (!down) continue;
      if (running?.aircraftId === id && running.to === week - 1) {
        running.to = week;
        running.days += days[week]!;
      } else visits.push({ aircraftId: id, from: week, to: week, needs: [], wishes: [], days: days[week]! });
    }
  }
  for (const visit of visits) {
    const inside = (start: number | undefined) =>
      start !== undefined && start >= visit.from && start <= visit.to;
    visit.needs = problem.needs
      .filter((need) => need.aircraftId === visit.aircraftId && inside(plan.needs[need.id]))
      .map(({ id }) => id);
    visit.wishes = problem.wishes
      .filter((wish) => wish.aircraftId === visit.aircraftId && inside(plan.wishes[wish.id]))
      .map(({ id }) => id);
  }
  return visits;
}

function early(problem: Problem, plan: Plan): Record<string, number> {
  const weeks: Record<string, number> = {};
  for (const need of problem.needs) {
    const start = plan.needs[need.id];
    if (start === undefined || need.overdue) continue;
    const due = dueWeek(need, plan);
    if (due !== null) weeks[need.id] = Math.max(0, due - start);
  }
  return weeks;
}

/** Weeks from now until what is overdue is done, over all of it. */
const waitingOf = (problem: Problem, plan: Plan): number =>
  sum(problem.needs.filter(({ overdue }) => overdue).map(({ id }) => plan.needs[id] ?? 0));

/** The week a need falls due in, given the plan; null: not within sight. */
export function dueWeek(need: Need, plan: Plan): number | null {
  if (need.follows === null) return need.latest;
  const before = plan.needs[need.follows.needId];
  return before === undefined ? null : before + need.follows.withinWeeks;
}

function violationsOf(problem: Problem, plan: Plan, used: Used, visits: readonly Visit[]): Violation[] {
  const { shop, weeks, groups, pins } = problem;
  const found: Violation[] = [];
  const add = (rule: Rule, about: string | null, week: number | null) => found.push({ rule, about, week });
  for (const need of problem.needs) {
    const start = plan.needs[need.id];
    if (start === undefined && isMandatory(need)) add('due', need.id, need.latest);
    const due = dueWeek(need, plan);
    if (need.follows !== null && due !== null && due < weeks.length && (start === undefined || start > due))
      add('follows', need.id, due);
    const before = need.follows === null ? undefined : plan.needs[need.follows.needId];
    if (need.follows !== null && start !== undefined && (before === undefined || start <= before))
      add('follows', need.id, start);
  }
  for (const [work, start] of begun(problem, plan))
    if (!startsOf(problem, work).includes(start)) add('start', work.id, start);
  for (const wish of problem.wishes) {
    const start = plan.wishes[wish.id];
    if (start !== undefined && !ridesAlong(problem, visits, wish)) add('rides-along', wish.id, start);
  }
  for (const [week] of weeks.entries()) {
    const down = problem.aircraft.filter(({ id }) => used.get(id)![week]! > 0 || isPinned(problem, id, week));
    for (const { id } of down) if (used.get(id)![week]! > shop.daysPerWeek + 1e-9) add('days', id, week);
    if (down.length > shop.bays[week]!) add('bays', null, week);
    if (sum(down.map(({ id }) => used.get(id)![week]!)) > shop.shopDays[week]! + 1e-9)
      add('shop-days', null, week);
    for (const group of groups)
      if (down.filter(({ id }) => group.aircraftIds.includes(id)).length > group.mostDown)
        add('group', group.id, week);
  }
  for (const { aircraftId, from, to } of visits)
    if (to - from + 1 > shop.mostWeeks) add('length', aircraftId, from);
  for (const { aircraftId, week } of pins) if (week >= weeks.length) add('pin', aircraftId, week);
  return found;
}

/** A wish is done in the visit of a need it may ride along with. */
function ridesAlong(problem: Problem, visits: readonly Visit[], wish: Wish): boolean {
  const carriers = carriersOf(problem, wish).map(({ id }) => id);
  return visits.some(
    ({ needs, wishes }) => wishes.includes(wish.id) && needs.some((id) => carriers.includes(id)),
  );
}

/** Needs a wish may ride along with. */
export const carriersOf = (problem: Problem, wish: Wish): Need[] =>
  problem.needs.filter(
    (need) =>
      need.aircraftId === wish.aircraftId && (wish.ridesWith === null || wish.ridesWith.includes(need.id)),
  );

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
