/** Problems for the planner: small ones drawn at random, and a whole season. */
import fc from 'fast-check';
import type { Need, Plan, Problem, Weights, Wish } from '../../../src/maintenance/plan/problem.js';
import { addDays } from '../../../src/rules/index.js';

export const WEIGHTS: Weights = {
  bookedHour: 1,
  expectedHour: 0.5,
  weekOfLife: 0.4,
  weekOverdue: 2,
  visit: 3,
  wish: 1,
};

export const weeksFrom = (count: number): string[] =>
  Array.from({ length: count }, (_none, week) => addDays('2027-01-04', week * 7));

/** A problem with nothing in it but weeks, aircraft and an open shop. */
export function quiet(weeks: number, aircraft: number, more: Partial<Problem> = {}): Problem {
  const ids = Array.from({ length: aircraft }, (_none, at) => `a${at}`);
  const none = () => Object.fromEntries(ids.map((id) => [id, new Array<number>(weeks).fill(0)]));
  return {
    weeks: weeksFrom(weeks),
    aircraft: ids.map((id) => ({ id, name: id.toUpperCase() })),
    ...{ needs: [], wishes: [], groups: [], pins: [], bookedHours: none(), expectedHours: none() },
    shop: {
      bays: new Array<number>(weeks).fill(9),
      shopDays: new Array<number>(weeks).fill(99),
      daysPerWeek: 5,
      mostWeeks: 6,
      firstWeek: 0,
    },
    weights: WEIGHTS,
    ...more,
  };
}

export const need = (id: string, more: Partial<Need> = {}): Need => ({
  ...{
    id,
    aircraftId: 'a0',
    title: id,
    shopDays: 3,
    latest: 3,
    overdue: false,
    partsFrom: 0,
    follows: null,
    worth: 0,
  },
  ...more,
});
export const wish = (id: string, more: Partial<Wish> = {}): Wish => ({
  ...{ id, aircraftId: 'a0', title: id, shopDays: 2, worth: 5, partsFrom: 0, ridesWith: null },
  ...more,
});

/** Small problems: two or three aircraft, four or five weeks, up to four pieces of work. */
export const smallProblem: fc.Arbitrary<Problem> = fc
  .record({ weeks: fc.integer({ min: 4, max: 5 }), aircraft: fc.integer({ min: 2, max: 3 }) })
  .chain(({ weeks, aircraft }) => {
    const ids = Array.from({ length: aircraft }, (_none, at) => `a${at}`);
    const hours = fc.array(fc.integer({ min: 0, max: 9 }), { minLength: weeks, maxLength: weeks });
    const byAircraft = fc
      .tuple(...ids.map(() => hours))
      .map((lists) => Object.fromEntries(ids.map((id, at) => [id, lists[at]!])));
    const workOf = {
      aircraftId: fc.constantFrom(...ids),
      shopDays: fc.constantFrom(1, 3, 5, 7),
      partsFrom: fc.constantFrom(0, 0, 1),
    };
    const needs = fc.array(
      fc.record({
        ...workOf,
        latest: fc.option(fc.integer({ min: 0, max: weeks - 1 }), { freq: 4 }),
        worth: fc.integer({ min: 0, max: 6 }),
        overdue: fc.constantFrom(false, false, false, true),
        follows: fc.constant(null),
      }),
      { minLength: 1, maxLength: 3 },
    );
    const follower = fc.option(
      fc.record({
        withinWeeks: fc.integer({ min: 1, max: 3 }),
        shopDays: fc.constantFrom(1, 3),
        worth: fc.integer({ min: 0, max: 4 }),
      }),
    );
    const wishes = fc.array(fc.record({ ...workOf, worth: fc.integer({ min: 0, max: 12 }) }), {
      maxLength: 1,
    });
    return fc
      .record({
        needs,
        follower,
        wishes,
        bookedHours: byAircraft,
        expectedHours: byAircraft,
        bays: fc.array(fc.integer({ min: 0, max: 2 }), { minLength: weeks, maxLength: weeks }),
        shopDays: fc.array(fc.constantFrom(5, 8, 10), { minLength: weeks, maxLength: weeks }),
        firstWeek: fc.constantFrom(0, 0, 1),
        mostWeeks: fc.constantFrom(2, 5),
        pin: fc.option(
          fc.record({ aircraftId: fc.constantFrom(...ids), week: fc.integer({ min: 0, max: weeks - 1 }) }),
          { freq: 3 },
        ),
        mostDown: fc.constantFrom(1, 2),
      })
      .map(
        ({
          needs: drawn,
          follower: next,
          wishes: wished,
          bays,
          shopDays,
          firstWeek,
          mostWeeks,
          pin,
          mostDown,
          ...hoursOf
        }): Problem => {
          const made: Need[] = drawn.map((one, at) => ({
            ...one,
            id: `n${at}`,
            title: `n${at}`,
            worth: one.latest === null ? one.worth : 0,
            overdue: one.overdue && one.latest !== null,
          }));
          if (next)
            made.push(
              need('next', {
                aircraftId: made[0]!.aircraftId,
                shopDays: next.shopDays,
                worth: next.worth,
                latest: null,
                follows: { needId: 'n0', withinWeeks: next.withinWeeks },
              }),
            );
          return quiet(weeks, aircraft, {
            ...hoursOf,
            needs: made,
            wishes: wished.map((one, at) => ({ ...one, id: `w${at}`, title: `w${at}`, ridesWith: null })),
            shop: { bays, shopDays, daysPerWeek: 5, mostWeeks, firstWeek },
            groups: [{ id: 'g', title: 'the fleet', aircraftIds: ids, mostDown }],
            pins: pin ? [pin] : [],
          });
        },
      );
  });

/** Every plan there is, for problems small enough. */
export function* everyPlan(problem: Problem): Generator<Plan> {
  const works = [
    ...problem.needs.map(({ id }) => ({ kind: 'needs' as const, id })),
    ...problem.wishes.map(({ id }) => ({ kind: 'wishes' as const, id })),
  ];
  const choices = problem.weeks.length + 1;
  for (let code = 0; code < choices ** works.length; code += 1) {
    const plan: Plan = { needs: {}, wishes: {} };
    let rest = code;
    for (const { kind, id } of works) {
      const week = rest % choices;
      rest = Math.floor(rest / choices);
      if (week < problem.weeks.length) plan[kind][id] = week;
    }
    yield plan;
  }
}
