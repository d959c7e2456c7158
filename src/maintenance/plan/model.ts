/**
 * The same as a mixed-integer linear program: one variable for each week each piece of work may begin in, one for each week an aircraft
 * is down, one for each week a visit begins. Every rule is one small function that adds its rows.
 *
 * Work is shared out to visits by the week they begin (`share`), as customers are to plants in facility location: a visit that is only
 * counted where an aircraft goes down costs next to nothing in the relaxation, and the search then takes hours instead of seconds.
 */
import { carriersOf } from './evaluate.js';
import { daysByWeek, isMandatory, startsOf, type Need, type Problem, type Wish } from './problem.js';

/** A linear expression by variable. */
export type Terms = Map<string, number>;

export interface Row {
  name: string;
  terms: Terms;
  sense: '<=' | '>=' | '=';
  bound: number;
}

/** The program. `constant` is added to the objective. */
export interface Model {
  objective: Terms;
  constant: number;
  rows: Row[];
  binaries: string[];
  /** Continuous, at least 0. */
  reals: string[];
}

/** How needs are taken: all that must be, or, to find out which cannot, each one only if it can. */
export interface Treatment {
  /** Needs that need not be done, each counted when it is: the objective is their number, to be made as great as can be. */
  asMany?: ReadonlySet<string>;
}

/** Names of variables, by place in the problem's lists. */
class Names {
  private readonly works: Map<string, string>;
  private readonly aircraft: Map<string, number>;
  constructor(readonly problem: Problem) {
    this.works = new Map([
      ...problem.needs.map(({ id }, at): [string, string] => [`n ${id}`, `n${at}`]),
      ...problem.wishes.map(({ id }, at): [string, string] => [`w ${id}`, `w${at}`]),
    ]);
    this.aircraft = new Map(problem.aircraft.map(({ id }, at) => [id, at]));
  }
  starts(work: Need | Wish, week: number): string {
    return `x_${this.works.get(`${'latest' in work ? 'n' : 'w'} ${work.id}`)!}_${week}`;
  }
  down(aircraftId: string, week: number): string {
    return `y_${this.aircraft.get(aircraftId)!}_${week}`;
  }
  visit(aircraftId: string, week: number): string {
    return `s_${this.aircraft.get(aircraftId)!}_${week}`;
  }
  /** A visit that began in a week is still on in another. */
  on(aircraftId: string, began: number, week: number): string {
    return began === week
      ? this.visit(aircraftId, week)
      : `u_${this.aircraft.get(aircraftId)!}_${began}_${week}`;
  }
  /** Work begins in a week of a visit that began in another. */
  share(work: Need | Wish, began: number, week: number): string {
    return `z${this.starts(work, week).slice(1)}_${began}`;
  }
  early(need: Need): string {
    return `e_${this.works.get(`n ${need.id}`)!}`;
  }
}

/** Builds the program. */
export function modelOf(problem: Problem, treatment: Treatment = {}): Model & { names: Names } {
  const names = new Names(problem);
  const model: Model = { objective: new Map(), constant: 0, rows: [], binaries: [], reals: [] };
  const { needs } = problem;
  const works = [...needs, ...(treatment.asMany ? [] : problem.wishes)];
  const of: Building = { problem, names, model, needs, works, treatment };
  variables(of);
  eachIsDone(of);
  followersInTime(of);
  wishesRideAlong(of);
  daysAreWorked(of);
  shopTakes(of);
  groupsKeepFlying(of);
  visitsGoOn(of);
  workIsShared(of);
  if (treatment.asMany) countDone(of);
  else costs(of);
  return { ...model, names };
}

interface Building {
  problem: Problem;
  names: Names;
  model: Model;
  needs: Need[];
  works: (Need | Wish)[];
  treatment: Treatment;
}

function variables({ problem, names, model, works }: Building): void {
  for (const work of works)
    for (const week of startsOf(problem, work)) model.binaries.push(names.starts(work, week));
  for (const { id } of problem.aircraft)
    for (const week of problem.weeks.keys()) model.binaries.push(names.down(id, week), names.visit(id, week));
}

/** Must: once. May: once at most. */
function eachIsDone({ problem, names, model, works, treatment }: Building): void {
  for (const work of works) {
    const terms: Terms = new Map(startsOf(problem, work).map((week) => [names.starts(work, week), 1]));
    const must = 'latest' in work && isMandatory(work) && !treatment.asMany?.has(work.id);
    if (terms.size === 0 && !must) continue;
    // A need that cannot begin at all makes the program infeasible, which it then says.
    if (terms.size === 0) terms.set(names.down(work.aircraftId, 0), 0);
    model.rows.push({ name: `done ${work.id}`, terms, sense: must ? '=' : '<=', bound: 1 });
  }
}

/** What falls due again is done in time, where that lies within the span, and never before what it follows. */
function followersInTime({ problem, names, model, needs }: Building): void {
  for (const need of needs) {
    const before = need.follows && needs.find(({ id }) => id === need.follows!.needId);
    if (!need.follows || !before) {
      if (need.follows)
        for (const week of startsOf(problem, need))
          model.rows.push({
            name: `after ${need.id}`,
            terms: new Map([[names.starts(need, week), 1]]),
            sense: '<=',
            bound: 0,
          });
      continue;
    }
    const own = startsOf(problem, need);
    const first = startsOf(problem, before);
    // In sums up to each week: said week by week, the relaxation would do a third of it for each third of a start.
    for (const week of problem.weeks.keys()) {
      const due = week + need.follows.withinWeeks;
      if (due < problem.weeks.length && first.includes(week)) {
        const terms: Terms = new Map();
        for (const start of first) if (start <= week) terms.set(names.starts(before, start), -1);
        for (const start of own) if (start <= due) terms.set(names.starts(need, start), 1);
        model.rows.push({ name: `follows ${need.id}`, terms, sense: '>=', bound: 0 });
      }
      if (own.includes(week)) {
        const terms: Terms = new Map();
        for (const start of own) if (start <= week) terms.set(names.starts(need, start), 1);
        for (const start of first) if (start < week) terms.set(names.starts(before, start), -1);
        model.rows.push({ name: `after ${need.id}`, terms, sense: '<=', bound: 0 });
      }
    }
  }
}

/** A wish belongs to a visit only with a need it may ride along with. */
function wishesRideAlong({ problem, names, model, works }: Building): void {
  const shares = (work: Need | Wish, began: number): string[] =>
    startsOf(problem, work)
      .filter((week) => visitsOn(problem, week).includes(began))
      .map((week) => names.share(work, began, week));
  for (const wish of problem.wishes) {
    if (!works.includes(wish)) continue;
    for (const began of problem.weeks.keys()) {
      const own = shares(wish, began);
      if (own.length === 0) continue;
      const terms: Terms = new Map(own.map((share) => [share, 1]));
      for (const need of carriersOf(problem, wish))
        for (const share of shares(need, began)) terms.set(share, -1);
      model.rows.push({ name: `rides ${wish.id}`, terms, sense: '<=', bound: 0 });
    }
  }
}

/** Weeks a piece of work can have begun in that is under way in a week. */
function startsIn(problem: Problem, work: Need | Wish, week: number): number[] {
  const length = daysByWeek(work.shopDays, problem.shop.daysPerWeek).length;
  return startsOf(problem, work).filter((start) => start <= week && week < start + length);
}

/** Work needs the aircraft down, so many days a week; an aircraft is down only for work, or where it is pinned. */
function daysAreWorked({ problem, names, model, works }: Building): void {
  const { daysPerWeek } = problem.shop;
  for (const { id } of problem.aircraft) {
    const own = works.filter(({ aircraftId }) => aircraftId === id);
    for (const week of problem.weeks.keys()) {
      const down = names.down(id, week);
      const days: Terms = new Map([[down, -daysPerWeek]]);
      const any: Terms = new Map([[down, 1]]);
      for (const work of own)
        for (const start of startsIn(problem, work, week)) {
          const variable = names.starts(work, start);
          days.set(variable, daysByWeek(work.shopDays, daysPerWeek)[week - start]!);
          any.set(variable, -1);
        }
      const pinned = problem.pins.some((pin) => pin.aircraftId === id && pin.week === week);
      model.rows.push({ name: `days ${id}`, terms: days, sense: '<=', bound: 0 });
      model.rows.push(
        pinned
          ? { name: `pin ${id}`, terms: new Map([[down, 1]]), sense: '=', bound: 1 }
          : { name: `only ${id}`, terms: any, sense: '<=', bound: 0 },
      );
    }
  }
}

function shopTakes({ problem, names, model, works }: Building): void {
  const { bays, shopDays, daysPerWeek } = problem.shop;
  for (const week of problem.weeks.keys()) {
    const down: Terms = new Map(problem.aircraft.map(({ id }) => [names.down(id, week), 1]));
    model.rows.push({ name: `bays ${week}`, terms: down, sense: '<=', bound: bays[week]! });
    const days: Terms = new Map();
    for (const work of works)
      for (const start of startsIn(problem, work, week))
        days.set(names.starts(work, start), daysByWeek(work.shopDays, daysPerWeek)[week - start]!);
    if (days.size > 0)
      model.rows.push({ name: `shop days ${week}`, terms: days, sense: '<=', bound: shopDays[week]! });
  }
}

function groupsKeepFlying({ problem, names, model }: Building): void {
  for (const group of problem.groups)
    for (const week of problem.weeks.keys()) {
      const terms: Terms = new Map(group.aircraftIds.map((id) => [names.down(id, week), 1]));
      if (terms.size > group.mostDown)
        model.rows.push({ name: `group ${group.id}`, terms, sense: '<=', bound: group.mostDown });
    }
}

/** A visit begins, goes on week by week, and ends; an aircraft is down in one visit at most. */
function visitsGoOn({ problem, names, model }: Building): void {
  for (const { id } of problem.aircraft)
    for (const week of problem.weeks.keys()) {
      const down: Terms = new Map([[names.down(id, week), -1]]);
      for (const began of visitsOn(problem, week)) {
        down.set(names.on(id, began, week), 1);
        if (began === week) continue;
        model.reals.push(names.on(id, began, week));
        model.rows.push({
          name: `goes on ${id}`,
          terms: new Map([
            [names.on(id, began, week), 1],
            [names.on(id, began, week - 1), -1],
          ]),
          sense: '<=',
          bound: 0,
        });
      }
      model.rows.push({ name: `in one visit ${id}`, terms: down, sense: '=', bound: 0 });
      // What goes on is one visit: none begins on the heels of another.
      if (week > 0) {
        const heels: Terms = new Map([
          [names.visit(id, week), 1],
          [names.down(id, week - 1), 1],
        ]);
        model.rows.push({ name: `one after another ${id}`, terms: heels, sense: '<=', bound: 1 });
      }
    }
}

/** Weeks in which a visit can have begun that is on in a week. */
const visitsOn = ({ shop }: Problem, week: number): number[] =>
  Array.from({ length: Math.min(week + 1, shop.mostWeeks) }, (_none, back) => week - back).reverse();

/** Each piece of work belongs to the visit that is on while it lasts. */
function workIsShared({ problem, names, model, works }: Building): void {
  for (const work of works) {
    const starts = startsOf(problem, work);
    const byVisit = new Map<number, Map<number, string>>();
    for (const week of starts) {
      const whole: Terms = new Map([[names.starts(work, week), -1]]);
      for (const began of visitsOn(problem, week)) {
        const share = names.share(work, began, week);
        model.reals.push(share);
        whole.set(share, 1);
        byVisit.set(began, (byVisit.get(began) ?? new Map<number, string>()).set(week, share));
      }
      model.rows.push({ name: `share ${work.id}`, terms: whole, sense: '=', bound: 0 });
    }
    const length = daysByWeek(work.shopDays, problem.shop.daysPerWeek).length;
    for (const [began, shares] of byVisit) {
      const any: Terms = new Map([[names.visit(work.aircraftId, began), -1]]);
      for (const share of shares.values()) any.set(share, 1);
      model.rows.push({ name: `visit of ${work.id}`, terms: any, sense: '<=', bound: 0 });
      const last = Math.max(...shares.keys()) + length - 1;
      for (let week = began; week <= last; week += 1) {
        const under: Terms = new Map();
        for (const [start, share] of shares) if (start <= week && week < start + length) under.set(share, 1);
        if (under.size === 0 || week === began) continue;
        if (visitsOn(problem, week).includes(began)) under.set(names.on(work.aircraftId, began, week), -1);
        model.rows.push({ name: `on for ${work.id}`, terms: under, sense: '<=', bound: 0 });
      }
    }
  }
}

function costs(of: Building): void {
  const { problem, names, model, works } = of;
  const { weights, shop } = problem;
  for (const work of works) {
    for (const start of startsOf(problem, work)) {
      let cost = 0;
      for (const [after, days] of daysByWeek(work.shopDays, shop.daysPerWeek).entries()) {
        const share = days / shop.daysPerWeek;
        const hours = (by: Record<string, number[]>) => by[work.aircraftId]?.[start + after] ?? 0;
        cost +=
          share *
          (hours(problem.bookedHours) * weights.bookedHour +
            hours(problem.expectedHours) * weights.expectedHour);
      }
      if ('latest' in work) {
        if (work.overdue) cost += start * weights.weekOverdue;
        else if (work.latest !== null) cost += (work.latest - start) * weights.weekOfLife;
        else cost -= work.worth;
      } else cost -= work.worth * weights.wish;
      model.objective.set(names.starts(work, start), cost);
    }
  }
  for (const { id } of problem.aircraft)
    for (const week of problem.weeks.keys()) model.objective.set(names.visit(id, week), weights.visit);
  lifeOfFollowers(of);
}

/** Weeks early of what follows: due less begun, counted only when it is done. */
function lifeOfFollowers({ problem, names, model, needs }: Building): void {
  for (const need of needs) {
    const before = need.follows && needs.find(({ id }) => id === need.follows!.needId);
    if (!need.follows || !before) continue;
    // As late as it can fall due, so that one that is not done in the span costs nothing.
    const most = problem.weeks.length + need.follows.withinWeeks;
    const early = names.early(need);
    model.reals.push(early);
    model.objective.set(early, problem.weights.weekOfLife);
    const terms: Terms = new Map([[early, 1]]);
    for (const first of startsOf(problem, before))
      terms.set(names.starts(before, first), -(first + need.follows.withinWeeks));
    for (const week of startsOf(problem, need)) terms.set(names.starts(need, week), week - most);
    model.rows.push({ name: `early ${need.id}`, terms, sense: '>=', bound: -most });
  }
}

function countDone({ problem, names, model, needs, treatment }: Building): void {
  for (const need of needs)
    if (treatment.asMany!.has(need.id))
      for (const week of startsOf(problem, need)) model.objective.set(names.starts(need, week), -1);
}
